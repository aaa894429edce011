/** Does the cleaner leave the handler's words alone? A whistle it takes for noise, and it would be lost. */

import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import { mean } from './mean.ts';
import { type CutTake, meanDb } from './take.ts';
import { BEFORE_S, type Clean, ROOMS_DB, stagedSamples } from './template.ts';

/** 120 words of four speakers lost .4 dB at most, a whistle 16, a long hiss 3 (with .15 of the sound left in; C). */
const MOST_LOST_DB = 2;

/** How far a take falls in the quieter room when it is cleaned, dB. */
function lostDb(speech: Float32Array, clean: Clean): number {
  const staged = stagedSamples(speech, ROOMS_DB[0] as number, 1);
  const from = Math.round(BEFORE_S * EAR_RATE_HZ);
  const word = (samples: Float32Array): Float32Array => samples.subarray(from, from + speech.length);
  return meanDb(word(staged)) - meanDb(word(clean(staged)));
}

/** Whether every word keeps its sound, by the mean over its takes. */
export function survives(
  cuts: readonly (Pick<CutTake, 'speech'> & { readonly word: string | undefined })[],
  clean: Clean,
): boolean {
  const words = new Set(cuts.flatMap(({ word }) => (word === undefined ? [] : [word])));
  return [...words].every((word) => {
    const lost = cuts.filter((cut) => cut.word === word).map(({ speech }) => lostDb(speech, clean));
    return mean(lost) <= MOST_LOST_DB;
  });
}
