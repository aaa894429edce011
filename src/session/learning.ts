/** Teaches the ear from what was put right in a review: takes and talk out of what was heard, and what that changes on this session. */
import type { Hearing } from '../core/correct.ts';
import type { Draft, LearnedTake, LibraryEvent } from '../core/event.ts';
import type { Learnt } from '../core/library.ts';
import { nameOf } from '../core/named.ts';
import { settingsOf } from '../core/settings.ts';
import { TALK } from '../core/word.ts';
import type { Change, Known } from '../ears/enrolled.ts';
import type { KeptHeard } from '../store/shelf.ts';
import type { Reviewed } from './app-state.ts';
import type { Rooms } from './rooms.ts';
import type { Taught } from './teaching.ts';

/** What the corrections of the reviewed session could teach, and what they have. */
export interface Lesson {
  /** Corrections that the ear has not learnt from yet, and such as it learnt from and that were taken back since. */
  readonly toLearn: number;
  /** What the ear has learnt from this session. */
  readonly learned: number;
  /** Corrections that cannot teach: by key or button, by clicks, in a loud room, by an ear of another kind, or heard too long ago. */
  readonly without: number;
  /** Whose session it was, when another handler's words are listened for now. */
  readonly ofAnother: string | null;
}

type LearnedBody = Omit<LearnedTake, 'handler'>;

interface Looked {
  readonly has: readonly Learnt[];
  /** Not learnt yet; and learnt from a correction that has been taken back or changed since. */
  readonly fresh: readonly LearnedBody[];
  readonly stale: readonly Learnt[];
  readonly lesson: Lesson;
  readonly heard: ReadonlyMap<string, KeptHeard>;
}

export async function lookAtLesson(rooms: Rooms): Promise<Lesson | null> {
  return (await look(rooms))?.lesson ?? null;
}

/** Null: nothing could be told. The takes are kept all the same. */
export async function learn(rooms: Rooms): Promise<Change | null> {
  const looked = await look(rooms);
  const reviewed = rooms.use.getState().reviewed;
  if (!looked || !reviewed || looked.lesson.ofAnother !== null) return null;
  const before = (await rooms.teaching.current())?.enrolled;
  const handler = reviewed.state.start.handler;
  const { fresh, stale } = looked;
  await rooms.keeper.keep(
    ...fresh.map((body): Draft<LibraryEvent> => ({ type: 'take-learned', body: { ...body, handler } })),
    ...stale.map(({ id }): Draft<LibraryEvent> => ({ type: 'sound-removed', body: { of: id } })),
  );
  const after = (await rooms.teaching.refresh())?.enrolled;
  if (!before?.ok || !after?.ok) return null;
  return rooms.ear.compare({ before: before.model, after: after.model, known: knownOf(reviewed, looked.heard) });
}

/** The way back: the ear is as it was before this session taught it. The corrections stand. */
export async function unlearn(rooms: Rooms): Promise<void> {
  const has = (await look(rooms))?.has ?? [];
  await rooms.keeper.keep(...has.map(({ id }): Draft<LibraryEvent> => ({ type: 'sound-removed', body: { of: id } })));
  await rooms.teaching.refresh();
}

async function look({ use, store, keeper }: Rooms): Promise<Looked | null> {
  const { reviewed, taught } = use.getState();
  if (!reviewed) return null;
  const { sessionId, session, state } = reviewed;
  const judged = session.hearings.filter((hearing) => hearing.judged && hearing.was !== null);
  const kept = await store.heard(session.hearings.map(({ id }) => id));
  const heard = new Map((kept.ok ? kept.value : []).map((each) => [each.id, each]));
  const kind = kindOfEar(taught);
  const wanted = judged
    .flatMap((hearing) => lessonOf(hearing, heard, sessionId))
    .filter(({ stretch }) => kind === null || stretch.features === kind);
  const has = keeper.library().learned.filter((take) => take.session === sessionId);
  const { handler } = settingsOf(keeper.library());
  const fresh = wanted.filter(({ of, word }) => !has.some((take) => take.of === of && take.word === word));
  // What was learnt stays learnt when its features are gone after a month.
  const stale = has.filter(({ of, word }) =>
    session.hearings.some((now) => now.id === of && (!now.judged || wordOf(now) !== word)),
  );
  const lesson: Lesson = {
    ...{ toLearn: fresh.length + stale.length, learned: has.length, without: judged.length - wanted.length },
    ofAnother: state.start.handler === handler ? null : nameOf(keeper.library().handlers, state.start.handler),
  };
  return { has, fresh, stale, lesson, heard };
}

function lessonOf(hearing: Hearing, heard: ReadonlyMap<string, KeptHeard>, session: string): readonly LearnedBody[] {
  const stretch = heard.get(hearing.id)?.stretch;
  return stretch ? [{ of: hearing.id, session, word: wordOf(hearing), stretch }] : [];
}

/** What was heard by an ear of another kind cannot teach this one. Null: nothing is taught by sound, or not yet worked out. */
const kindOfEar = (taught: Taught): string | null => (taught?.enrolled.ok ? taught.enrolled.model.features : null);

const wordOf = ({ is }: Hearing): string => is ?? TALK;

/** What each stretch was, where anybody knows: as put right, else as heard. Of an unsure one that nobody judged nothing is known. */
function knownOf({ session }: Reviewed, heard: ReadonlyMap<string, KeptHeard>): readonly Known[] {
  return session.hearings.flatMap(({ id, was, is, judged, confidence, nearest: near }) => {
    const stretch = heard.get(id)?.stretch;
    const nearest = was === 'unsure' ? near[0]?.word : was;
    if (!stretch || !nearest || (was === 'unsure' && !judged)) return [];
    return [{ of: id, stretch, heard: was === 'unsure' ? null : was, nearest, confidence, truth: is }];
  });
}
