/** The plain feature: cepstra alone, for where the network's weights are absent. One vector every 20 ms. */
import { createCepstrumStack } from './cepstrum-stack.ts';
import type { Feature } from './feature.ts';
import { HOP, SPAN } from './front.ts';

const FRAMES_A_STEP = 2;
/** Frames side by side in one vector: 60 ms, so that short words keep their order of sounds. */
const STACK = 6;

export function createCepstraFeature(): Feature {
  const stack = createCepstrumStack(STACK);
  return {
    kind: 'cepstra',
    parts: [{ dims: stack.values.length, weight: 3 }],
    dims: stack.values.length,
    stepSamples: FRAMES_A_STEP * HOP,
    firstSamples: (FRAMES_A_STEP - 1) * HOP + SPAN / 2,
    push(samples, takeVector) {
      stack.push(samples, () => {
        if (stack.frames() % FRAMES_A_STEP === 0) takeVector(stack.values);
      });
    },
  };
}
