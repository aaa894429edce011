/** Decides when a rising score is a word: at its peak, when a pause follows, once. What is nearly a word is unsure. */
import { type Cues, createEvidence } from './evidence.ts';
import type { Loudness } from './loudness.ts';
import { mean } from './mean.ts';
import type { Kept } from './memory.ts';
import type { Model } from './model.ts';
import type { NoiseMemory } from './noise-memory.ts';
import type { OwnSound } from './own-sound.ts';
import { pauseAround } from './pause.ts';
import { type PitchMemory, strangeness } from './pitch.ts';
import { END_LAG_S, START_LAG_S } from './template.ts';

export type Hearing =
  | {
      readonly kind: 'word';
      readonly word: string;
      readonly startedAtS: number;
      readonly endedAtS: number;
      readonly decidedAtS: number;
      /** 0 to 1. */
      readonly confidence: number;
      /** The templates of quiet rooms did not tell it at all. */
      readonly loudAlone?: true;
      /** Enough to learn from; only where the listener was asked to keep it. */
      readonly kept?: Kept;
    }
  | {
      readonly kind: 'unsure';
      readonly startedAtS: number;
      readonly endedAtS: number;
      readonly decidedAtS: number;
      /** The two nearest words, nearest first. */
      readonly nearest: readonly { readonly word: string; readonly confidence: number }[];
      readonly loudAlone?: true;
      readonly kept?: Kept;
    };

/** A peak stands when the score has not risen for this long. */
const PEAK_STANDS_S = 0.075;
/** A word is waited for no longer than this after its peak; running talk has then gone on. */
const LONGEST_WAIT_S = 0.2;
/** How far the sound must fall before and after, dB. */
const BEFORE_DB = 3;
const AFTER_DB = 4;
/** A word this clear (in widths of doubt) needs no quiet before it: a clatter may have fallen there. After it quiet is always needed, or a long word is heard twice. */
const CLEAR_WIDTHS = 3;
/** Nothing else begins this soon after a word (suggestion of the recipe). */
const REFRACTORY_S = 0.25;
/** Two onsets this close are one word heard twice: by its head, then (past a stop's closure) whole. */
const SAME_ONSET_S = 0.2;
/** The next word cannot begin inside the last one; onsets are known to some frames. */
const OVERLAP_S = 0.08;
/** Within so much under what makes it a word a stretch is unsure: widths of doubt, or what the evidence counts in, which is about one. */
const UNSURE = 1;
/** What is less like a word than this is not thought about, widths of doubt: of words at 5 dB some lie far under the threshold, and all else speaks for them. */
const LIKE_WIDTHS = 3;
/** Scores this near to the peak count with it, s; remembered until the peak has been decided on. */
const AROUND_S = 0.05;
const REMEMBERED_S = 0.5;
/** A score under this is no worse for being lower, widths of doubt. */
const LEAST_SCORE = -10;

/**
 * How much clearer a word must be that nobody expects now, in widths of doubt: a soft prior, no mute. Easing what is expected brought more
 * false accepts than words (see tests/bench/ear.md).
 */
const SURPRISE_WIDTHS = 1.5;

/** A stretch of which the app itself sounded more than this is the app's, not the handler's, unless it is very like a word. */
const MOSTLY = 0.6;

/** A voice that stands less than this out of its room's noise is in a loud room, dB: what is like a word in loud rooms counts as well. */
const LOUD_ROOM_DB = 12;
/** What holds hardly any voice is no word, whatever it is like, dB: of words at 5 dB one in twenty lies below -1, of clatter taken for words half below -10. */
const BURIED_DB = -5;
/** Nor is a voice that lies this far under the noise of its room. */
const UNDER_ROOM_DB = -3;

interface Candidate {
  readonly word: number;
  readonly margin: number;
  readonly peakAtS: number;
  readonly startedAtS: number;
  readonly endedAtS: number;
  /** How far each word is over its threshold, in widths of doubt. */
  readonly margins: readonly number[];
  /** The templates of loud rooms were nearer, and count here. */
  readonly byLoud: boolean;
}

type StandsOut = Pick<Cues, 'aboveNoiseDb' | 'aboveRoomDb'>;

/** A word's scores at one step, in widths of doubt over its threshold; null: no templates of loud rooms. */
interface Step {
  readonly atS: number;
  readonly inQuiet: readonly number[];
  readonly inLoud: readonly number[] | null;
}

/** Scores of the words by one set of templates, and where the best template of a word would have it begin. */
export interface Scored {
  readonly scores: Float64Array;
  startOf(word: number): number;
}

