/** Listens: samples of any rate in, words out. The same code runs in a worker and in Node. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import { createBank } from './bank.ts';
import { type CleanStream, cleanerOf } from './clean.ts';
import { createClickEar } from './click-ear.ts';
import { createDecider, type Hearing, type Scored } from './decide.ts';
import { featureFor } from './enrol.ts';
import { normalise } from './feature.ts';
import { HOP } from './front.ts';
import { createGain } from './gain.ts';
import { createLoudness } from './loudness.ts';
import { createMemory } from './memory.ts';
import type { Model } from './model.ts';
import { createNoiseMemory } from './noise-memory.ts';
import { createOwnSound } from './own-sound.ts';
import { createPitchMemory } from './pitch.ts';
import { createResampler } from './resample.ts';
import { createScorer } from './score.ts';
import { createSlider } from './slide.ts';
import { stepTimeS } from './template.ts';
import type { NetworkWeights } from './weights/shape.ts';

export type { Hearing };

export interface ListenOptions {
  readonly sampleRateHz: number;
  /** Stream time of the first sample. */
  readonly startsAtS?: number;
  /** Needed for a model with fused features. */
  readonly weights?: NetworkWeights | undefined;
  /** Keep with every hearing what can be learnt from it: its features, and its sound if wished. */
  readonly keep?: { readonly sound: boolean } | undefined;
  /** For measuring: every candidate with what was decided on it. */
  readonly trace?: ((line: unknown) => void) | undefined;
}

export interface Listener {
  readonly features: Model['features'];
  push(block: Float32Array): readonly Hearing[];
  /** Ends the stream: what was pending is decided. */
  flush(): readonly Hearing[];
  /** The app itself sounds from one moment of the stream to another: that sound is never a word. */
  expectOwnSound(fromS: number, toS: number): void;
  /** The taught words that may well come next: any other must be clearer to be heard. Null: all alike. */
  expect(words: readonly string[] | null): void;
  level(): { noiseDb: number; nowDb: number; speaking: boolean };
  /** Nothing is pushed afterwards: gives back what it held. */
  close(): void;
}

/** The model was taught with the noise taken out: without, its words would not be known again. */
function cleanStream(weights: NetworkWeights | undefined): CleanStream {
  const cleaner = weights?.cleaner && cleanerOf(weights.cleaner);
  if (!cleaner) throw new Error('listener: this model needs what takes out the noise');
  return cleaner.open();
}

