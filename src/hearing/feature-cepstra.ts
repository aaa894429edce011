/** The plain feature: cepstra of the last frames with their slopes, level and colour of the microphone removed as they drift. One vector every 20 ms. */
import { CEPSTRA, cepstrumInto } from './cepstra.ts';
import type { Feature } from './feature.ts';
import { createFront, HOP, SPAN } from './front.ts';

const FRAMES_A_STEP = 2;
/** Frames side by side in one vector: 60 ms, so that short words keep their order of sounds. */
const STACK = 3;

export function createCepstraFeature(): Feature {
  const front = createFront();
  const stack = new Float32Array(CEPSTRA * STACK);
  const one = new Float32Array(CEPSTRA);
  let frames = 0;
  return {
    kind: 'cepstra',
    parts: [{ dims: CEPSTRA * STACK, weight: 2 }],
    dims: CEPSTRA * STACK,
    stepSamples: FRAMES_A_STEP * HOP,
    firstSamples: (FRAMES_A_STEP - 1) * HOP + SPAN / 2,
    push(samples, takeVector) {
      front.push(samples, (power) => {
        cepstrumInto(power, one);
        frames++;
        if (frames % FRAMES_A_STEP !== 0) {
          stack.copyWithin(0, CEPSTRA);
          stack.set(one, CEPSTRA * (STACK - 1));
          return;
        }
        stack.copyWithin(0, CEPSTRA);
        stack.set(one, CEPSTRA * (STACK - 1));
        takeVector(stack);
      });
    },
  };
}