export interface Decider {
  /** @param inLoud by the templates of loud rooms too; null: there are none. */
  step(inQuiet: Scored, inLoud: Scored | null, nowS: number): void;
  expectOwnSound(fromS: number, toS: number): void;
  /** The taught words that may well come next; null: all alike. */
  expect(words: readonly string[] | null): void;
  /** What was decided since the last call; `decidedAtS` is filled in by the caller. */
  collect(): Hearing[];
}

const certainty = (margin: number): number => 1 / (1 + Math.exp(-margin));

export function createDecider(
  model: Model,
  loudness: Loudness,
  pitch: PitchMemory,
  own: OwnSound,
  noise: NoiseMemory | null,
  trace: ((line: unknown) => void) | undefined,
): Decider {
  const surprise = model.words.map(() => 0);
  const evidence = createEvidence();
  const likeWidths = noise ? LIKE_WIDTHS : UNSURE;
  const hasLoud = model.words.some(({ loud }) => loud);
  let recent: Step[] = [];
  let pending: Candidate | undefined;
  let takenFromS = Number.NEGATIVE_INFINITY;
  let takenUntilS = Number.NEGATIVE_INFINITY;
  let out: Hearing[] = [];

  const margins = { inQuiet: new Float64Array(model.words.length), inLoud: new Float64Array(model.words.length) };

  /** Fills in how far each word is over its threshold; answers the best of them. */
  function place(scores: Float64Array, set: keyof typeof margins): number {
    const into = margins[set];
    let best = 0;
    model.words.forEach((word, w) => {
      const at = set === 'inLoud' ? word.loud : word;
      into[w] = at ? ((scores[w] as number) - at.threshold) / at.width - (surprise[w] as number) : Number.NEGATIVE_INFINITY;
      if ((into[w] as number) > (into[best] as number)) best = w;
    });
    return best;
  }

  /** A tap or a call is never so like a word: what is this clear was said over it, by a handler who marks on the beat. */
  function isOwnSound({ startedAtS, endedAtS, margin }: Candidate): boolean {
    return own.within(startedAtS, endedAtS) || (margin <= CLEAR_WIDTHS && own.share(startedAtS, endedAtS) > MOSTLY);
  }

  /** A door that slammed seconds ago still counts in what the room is: what is very clear stands after it. */
  function isBuried({ margin }: Candidate, { aboveNoiseDb, aboveRoomDb }: StandsOut): boolean {
    return (margin <= CLEAR_WIDTHS && aboveRoomDb < UNDER_ROOM_DB) || aboveNoiseDb < BURIED_DB;
  }

  /** Null: this ear takes no noise out, so it is not known. */
  function standsOut({ startedAtS, endedAtS }: Candidate): StandsOut | null {
    return (
      noise && {
        aboveNoiseDb: noise.aboveNoiseDb(startedAtS, endedAtS),
        aboveRoomDb: noise.aboveRoomDb(startedAtS, endedAtS),
      }
    );
  }

  function close(candidate: Candidate, nowS: number): void {
    pending = undefined;
    const pause = pauseAround(loudness, own, candidate.startedAtS, candidate.endedAtS, nowS);
    const apart = pause.afterDb >= AFTER_DB && (pause.beforeDb >= BEFORE_DB || candidate.margin > CLEAR_WIDTHS);
    const { startedAtS, endedAtS } = candidate;
    const word = (model.words[candidate.word] as Model['words'][number]).word;
    const octaves = apart ? pitch.between(startedAtS, endedAtS) : null;
    const stranger = strangeness(model.voice, word, octaves);
    const distance = standsOut(candidate);
    const buried = distance !== null && isBuried(candidate, distance);
    const mine = isOwnSound(candidate);
    // For an ear that takes no noise out what else there is was never weighed; of a piece of talk nobody asks.
    const cues = distance && apart ? cuesOf(candidate, distance, pause.levelDb, octaves !== null, stranger) : null;
    const terms = cues && evidence.terms(cues);
    const margin = terms ? evidence.weigh(terms) : candidate.margin - stranger;
    trace?.({ ...candidate, ...pause, noiseDb: loudness.noiseDb(), nowS, apart, buried, stranger, mine, terms });
    const loudAlone = candidate.byLoud && !(cues && cues.inQuiet > 0) ? { loudAlone: true as const } : {};
    if (!apart || buried || margin < -UNSURE || mine) return;
    if (margin > 0) {
      out.push({
        kind: 'word',
        word,
        startedAtS,
        endedAtS,
        decidedAtS: nowS,
        confidence: certainty(margin),
        ...loudAlone,
      });
      if (cues) evidence.heard(cues);
      takenFromS = startedAtS;
      takenUntilS = endedAtS;
    } else
      out.push({
        kind: 'unsure',
        startedAtS,
        endedAtS,
        decidedAtS: nowS,
        nearest: nearest(candidate.margins, margin - candidate.margin),
        ...loudAlone,
      });
  }

  function cuesOf(
    { word, byLoud, peakAtS, startedAtS, endedAtS }: Candidate,
    distance: StandsOut,
    levelDb: number,
    hasPitch: boolean,
    stranger: number,
  ): Cues {
    const around = recent.filter(({ atS }) => Math.abs(atS - peakAtS) < AROUND_S);
    const inQuiet = around.map((step) => step.inQuiet[word] as number);
    const inLoud = around.flatMap((step) => step.inLoud?.[word] ?? []);
    return {
      inQuiet: Math.max(...inQuiet),
      inLoud: inLoud.length > 0 ? Math.max(...inLoud) : null,
      mean: mean((byLoud ? inLoud : inQuiet).map((score) => Math.max(score, LEAST_SCORE))),
      ...distance,
      hasPitch,
      strangeness: stranger,
      levelDb: own.share(startedAtS, endedAtS) > MOSTLY ? null : levelDb,
    };
  }

  function nearest(over: readonly number[], besides: number): { word: string; confidence: number }[] {
    return model.words
      .map(({ word }, w) => ({ word, confidence: certainty((over[w] as number) + besides) }))
      .sort((a, b) => b.confidence - a.confidence)
      .slice(0, 2);
  }

  /** By the templates of loud rooms where they are nearer and the room is loud, else by those of quiet ones. */
  function bestOf(
    inQuiet: Scored,
    inLoud: Scored | null,
    nowS: number,
  ): Pick<Candidate, 'word' | 'margin' | 'startedAtS'> & { readonly set: keyof typeof margins } {
    const word = place(inQuiet.scores, 'inQuiet');
    const margin = margins.inQuiet[word] as number;
    if (inLoud && noise) {
      const other = place(inLoud.scores, 'inLoud');
      const over = margins.inLoud[other] as number;
      const startedAtS = inLoud.startOf(other) - START_LAG_S;
      if (over > margin && over >= -likeWidths && noise.aboveRoomDb(startedAtS, nowS - END_LAG_S) < LOUD_ROOM_DB)
        return { word: other, margin: over, startedAtS, set: 'inLoud' };
    }
    return { word, margin, startedAtS: inQuiet.startOf(word) - START_LAG_S, set: 'inQuiet' };
  }

  function remember(nowS: number): void {
    recent = recent.filter(({ atS }) => atS > nowS - REMEMBERED_S);
    recent.push({ atS: nowS, inQuiet: Array.from(margins.inQuiet), inLoud: hasLoud ? Array.from(margins.inLoud) : null });
  }

  function consider(inQuiet: Scored, inLoud: Scored | null, nowS: number): void {
    const { word, margin, startedAtS, set } = bestOf(inQuiet, inLoud, nowS);
    if (noise) remember(nowS);
    if (margin < -likeWidths || (pending && pending.margin >= margin)) return;
    const endedAtS = nowS - END_LAG_S;
    if (startedAtS < Math.max(takenFromS + SAME_ONSET_S, takenUntilS - OVERLAP_S)) return;
    if ((startedAtS + endedAtS) / 2 < takenUntilS + REFRACTORY_S) return;
    pending = { word, margin, peakAtS: nowS, startedAtS, endedAtS, margins: Array.from(margins[set]), byLoud: set === 'inLoud' };
  }

  function mayClose(candidate: Candidate, nowS: number): boolean {
    if (nowS - candidate.peakAtS < PEAK_STANDS_S) return false;
    return (
      nowS - candidate.peakAtS >= LONGEST_WAIT_S ||
      pauseAround(loudness, own, candidate.startedAtS, candidate.endedAtS, nowS).afterDb >= AFTER_DB
    );
  }

  return {
    step(inQuiet, inLoud, nowS) {
      consider(inQuiet, inLoud, nowS);
      if (pending && mayClose(pending, nowS)) close(pending, nowS);
    },
    expectOwnSound: own.expect,
    expect(words) {
      model.words.forEach(({ word }, w) => {
        surprise[w] = words === null || words.includes(word) ? 0 : SURPRISE_WIDTHS;
      });
    },
    collect() {
      const found = out;
      if (found.length > 0) out = [];
      return found;
    },
  };
}
