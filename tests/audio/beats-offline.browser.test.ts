/** Renders beats as a browser would play them and measures, sample by sample, when each begins. */
import { describe, expect, test } from 'vitest';
import { createBeats } from '../../src/audio/beats.ts';
import { createContextClock } from '../../src/audio/clock.ts';
import type { SoundName } from '../../src/audio/names.ts';
import { createSchedule } from '../../src/audio/schedule.ts';
import { SOUND_URLS } from '../../src/audio/sound-files.ts';
import { createFakeTick } from '../../src/audio/tick.fake.ts';
import { onsetsS } from './onsets.ts';

/** What we promise: a beat lies within this of its second (issue 3, "Beat times"). */
const PROMISED_S = 0.002;

interface Scene {
  readonly sampleRateHz: number;
  readonly onsetS: number;
  readonly criterionS: number;
  /** When the word was understood. */
  readonly startAtS: number;
  readonly stopAtS: number;
  /** The page gets no tick in here. */
  readonly busy?: readonly [fromS: number, toS: number];
}

const LENGTH_S = 7;

async function decoded(context: BaseAudioContext): Promise<Map<SoundName, AudioBuffer>> {
  const names: SoundName[] = ['beat', 'enough'];
  const rows = names.map(async (name) => {
    const file = await fetch(SOUND_URLS[name]);
    return [name, await context.decodeAudioData(await file.arrayBuffer())] as const;
  });
  return new Map(await Promise.all(rows));
}

/** Renders a hold; the rendering halts every 25 ms of its own time to let the page have its tick. */
async function rendered(scene: Scene): Promise<Float32Array> {
  const context = new OfflineAudioContext(1, LENGTH_S * scene.sampleRateHz, scene.sampleRateHz);
  const buffers = await decoded(context);
  const clock = createContextClock(() => context);
  const schedule = createSchedule({
    clock,
    context: () => context,
    output: () => context.destination,
    bufferOf: (name) => buffers.get(name),
  });
  const tick = createFakeTick();
  const beats = createBeats({ clock, schedule, tick, onOwnSound: () => {} });
  atEachTick(context, (nowS, wasS) => {
    const crossed = (atS: number) => wasS < atS && nowS >= atS;
    if (crossed(scene.startAtS)) beats.start(scene);
    if (crossed(scene.stopAtS)) beats.stop();
    if (!scene.busy || nowS < scene.busy[0] || nowS > scene.busy[1]) tick.tick();
  });
  return (await context.startRendering()).getChannelData(0);
}

function atEachTick(context: OfflineAudioContext, act: (nowS: number, wasS: number) => void): void {
  let wasS = 0;
  for (let atS = 0.025; atS < LENGTH_S - 0.1; atS += 0.025) {
    void context.suspend(atS).then(async () => {
      act(context.currentTime, wasS);
      wasS = context.currentTime;
      await context.resume();
    });
  }
}

const HOLD = { sampleRateHz: 44_100, onsetS: 0.217, criterionS: 3, startAtS: 0.5, stopAtS: 5.9 };

async function expectBeats(scene: Scene, seconds: readonly number[]): Promise<void> {
  const found = onsetsS(await rendered(scene), scene.sampleRateHz);
  expect(found).toHaveLength(seconds.length);
  seconds.forEach((second, i) => {
    expect(Math.abs((found[i] ?? 0) - scene.onsetS - second), `second ${second}`).toBeLessThan(PROMISED_S);
  });
}

describe('each beat begins within 2 ms of its second', () => {
  test('on a phone at 44.1 kHz', () => expectBeats(HOLD, [1, 2, 3, 4, 5]));

  test('on a phone at 48 kHz', () => expectBeats({ ...HOLD, sampleRateHz: 48_000 }, [1, 2, 3, 4, 5]));

  test('with half a second in the criterion', () => expectBeats({ ...HOLD, criterionS: 2.5 }, [1, 2, 2.5, 3, 4, 5]));

  test('wherever the page is busy for half a second', async () => {
    for (const fromS of [0.55, 1.0, 1.2, 1.7, 2.9]) {
      await expectBeats({ ...HOLD, busy: [fromS, fromS + 0.5] }, [1, 2, 3, 4, 5]);
    }
  });
});

test('a word understood late does not bunch the beats', () => expectBeats({ ...HOLD, startAtS: 2.5 }, [3, 4, 5]));

test('after the stop nothing sounds, though more was scheduled', () => expectBeats({ ...HOLD, stopAtS: 3.1 }, [1, 2]));
