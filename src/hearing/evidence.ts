/** Weighs what speaks for a word besides its best score: how it scores in quiet and in loud rooms, and how it lies in the room it was said in. */
import { median } from '../core/statistics/median.ts';

/** What is known of a stretch when it is decided on. Scores are widths of doubt over the threshold of the word. */
export interface Cues {
  /** Best scores around the peak, by the templates of quiet rooms and by all; null: this ear has no templates of loud rooms. */
  readonly inQuiet: number;
  readonly inLoud: number | null;
  /** Mean score around the peak, by the set that told it. */
  readonly mean: number;
  /** The voice over the noise under it, and over that of the last seconds, dB; not finite: the app sounded all through it. */
  readonly aboveNoiseDb: number;
  readonly aboveRoomDb: number;
  readonly hasPitch: boolean;
  /** Widths of doubt for being said in quite another pitch. */
  readonly strangeness: number;
  /** How loud it was, dB; null: the app sounded through most of it. */
  readonly levelDb: number | null;
}

/** What is weighed, each in its own unit (widths of doubt, dB), within bounds. Fitted on stretches from 1.5 widths under the threshold up. */
export interface Terms {
  /** The lesser of the two best scores: a word is like itself in either set. */
  readonly lesser: number;
  readonly inQuiet: number;
  readonly mean: number;
  /** How much nearer the room than CLEAR_DB lies what has no pitch: a clatter. Farther from it a whisper is as good as a voice. */
  readonly pitchless: number;
  /** By how much more than NOISY_DB it stands out of the noise under it: what is heard so well must be more like the word. */
  readonly clear: number;
  readonly room: number;
  readonly strangeness: number;
  /** How much louder or softer than the handler's last words. */
  readonly unlike: number;
}

export interface Evidence {
  terms(cues: Cues): Terms;
  /** Natural logarithm of the odds that a stretch is a word, less how strict the room makes us: over 0 it is one. About one for a width of doubt. */
  weigh(terms: Terms): number;
  /** What was taken for a word says how loud the handler speaks here, and how loud the room is. */
  heard(cues: Cues): void;
}

/**
 * Fitted on what the ear thought about in composed sessions of three speakers: logistic regression with a ridge. tests/bench/ear.md, *What else speaks for a
 * word*, tells on which, and what each speaker gets from a fit to the other two; `npm run bench:evidence` fits anew by the same method.
 */
const CONSTANT = 3.464;
const WEIGHTS: Terms = {
  lesser: 0.404,
  inQuiet: 0.458,
  mean: 0.124,
  pitchless: -0.316,
  clear: -0.431,
  room: 0.167,
  strangeness: -1.42,
  unlike: -0.113,
};
const clamp = (x: number, least: number, most: number): number => Math.min(most, Math.max(least, x));

type Scores = Pick<Cues, 'inQuiet' | 'inLoud' | 'mean'>;
type ScoreTerm = 'lesser' | 'inQuiet' | 'mean';
const SCORE_TERMS: readonly ScoreTerm[] = ['lesser', 'inQuiet', 'mean'];

function scoreTerms({ inQuiet, inLoud, mean }: Scores): Pick<Terms, ScoreTerm> {
  return {
    lesser: clamp(Math.min(inQuiet, inLoud ?? inQuiet), -6, 6),
    inQuiet: clamp(inQuiet, -4, 6),
    mean: clamp(mean, -6, 6),
  };
}

/** What the scores alone add to what is weighed. */
export function weighScores(scores: Scores): number {
  const terms = scoreTerms(scores);
  return SCORE_TERMS.reduce((sum, term) => sum + WEIGHTS[term] * terms[term], 0);
}

export const TERMS = Object.keys(WEIGHTS) as readonly (keyof Terms)[];
const CLEAR_DB = 14;
const NOISY_DB = 4;

/** Beyond these nothing is gained or lost by more. */
const LEAST_DB = -5;
const MOST_DB = 18;
const MOST_UNLIKE_DB = 12;
/** What is taken for the room's distance where the app's own sound hides it: the middle of what was measured. */
const UNKNOWN_DB = 5;

/** So many words back the handler's level and the room are looked at, and so many must have been heard. */
const BACK = 9;
const FEWEST = 3;

/**
 * How far over even odds counts. In a quiet room nearly every word is heard: there a false trigger costs more than a word that is said again. In a loud one it
 * is the other way round. In between it changes with how far the last words stood out of the room, dB.
 */
const STRICT = { inLoud: 0.75, inQuiet: 1.75, loudDb: 9, quietDb: 15 };

const known = (db: number): number => (Number.isFinite(db) ? clamp(db, LEAST_DB, MOST_DB) : UNKNOWN_DB);

const middle = (last: readonly number[]): number | null => (last.length < FEWEST ? null : median(last));

export function createEvidence(): Evidence {
  const levels: number[] = [];
  const rooms: number[] = [];

  function remember(into: number[], value: number): void {
    into.push(value);
    if (into.length > BACK) into.shift();
  }

  function strictness(): number {
    const room = middle(rooms);
    if (room === null) return STRICT.inLoud;
    const share = (room - STRICT.loudDb) / (STRICT.quietDb - STRICT.loudDb);
    return STRICT.inLoud + (STRICT.inQuiet - STRICT.inLoud) * clamp(share, 0, 1);
  }

  return {
    terms({ inQuiet, inLoud, mean, aboveNoiseDb, aboveRoomDb, hasPitch, strangeness, levelDb }) {
      const room = known(aboveRoomDb);
      const usualDb = middle(levels);
      return {
        ...scoreTerms({ inQuiet, inLoud, mean }),
        pitchless: hasPitch ? 0 : Math.max(0, CLEAR_DB - room),
        clear: Math.max(0, known(aboveNoiseDb) - NOISY_DB),
        room,
        strangeness,
        unlike: levelDb === null || usualDb === null ? 0 : Math.min(MOST_UNLIKE_DB, Math.abs(levelDb - usualDb)),
      };
    },
    weigh: (terms) => TERMS.reduce((sum, term) => sum + WEIGHTS[term] * terms[term], CONSTANT - strictness()),
    heard({ levelDb, aboveRoomDb }) {
      if (levelDb !== null) remember(levels, levelDb);
      if (Number.isFinite(aboveRoomDb)) remember(rooms, aboveRoomDb);
    },
  };
}
