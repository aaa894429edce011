/** Hears taught clicks (clicker, tongue click): one or two pulses out of quiet into quiet, as like the taught ones as those are to each other. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import { mean } from './mean.ts';
import { createPulseFinder, type Pulse, type PulseFinder } from './pulse.ts';
import { HIGHEST_RATE_HZ, LOWEST_RATE_HZ } from './resample.ts';
import { at16kHz, type Take } from './take.ts';

/** One click, as it was found. Times are seconds of the stream. */
export interface Click {
  readonly atS: number;
  readonly endedAtS: number;
  /** In order; the strongest and those at most 15 dB under it. */
  readonly pulses: readonly Pulse[];
}

/** What is known of a taught click. Plain data. */
export interface ClickWord {
  readonly word: string;
  readonly takes: readonly Click[];
  /** Distance below which a click is this word; twice half of it over it is unsure. */
  readonly threshold: number;
}

/**
 * It is quiet for this long after the last pulse, s, once the pulse itself has died away. What follows sooner belongs to the same click
 * (a clicker's strip snaps back after 20 to 40 ms, as the recipe has it; a slow press takes longer).
 */
const QUIET_AFTER_S = 0.08;
const DIES_AWAY_S = 0.03;
/** Quiet is so far under the pulse, dB: a room's echo lies lower, a vowel after a "t" does not. */
const QUIET_DB = 9;
const COUNTS_DB = 15;
/** A pulse is over within this, s: what a listener is told of its end. */
const PULSE_S = 0.01;
/** Where a take's click is thought to begin before its first pulse, s. */
const LEAD_S = 0.005;
/** More pulses are a rattle. */
const MOST_PULSES = 2;

/** What two presses of one clicker differ by (tried on made sounds, no source): dB a band, s between pulses, factor of the decay. */
const BANDS_APART_DB = 4;
const GAP_APART_S = 0.004;
const DECAY_APART = Math.log(2);

/** Bounds of the threshold: takes that agree too well promise too much, takes that agree in nothing allow everything. */
const STRICTEST = 1;
const LOOSEST = 2;
/** A new click is less like the takes than they are to each other. */
const SLACK = 1.4;
/** Between the threshold and this much of it a click is unsure. */
export const UNSURE_FACTOR = 1.25;
/** A take is a click when this share of its sound lies in the click. */
const MOSTLY = 0.7;

export interface ClickFinder {
  push(samples: Float32Array): readonly Click[];
}

/** Gathers pulses into clicks; a click is given out once quiet has followed it. */
export function createClickFinder(finder: PulseFinder = createPulseFinder()): ClickFinder {
  let pulses: Pulse[] = [];

  function isApart(strongest: Pulse, first: Pulse, endedAtS: number): boolean {
    const after = finder.loudest(endedAtS + DIES_AWAY_S, endedAtS + QUIET_AFTER_S);
    return first.beforeDb < strongest.peakDb - QUIET_DB && after < strongest.peakDb - QUIET_DB;
  }

  function gather(): Click | null {
    const strongest = pulses.reduce((a, b) => (b.peakDb > a.peakDb ? b : a));
    const counted = pulses.filter(({ peakDb }) => peakDb > strongest.peakDb - COUNTS_DB);
    pulses = [];
    const first = counted[0] as Pulse;
    const endedAtS = (counted.at(-1) as Pulse).atS;
    return counted.length <= MOST_PULSES && isApart(strongest, first, endedAtS)
      ? { atS: first.atS, endedAtS: endedAtS + PULSE_S, pulses: counted }
      : null;
  }

  return {
    push(samples) {
      const clicks: Click[] = [];
      const settle = (nowS: number): void => {
        const last = pulses.at(-1);
        if (!last || nowS - last.atS < QUIET_AFTER_S) return;
        const click = gather();
        if (click) clicks.push(click);
      };
      for (const pulse of finder.push(samples)) {
        if (pulse.atS - (pulses.at(-1)?.atS ?? pulse.atS) > QUIET_AFTER_S) settle(Number.POSITIVE_INFINITY);
        pulses.push(pulse);
      }
      settle(finder.nowS());
      return clicks;
    },
  };
}

