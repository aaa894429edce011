/** Hands homework out and takes it in: the trainer gives, the owner opens and accepts, and sessions go back as a file. */
import { isSessionEvent, type StoredEvent } from '../core/event.ts';
import { type HomeworkChange, homeworkChanges } from '../core/handover/changes.ts';
import {
  type Arrival,
  arrivalOf,
  type Homework,
  latestSent,
  planOfHomework,
  plansOf,
  practisedOf,
  sessionsToReturn,
} from '../core/handover/homework.ts';
import type { Plan } from '../core/plan.ts';
import { exportText } from '../store/export.ts';
import { type HomeworkRead, type HomeworkRefusal, homeworkText, parseHomework } from '../store/homework-file.ts';
import { homeworkCode, parseHomeworkCode } from '../store/homework-link.ts';
import type { SavedFile } from './backup.ts';
import { fileName } from './file-name.ts';
import { isLive } from './live.ts';
import type { Rooms } from './rooms.ts';
import { isoWithOffset } from './wall-clock.ts';

/** Which dog something is for: one that is here, or one that is added with it. */
export type ForDog = { readonly kind: 'known'; readonly id: string } | { readonly kind: 'new'; readonly name: string };

/** What a trainer fills in; the steps and the rule are the plan's. */
export interface HomeworkWish extends Pick<Homework, 'trainer' | 'ownerName' | 'words' | 'caution' | 'sessionsAWeek' | 'note'> {
  readonly planId: string;
  readonly forDog: ForDog;
}

/** Writes down that it was given; then it can be handed out. Null: the plan is not on this device. */
export async function giveHomework({ keeper, parts }: Rooms, wish: HomeworkWish): Promise<Homework | null> {
  const library = keeper.library();
  const { planId, forDog, ...said } = wish;
  const template = library.plans.find(({ id }) => id === planId);
  if (!template) return null;
  const known = forDog.kind === 'known' ? library.dogs.find(({ id }) => id === forDog.id) : undefined;
  const dogName = known?.name ?? (forDog.kind === 'new' ? forDog.name : '');
  const dogId = known?.id ?? parts.wall.newId();
  if (!known || (said.ownerName && known.owner !== said.ownerName)) {
    const dog = known ?? { id: dogId, name: dogName, notes: '', invented: false };
    await keeper.keep({ type: 'dog-saved', body: { ...dog, ...(said.ownerName ? { owner: said.ownerName } : {}) } });
  }
  const plan = dogId === template.dogId ? template : await copyFor(dogId, template, { keeper, parts });
  const before = library.homework.given.filter((given) => given.planId === plan.id);
  const id = before[0]?.homework.id ?? parts.wall.newId();
  const { title, position, steps, rule } = plan;
  const homework: Homework = {
    ...{ id, revision: (latestSent(before, id)?.homework.revision ?? 0) + 1, givenAt: isoWithOffset(parts.wall.now()) },
    ...{ ...said, dogName, title, position, steps },
    ...(rule === undefined ? {} : { rule }),
  };
  await keeper.keep({ type: 'homework-given', body: { homework, dogId, planId: plan.id } });
  return homework;
}

/** A plan belongs to one dog: another dog's homework is a copy of it. */
async function copyFor(dogId: string, plan: Plan, { keeper, parts }: Pick<Rooms, 'keeper' | 'parts'>): Promise<Plan> {
  const copy = { ...plan, id: parts.wall.newId(), dogId };
  await keeper.keep({ type: 'plan-saved', body: copy });
  return copy;
}

/** As a file, and for a link; null: this browser cannot pack one. */
export async function handOut(homework: Homework): Promise<{ readonly file: SavedFile; readonly code: string | null }> {
  const name = fileName(['homework', homework.dogName, `v${homework.revision}`], homework.givenAt.slice(0, 10), 'json');
  return { file: { name, text: await homeworkText(homework) }, code: await homeworkCode(homework) };
}

/** Homework that was opened, told before anything is kept. */
export type Opened =
  | { readonly kind: 'not-open' }
  | { readonly kind: 'refused'; readonly refusal: HomeworkRefusal }
  /** Given on this very device: it is for the owner's. */
  | { readonly kind: 'own'; readonly homework: Homework }
  | {
      readonly kind: 'told';
      readonly homework: Homework;
      readonly arrival: Arrival;
      /** Of an answer: what it changes. */
      readonly changes: readonly HomeworkChange[];
    };

export async function openHomework(rooms: Rooms, from: { readonly text: string } | { readonly code: string }): Promise<Opened> {
  const read: HomeworkRead = 'text' in from ? await parseHomework(from.text) : await parseHomeworkCode(from.code);
  if (!read.ok) return { kind: 'refused', refusal: read.refusal };
  const { homework } = read;
  const { homework: book, plans } = rooms.keeper.library();
  if (book.given.some((given) => given.homework.id === homework.id)) return { kind: 'own', homework };
  const arrival = arrivalOf(homework, book.received);
  if (arrival.kind !== 'newer') return { kind: 'told', homework, arrival, changes: [] };
  const { before } = arrival;
  const plan = plans.find(({ id }) => id === before.planId) ?? before.homework;
  return { kind: 'told', homework, arrival, changes: homeworkChanges(plan, before.homework, homework) };
}