export function createListener(model: Model, options: ListenOptions): Listener {
  const weights = model.features === 'cepstra' ? undefined : options.weights;
  if (model.features !== 'cepstra' && !weights) throw new Error('listener: this model needs the network weights');
  const clean = model.features === 'cleaned' ? cleanStream(weights) : null;
  const own = createOwnSound();
  const noise = clean && createNoiseMemory(own.at);
  const feature = featureFor(weights, clean !== null);
  const resampler = createResampler(options.sampleRateHz);
  const startsAtS = options.startsAtS ?? 0;
  const gain = createGain(model.taughtLevelDb);
  const loudness = createLoudness(gain.frame);
  const sliders = model.templates.map((template) => createSlider(template.steps));
  const bank = createBank(model.templates, feature.dims, model.parts);
  const words = model.words.map((w) => w.word);
  const costs = new Float64Array(sliders.length);
  const inQuiet = createSet(({ loud }) => !loud);
  const inLoud = clean && createSet(() => true);
  const vector = new Float32Array(feature.dims);
  const pitch = createPitchMemory();
  const decider = createDecider(model, loudness, pitch, own, noise, options.trace);
  const clickEar = createClickEar(model.clicks);
  const memory = options.keep ? createMemory(feature, options.keep.sound) : null;
  const levelled = new Float32Array(HOP);
  let taken = 0;
  let factor = 1;
  let steps = 0;
  let pushed = 0;
  let heard: readonly Hearing[] = [];

  /** Some of the templates, and the scores that they give. */
  function createSet(isIn: (template: Model['templates'][number]) => boolean): Scored & { score(): void } {
    const members = model.templates.flatMap((template, i) => (isIn(template) ? [i] : []));
    const templates = members.map((i) => model.templates[i] as Model['templates'][number]);
    const scorer = createScorer(words, templates);
    const mine = new Float64Array(members.length);
    return {
      scores: scorer.scores,
      score() {
        for (let k = 0; k < members.length; k++) mine[k] = costs[members[k] as number] as number;
        scorer.score(mine);
      },
      startOf(word) {
        let least = Infinity;
        let start = 0;
        for (let k = 0; k < members.length; k++) {
          if (templates[k]?.word !== words[word] || (mine[k] as number) >= least) continue;
          least = mine[k] as number;
          start = (sliders[members[k] as number] as (typeof sliders)[number]).startedAtStep;
        }
        return stepTimeS(feature, start);
      },
    };
  }

  function takeVector(raw: Float32Array): void {
    memory?.vector(raw);
    normalise(raw, model.normaliser, model.parts, vector, 0);
    bank.compare(vector);
    for (let i = 0; i < sliders.length; i++) {
      const slider = sliders[i] as (typeof sliders)[number];
      slider.step(bank.distances, bank.offsets[i] as number);
      costs[i] = slider.cost;
    }
    if (words.length === 0) return;
    inQuiet.score();
    inLoud?.score();
    decider.step(inQuiet, inLoud, stepTimeS(feature, steps));
    steps++;
  }

  /** A hop at a time, so that what is remembered of the noise is never ahead of what is heard by more. */
  function hearAll(samples: Float32Array): void {
    if (!clean) return take(samples);
    for (let at = 0; at < samples.length; at += HOP) take(clean.push(samples.subarray(at, at + HOP), noise?.take));
  }

  /** Pieces end where a hop ends, so that what is heard does not hang on how the microphone cuts its blocks. */
  function take(samples: Float32Array): void {
    for (let at = 0; at < samples.length; ) {
      const piece = samples.subarray(at, at + HOP - (taken % HOP));
      if (taken % HOP === 0) factor = gain.factor();
      loudness.push(piece);
      pitch.push(piece);
      for (let i = 0; i < piece.length; i++) levelled[i] = (piece[i] as number) * factor;
      feature.push(levelled.subarray(0, piece.length), takeVector);
      at += piece.length;
      taken += piece.length;
    }
  }

  /** A click is told apart by other means: nothing could be learnt from its features. */
  function withMemory(h: Hearing): Hearing {
    const nearest = h.kind === 'word' ? h.word : h.nearest[0]?.word;
    if (!memory || model.clicks.some(({ word }) => word === nearest)) return h;
    const kept = memory.cut(h.startedAtS, h.endedAtS, h.loudAlone ?? false);
    return kept ? { ...h, kept } : h;
  }

  /** Moments inside are seconds of the 16 kHz stream from 0; outside they are stream time. */
  function outward(found: readonly Hearing[]): readonly Hearing[] {
    const decidedAtS = startsAtS + pushed / options.sampleRateHz;
    return found
      .map(withMemory)
      .map((h) => ({ ...h, startedAtS: startsAtS + h.startedAtS, endedAtS: startsAtS + h.endedAtS, decidedAtS }));
  }

  return {
    features: model.features,
    push(block) {
      pushed += block.length;
      const samples = resampler.push(block);
      const clicked = clickEar.push(samples);
      memory?.sound(samples);
      hearAll(samples);
      heard = clickEar.join(clicked, decider.collect());
      return heard.length === 0 ? heard : outward(heard);
    },
    flush() {
      const clicked = [resampler.flush(), new Float32Array(EAR_RATE_HZ / 2)].flatMap((samples) => {
        const found = clickEar.push(samples);
        hearAll(samples);
        return found;
      });
      return outward(clickEar.join(clicked, decider.collect()));
    },
    expectOwnSound(fromS, toS) {
      decider.expectOwnSound(fromS - startsAtS, toS - startsAtS);
      clickEar.expectOwnSound(fromS - startsAtS, toS - startsAtS);
    },
    expect: decider.expect,
    level: () => ({ noiseDb: loudness.noiseDb(), nowDb: loudness.nowDb(), speaking: loudness.speaking() }),
    close: () => clean?.close(),
  };
}
