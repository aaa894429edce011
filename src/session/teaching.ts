/** The sound check: catches takes of each word and of the handler's talk, keeps them, and says what the ear will make of them. */
import type { TaughtSound } from '../core/event.ts';
import { type Library, takesOf } from '../core/library.ts';
import { median } from '../core/statistics/median.ts';
import type { Seconds } from '../core/units.ts';
import { TALK, WORDS } from '../core/word.ts';
import type { Enrolled } from '../ears/enrolled.ts';
import type { CaughtTake } from '../ears/messages.ts';
import type { OwnWords } from '../ears/own-words.ts';
import type { LibraryKeeper } from './library.ts';

/** A take that may be something else than the word: told while it can still be forgotten with one tap. */
export type UnlikeTake = 'long' | 'longer' | 'shorter';

/** What the sound check is doing. */
export type TeachingState =
  | { readonly kind: 'idle' }
  /** Waiting for one more take of `word`; `said` is what the handler calls it. */
  | {
      readonly kind: 'catching';
      readonly word: string;
      readonly said: string;
      readonly last: CaughtTake | null;
      /** How the last one lies to those kept since this began; null: as they are, or too few to tell. */
      readonly unlike: UnlikeTake | null;
    }
  | { readonly kind: 'working' };

/** What the model of this handler's words promises; null: nothing taught yet. */
export type Taught = { readonly enrolled: Enrolled; readonly takes: number; readonly talk: number } | null;

export interface TeachingParts {
  readonly ear: Pick<OwnWords, 'teach' | 'close' | 'enrol'>;
  readonly keeper: LibraryKeeper;
  readonly handler: () => string;
  /** `isWorking`: takes have come or gone since, and what that changes is being worked out. */
  readonly show: (state: TeachingState, taught: Taught, isWorking: boolean) => void;
}

export interface Teaching {
  catchTakes(word: string, said: string): void;
  caught(take: CaughtTake): Promise<void>;
  /** Closes the ear and builds the model from what was caught; nothing that is said after it is kept. */
  stop(): Promise<void>;
  addRecording(word: string, said: string, recording: { samples: Float32Array; sampleRateHz: number }): Promise<void>;
  remove(eventId: string): Promise<void>;
  /** Builds the model anew from all that was taught. */
  refresh(): Promise<Taught>;
  /** The model of what is taught now: takes that came in since the last one are waited for. */
  current(): Promise<Taught>;
}

/** A word is shorter than this, s; talk is cut into pieces of it. */
const LONGEST_TAKE_S: Seconds = 1.8;

export function createTeaching({ ear, keeper, handler, show }: TeachingParts): Teaching {
  let state: TeachingState = { kind: 'idle' };
  let taught: Taught = null;
  let taughtFrom = '';
  let lengthsS: readonly Seconds[] = [];
  let building: { readonly from: string; readonly done: Promise<Taught> } | null = null;
  const tell = (next: TeachingState = state) => {
    state = next;
    show(state, taught, building !== null);
  };
  const build = async (from: string) => {
    const { words, talk, learned, takes } = teachingOf(keeper.library(), handler());
    const pieces = talk.length + learned.filter(({ word }) => word === undefined).length;
    taught = takes === 0 ? null : { enrolled: await ear.enrol({ words, talk, learned }), takes, talk: pieces };
    taughtFrom = from;
    return taught;
  };
  const refresh = () => {
    const from = soundsKey(keeper.library(), handler());
    // It takes seconds on a phone: who asks for what is being built waits for that, not for a second one behind it.
    if (building?.from === from) return building.done;
    const mine = { from, done: build(from) };
    building = mine;
    tell();
    const over = () => {
      if (building === mine) building = null;
      // Meanwhile another word may have been begun, or a take have gone: that goes on.
      tell(building === null && state.kind === 'working' ? { kind: 'idle' } : state);
    };
    void mine.done.then(over, over);
    return mine.done;
  };
  const keep = (word: string, said: string, take: { samples: Float32Array; sampleRateHz: number }) =>
    keeper.keep({
      type: 'sound-taught',
      body: { word, said, handler: handler(), sampleRateHz: take.sampleRateHz, samples: toInt16(take.samples) },
    });
  return {
    catchTakes: (word, said) => {
      ear.teach(LONGEST_TAKE_S);
      lengthsS = [];
      tell({ kind: 'catching', word, said, last: null, unlike: null });
    },
    caught: async (take) => {
      if (state.kind !== 'catching') return;
      const { word, said } = state;
      const kept = isKept(word, take);
      const { speechLengthS } = take.report;
      tell({ ...state, last: take, unlike: kept && word !== TALK ? unlikeIn(speechLengthS, lengthsS) : null });
      if (!kept) return;
      lengthsS = [...lengthsS, speechLengthS];
      await keep(word, said, take.caught);
    },
    stop: async () => {
      if (state.kind !== 'catching') return;
      ear.close();
      tell({ kind: 'working' });
      await refresh();
    },
    addRecording: keep,
    remove: (of) => keeper.keep({ type: 'sound-removed', body: { of } }),
    refresh,
    current: () => (taughtFrom === soundsKey(keeper.library(), handler()) ? Promise.resolve(taught) : refresh()),
  };
}

/** This handler's takes, by word, their talk, and what corrections taught. */
export function teachingOf(library: Library, handler: string) {
  const takes = takesOf(library, handler);
  const samplesOf = (word: string) => (takes.get(word) ?? []).map(toTake);
  const words = Object.fromEntries(WORDS.map((word) => [word, samplesOf(word)] as const).filter(([, each]) => each.length > 0));
  const learned = library.learned
    .filter((take) => take.handler === handler)
    .map(({ of, word, stretch }) => ({ of, stretch, word: word === TALK ? undefined : word }));
  return { words, talk: samplesOf(TALK), learned, takes: Object.values(words).flat().length };
}

/** A word that went on too long, or came too faint or clipped, is asked for again; in talk any piece serves. */
function isKept(word: string, { caught, report }: CaughtTake): boolean {
  return word === TALK || (!caught.cut && report.faults.length === 0);
}

/** One word said three ways keeps within these of its middle, and lasts no longer than this, s (tried on recorded and made words, no source). */
const MUCH_LONGER = 1.7;
const MUCH_SHORTER = 0.55;
const LONG_FOR_A_WORD_S: Seconds = 1.3;

function unlikeIn(lengthS: Seconds, before: readonly Seconds[]): UnlikeTake | null {
  const middle = before.length > 0 ? median(before) : null;
  if (middle !== null && lengthS > MUCH_LONGER * middle) return 'longer';
  if (middle !== null && lengthS < MUCH_SHORTER * middle) return 'shorter';
  return lengthS > LONG_FOR_A_WORD_S ? 'long' : null;
}

/** Names what a model is made of. */
function soundsKey({ sounds, learned }: Library, handler: string): string {
  return [handler, ...[...sounds, ...learned].map(({ id }) => id)].join(' ');
}

function toTake({ samples, sampleRateHz }: TaughtSound): { samples: Float32Array; sampleRateHz: number } {
  return { samples: Float32Array.from(samples, (x) => x / 32768), sampleRateHz };
}

export function toInt16(samples: Float32Array): Int16Array {
  return Int16Array.from(samples, (x) => Math.max(-32768, Math.min(32767, Math.round(x * 32768))));
}