/** The plan that it becomes: of an answer the one that was practised so far, so that its sessions stay with it. */
export async function acceptHomework({ keeper, parts }: Rooms, homework: Homework, forDog: ForDog): Promise<string> {
  const before = latestSent(keeper.library().homework.received, homework.id);
  const newId = parts.wall.newId;
  const dogId = before?.dogId ?? (forDog.kind === 'known' ? forDog.id : newId());
  const planId = before?.planId ?? newId();
  const isNewDog = !before && forDog.kind === 'new';
  if (isNewDog) await keeper.keep({ type: 'dog-saved', body: { id: dogId, name: forDog.name, notes: '', invented: false } });
  await keeper.keep(
    { type: 'plan-saved', body: planOfHomework(homework, planId, dogId) },
    { type: 'homework-received', body: { homework, dogId, planId } },
  );
  return planId;
}

/** A file for the trainer, and what it holds. */
export interface Return {
  readonly file: SavedFile;
  readonly sessions: readonly { readonly id: string; readonly events: number }[];
}

/** Sessions on this homework that the trainer has not seen as they are now. */
function dueToReturn({ keeper, use, practice }: Rooms, homeworkId: string): readonly { id: string; events: number }[] {
  const live = isLive(practice.state()) ? practice.state()?.log[0]?.session : null;
  const practised = practisedOf(use.getState().heads, live ?? null);
  return sessionsToReturn(homeworkId, practised, keeper.library().homework).map(({ id, events }) => ({ id, events }));
}

/** `again`: all of them, for a trainer who lost what came before. Null: none, or it cannot be read (the problem is shown). */
export async function returnHomework(rooms: Rooms, homeworkId: string, again: boolean): Promise<Return | null> {
  const { keeper, use, parts, store, writer } = rooms;
  const { received } = keeper.library().homework;
  const planIds = plansOf(homeworkId, received);
  const all = use.getState().heads.filter(({ started }) => planIds.has(started.body.planId));
  const due = new Set(again ? all.map(({ id }) => id) : dueToReturn(rooms, homeworkId).map(({ id }) => id));
  const heads = all.filter(({ id }) => due.has(id));
  const library = await store.library();
  if (!library.ok) use.setState({ writeProblem: library.problem });
  if (!library.ok || heads.length === 0) return null;
  const events: StoredEvent[] = [...library.value.events, ...writer.waiting().filter((event) => !isSessionEvent(event))].filter(
    belongsTo({ homeworkId, planIds, sessions: due, starts: heads.map(({ started }) => started.body) }),
  );
  for (const { id } of heads) {
    const session = await store.session(id);
    if (!session.ok) {
      use.setState({ writeProblem: session.problem });
      return null;
    }
    events.push(...session.value.events, ...writer.waiting().filter(({ session: of }) => of === id));
  }
  const at = isoWithOffset(parts.wall.now());
  const dogName = latestSent(received, homeworkId)?.homework.dogName ?? '';
  return {
    file: { name: fileName(['sessions', dogName], at.slice(0, 10), 'json'), text: exportText({ events, damaged: [] }, at) },
    sessions: heads.map(({ id, events: n }) => ({ id, events: n })),
  };
}

interface Bundle {
  readonly homeworkId: string;
  readonly planIds: ReadonlySet<string>;
  readonly sessions: ReadonlySet<string>;
  readonly starts: readonly { dogId: string; handler: string; place: string }[];
}

/** What is needed to read these sessions elsewhere; no takes, no settings, no other dog. */
function belongsTo({ homeworkId, planIds, sessions, starts }: Bundle): (event: StoredEvent) => boolean {
  const [dogs, handlers, places] = [
    new Set(starts.map(({ dogId }) => dogId)),
    new Set(starts.map(({ handler }) => handler)),
    new Set(starts.map(({ place }) => place)),
  ];
  return ({ type, body }) => {
    switch (type) {
      case 'dog-saved':
        return dogs.has(body.id);
      case 'plan-saved':
        return planIds.has(body.id);
      case 'handler-saved':
        return handlers.has(body.id);
      case 'place-saved':
        return places.has(body.id);
      case 'observation-saved':
        return sessions.has(body.sessionId);
      case 'homework-received':
        return body.homework.id === homeworkId;
      default:
        return false;
    }
  };
}

/** After the file was handed out, not before: a share sheet can be called off. */
export function noteReturned({ keeper }: Rooms, homeworkId: string, sessions: Return['sessions']): Promise<void> {
  return keeper.keep({ type: 'homework-returned', body: { homeworkId, sessions } });
}