/** At 16 kHz, with quiet after it: a click is given out only then. */
function quietened(take: Take): Float32Array {
  const samples = at16kHz(take);
  const whole = new Float32Array(samples.length + EAR_RATE_HZ / 4);
  samples.forEach((x, i) => {
    whole[i] = Number.isFinite(x) ? x : 0;
  });
  return whole;
}

/** Every click in a recording. */
export function clicksIn(take: Take): readonly Click[] {
  return createClickFinder().push(quietened(take));
}

/** The click in a take, when the take is one; null: it is speech, or nothing. */
export function clickOf(take: Take): Click | null {
  if (!(take.sampleRateHz >= LOWEST_RATE_HZ && take.sampleRateHz <= HIGHEST_RATE_HZ)) return null;
  const loudness = (click: Click) => Math.max(...click.pulses.map(({ peakDb }) => peakDb));
  const click = clicksIn(take).reduce<Click | null>(
    (best, each) => (best && loudness(best) >= loudness(each) ? best : each),
    null,
  );
  return click && shareWithin(quietened(take), click) > MOSTLY ? click : null;
}

/** Share of the sound's power, above the quiet of the recording, that lies in the click and its echo. */
function shareWithin(samples: Float32Array, { atS, endedAtS }: Click): number {
  const power = (from: number, to: number) => {
    let sum = 0;
    for (let i = Math.max(1, from); i < Math.min(to, samples.length); i++)
      sum += ((samples[i] as number) - (samples[i - 1] as number)) ** 2;
    return sum;
  };
  const whole = power(0, samples.length);
  return whole > 0
    ? power(Math.round((atS - LEAD_S) * EAR_RATE_HZ), Math.round((endedAtS + QUIET_AFTER_S) * EAR_RATE_HZ)) / whole
    : 0;
}

/** How unlike two clicks are: 1 is what two presses of one clicker may differ by. Infinite when one is a pair and one is not. */
export function distance(a: Click, b: Click): number {
  if (a.pulses.length !== b.pulses.length) return Number.POSITIVE_INFINITY;
  const pairs = a.pulses.map((pulse, i) => [pulse, b.pulses[i] as Pulse] as const);
  const bands = mean(pairs.map(([p, q]) => rmsApart(p.bandsDb, q.bandsDb) / BANDS_APART_DB));
  const decay = mean(pairs.map(([p, q]) => Math.abs(Math.log(p.decayMs / q.decayMs)) / DECAY_APART));
  const gap = Math.abs(lengthOf(a) - lengthOf(b)) / GAP_APART_S;
  return Math.hypot(bands, 0.5 * decay, gap);
}

const lengthOf = (click: Click): number => click.endedAtS - click.atS;

function rmsApart(a: Float32Array, b: Float32Array): number {
  return Math.sqrt(a.reduce((sum, x, i) => sum + (x - (b[i] as number)) ** 2, 0) / a.length);
}

/** Mean distance to the two nearest takes of its kind; infinite when all takes are pairs and it is none, or the other way round. */
function toTakes(click: Click, takes: readonly Click[]): number {
  const nearest = takes
    .map((take) => distance(click, take))
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  return nearest.length === 0 ? Number.POSITIVE_INFINITY : mean(nearest.slice(0, 2));
}

/** @param takes clicks of the word. @param others clicks found in the takes of other words and in talk. */
export function teachClick(word: string, takes: readonly Click[], others: readonly Click[]): ClickWord {
  const own =
    takes.length > 1
      ? takes
          .map((take) =>
            toTakes(
              take,
              takes.filter((other) => other !== take),
            ),
          )
          .filter(Number.isFinite)
      : [];
  const widest = Math.min(LOOSEST, Math.max(STRICTEST, SLACK * Math.max(0, ...own)));
  const nearest = Math.min(...others.map((other) => toTakes(other, takes)), Number.POSITIVE_INFINITY);
  // Halfway to the nearest that it must not be taken for; a doubt goes to the stricter side.
  return { word, takes, threshold: Math.min(widest, Math.max(0.5, (Math.max(0, ...own) + nearest) / 2)) };
}

/** How far a click is from each taught one, nearest first, in thresholds: up to 1 it is that word. */
export function matchClick(click: Click, words: readonly ClickWord[]): { readonly word: string; readonly ratio: number }[] {
  return words
    .map(({ word, takes, threshold }) => ({ word, ratio: toTakes(click, takes) / threshold }))
    .sort((a, b) => a.ratio - b.ratio);
}
