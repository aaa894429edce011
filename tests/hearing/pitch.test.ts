/** Pitch against buzzes of known pitch and real voices; what a voice counts for. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readWav } from '../../src/command/wav-in.ts';
import { createPitchMemory, pitchOf, strangeness, voiceOf } from '../../src/hearing/pitch.ts';
import { at16kHz } from '../../src/hearing/take.ts';
import { noise, say } from './sounds.ts';

const RATE = 16_000;
/** A buzz: all the harmonics of a voice, without a mouth. */
const buzz = (hertz: number, lengthS = 0.4) =>
  Float32Array.from({ length: lengthS * RATE }, (_, i) => 0.1 * ((((i * hertz) / RATE) % 1) - 0.5));
const hertzOf = (samples: Float32Array): number => 2 ** (pitchOf(samples) ?? Number.NaN);

describe('pitch', () => {
  test.each([80, 118, 165, 220, 330])('of a buzz at %i Hz is told within a percent', (hertz) => {
    expect(Math.abs(hertzOf(buzz(hertz)) / hertz - 1)).toBeLessThan(0.01);
  });

  test('of a said word is that of its buzz, whatever its vowels', () => {
    for (const name of ['hold', 'mark', 'lifted', 'good', 'name'] as const)
      for (const seed of [1, 2, 3]) {
        const spoken = 118 * (1 + 0.06 * (noise(8, 1000 + seed)[4] as number));
        expect(Math.abs(hertzOf(say(name, seed)) / spoken - 1), `${name} ${seed}`).toBeLessThan(0.03);
      }
  });

  test('is unknown in hiss, in silence and in next to nothing', () => {
    expect(pitchOf(noise(RATE / 2, 3, 0.1))).toBeNull();
    expect(pitchOf(new Float32Array(RATE / 2))).toBeNull();
    expect(pitchOf(buzz(120, 0.04))).toBeNull();
    expect(pitchOf(new Float32Array(0))).toBeNull();
  });

  test('whatever comes in, it is unknown or what people speak at', () => {
    fc.assert(
      fc.property(fc.float32Array({ maxLength: 4_000, noNaN: true, noDefaultInfinity: true, min: -1, max: 1 }), (samples) => {
        const octaves = pitchOf(samples);
        expect(octaves === null || (2 ** octaves > 70 && 2 ** octaves < 400)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  test('in a stream is that of the stretch alone, however long ago the stream began', () => {
    const memory = createPitchMemory();
    memory.push(noise(10 * RATE, 5, 0.01));
    memory.push(buzz(110));
    memory.push(noise(RATE, 6, 0.001));
    memory.push(buzz(240));
    expect(2 ** (memory.between(10, 10.4) ?? 0)).toBeCloseTo(110, -1);
    expect(2 ** (memory.between(11.4, 11.8) ?? 0)).toBeCloseTo(240, -1);
    expect(memory.between(2, 2.4), 'no longer remembered').toBeNull();
  });
});

describe('a voice', () => {
  const taught = [1, 2, 3].flatMap((seed) => [
    { word: 'hold', speech: say('hold', seed) },
    { word: 'mark', speech: buzz(240 + seed) },
  ]);
  const voice = voiceOf(taught);

  test('is known word by word: a marker may be said much higher than a hold', () => {
    expect(2 ** (voice.words.hold?.[0] ?? 0)).toBeCloseTo(118, -1);
    expect(2 ** (voice.words.mark?.[0] ?? 0)).toBeCloseTo(242, -1);
    expect(strangeness(voice, 'hold', Math.log2(118))).toBe(0);
    expect(strangeness(voice, 'mark', Math.log2(242))).toBe(0);
  });

  test('is free within two semitones, counts beyond, and never counts for more than a clear word can bear', () => {
    const alone = voiceOf(taught.filter(({ word }) => word === 'hold'));
    const own = alone.words.hold ?? [];
    const [lowest, highest] = [Math.min(...own), Math.max(...own)];
    expect(strangeness(alone, 'hold', highest + 0.15)).toBeCloseTo(0, 9);
    expect(strangeness(alone, 'hold', lowest - 0.25)).toBeCloseTo(0.8, 9);
    expect(strangeness(alone, 'hold', highest + 1)).toBe(1.5);
    expect(strangeness(alone, 'hold', highest + 2)).toBe(1.5);
  });

  test('that was taught calm and excited is known in both, and not in between', () => {
    const both = voiceOf([110, 110, 220, 220].map((hertz) => ({ word: 'hold', speech: buzz(hertz) })));
    expect(strangeness(both, 'hold', Math.log2(110))).toBe(0);
    expect(strangeness(both, 'hold', Math.log2(220))).toBe(0);
    expect(strangeness(both, 'hold', Math.log2(155))).toBeGreaterThan(1);
  });

  test('is not stretched by one take that was misread', () => {
    const one = voiceOf([118, 120, 122, 121, 240].map((hertz) => ({ word: 'hold', speech: buzz(hertz) })));
    expect(strangeness(one, 'hold', Math.log2(240))).toBe(1.5);
  });

  test('of which nothing is known is nobody’s: a whistle, a whisper, no take', () => {
    expect(strangeness(voiceOf([]), 'hold', 7)).toBe(0);
    expect(strangeness(voiceOf([{ word: 'hold', speech: noise(RATE / 2, 8, 0.1) }]), 'hold', 7)).toBe(0);
    expect(strangeness(voice, 'hold', null)).toBe(0);
  });
});

const speech = process.env.STILLBEAT_SPEECH ?? join(import.meta.dirname, '../../../shared/speech');
test.skipIf(!existsSync(join(speech, 'words')))(
  'three men say digits between 80 and 260 Hz (real recordings; skipped where they are absent)',
  () => {
    const pitches = ['jackson', 'nicolas', 'theo'].flatMap((speaker) =>
      [0, 3, 7].flatMap((digit) =>
        [0, 5, 11].flatMap((take) => {
          const path = join(speech, 'words', speaker, String(digit), `${take}.wav`);
          const read = existsSync(path) ? readWav(path) : null;
          return read?.ok ? [hertzOf(at16kHz(read.recording))] : [];
        }),
      ),
    );
    expect(pitches.length).toBeGreaterThan(20);
    // Adult men: mean 120 Hz, most between 80 and 200 (Baken & Orlikoff 2000, from memory); some are excited.
    const within = pitches.filter((hertz) => hertz > 75 && hertz < 260);
    expect(within.length / pitches.length).toBeGreaterThan(0.9);
  },
);
