/** The browser's own recogniser, behaving as badly as phones do: no spinning, states as named, each word once. Long because a phone has many ways to fail. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Act,
  busyAlready,
  createFakePlatform,
  endsAtOnce,
  type FakePlatform,
  failsAtOnce,
  fakeOnDevice,
  listens,
  neverEnds,
  neverStarts,
  phrase,
  type Run,
  startsDeaf,
  write,
} from '../../src/ears/platform.fake.ts';
import { browserRecogniser, createPlatformEar, type OnDevice, type PlatformEar } from '../../src/ears/platform.ts';
import { type AwayWhy, MAY_LEAVE_SENTENCE, PLAIN_END_S, type PlatformState } from '../../src/ears/platform-state.ts';
import type { HeardByPlatform, Sayings } from '../../src/ears/platform-words.ts';

const SAYINGS: Sayings = { hold: ['steady'], mark: ['yes'], lifted: ['oh well'] };

interface Wish {
  readonly onDevice?: OnDevice | null;
  readonly mayLeave?: boolean;
  readonly local?: boolean;
}

interface Scene {
  readonly fake: FakePlatform;
  readonly ear: PlatformEar;
  readonly heard: HeardByPlatform[];
  readonly states: string[];
  readonly lasting: string[];
}

/** `script`: what each start comes to; the last one goes on for ever. */
function scene(
  script: readonly Run[] | ((n: number) => Run),
  { onDevice = null, mayLeave = true, local = false }: Wish = {},
): Scene {
  const nth = typeof script === 'function' ? script : (n: number) => script[Math.min(n, script.length - 1)] as Run;
  const fake = createFakePlatform(nth, { local });
  const heard: HeardByPlatform[] = [];
  const states: string[] = [];
  const lasting: string[] = [];
  const ear = createPlatformEar({
    ...{ recogniser: fake.recogniser, onDevice, after: fake.after, nowS: fake.nowS },
    ...{ sayings: () => SAYINGS, language: () => 'en-GB', mayLeave: () => mayLeave },
    onHeard: (each) => heard.push(each),
    onState: (now, lasts) => {
      states.push(named(now));
      if (lasts) lasting.push(now.state);
    },
  });
  return { fake, ear, heard, states, lasting };
}

function opened(script: readonly Run[] | ((n: number) => Run), wish?: Wish): Scene {
  const all = scene(script, wish);
  all.ear.open();
  return all;
}

function named({ state, tries, why }: PlatformState): string {
  return `${state}${state === 'restarting' ? `(${tries})` : ''}${why ? ` ${why}` : ''}`;
}

const words = ({ heard }: Scene) => heard.map((each) => each.heard.word);
const promises = () => new Promise<void>((ready) => setImmediate(ready));
const gapsS = ({ starts }: FakePlatform) => starts.slice(1).map((ms, i) => (ms - (starts[i] as number)) / 1000);

describe('it never spins', () => {
  test('without a network it waits 1, 2, 4 … 30 s, and says after the third that it cannot hear', () => {
    const { fake, states } = opened([failsAtOnce('network')]);
    fake.advance(180_000);
    const waits = gapsS(fake).map((gap) => Math.round(gap));
    expect(waits.slice(0, 7)).toEqual([1, 2, 4, 8, 16, 30, 30]);
    expect(states.slice(0, 6)).toEqual([
      'arming',
      'listening',
      'restarting(1) network',
      'restarting(2) network',
      'restarting(3) network',
      'degraded network',
    ]);
    expect(states.slice(6)).toEqual([]);
  });

  test.each([
    ['ends within 17 ms', endsAtOnce, 9],
    ['has no network', failsAtOnce('network'), 7],
    ['has no network and never says that it started', failsAtOnce('network', false), 7],
    ['cannot have the microphone', failsAtOnce('audio-capture'), 7],
    ['is taken away by another page', failsAtOnce('aborted'), 7],
    ['calls everything no speech at once', failsAtOnce('no-speech'), 9],
    ['fails in a way nobody has heard of', failsAtOnce('quantum'), 7],
    ['never starts', neverStarts, 7],
    [
      'starts and ends before start() has returned',
      {
        acts: [
          { atMs: 0, does: 'start' },
          { atMs: 0, does: 'end' },
        ],
        endsAfterAbortMs: 1,
      },
      9,
    ],
    ['says that it is busy', busyAlready, 7],
    ['throws something else', { acts: [], endsAfterAbortMs: null, throws: 'TypeError' }, 7],
    ['starts deaf', startsDeaf, 5],
    ['neither hears nor ends', { acts: [{ atMs: 100, does: 'start' }], endsAfterAbortMs: null }, 5],
    [
      'talks on after its end',
      {
        acts: [...failsAtOnce('network').acts, { atMs: 30, does: 'start' }, { atMs: 40, does: 'end' }],
        endsAfterAbortMs: 1,
        talksAfterEnd: true,
      },
      8,
    ],
  ] satisfies [string, Run, number][])(
    'one that %s is started a few times in the first minute, and twice a minute from then on',
    (_, run, most) => {
      const { fake, ear } = opened([run]);
      fake.advance(60_000);
      expect(fake.starts.length).toBeLessThanOrEqual(most);
      expect(fake.starts.length).toBeGreaterThan(1);
      fake.advance(240_000);
      const before = fake.starts.length;
      fake.advance(60_000);
      expect(fake.starts.length - before).toBeLessThanOrEqual(2);
      expect(['degraded', 'restarting']).toContain(ear.ear().state);
      expect(fake.mostAtOnce()).toBeLessThanOrEqual(1);
    },
  );

  test('a phone that ends after each phrase is started anew 250 ms later, and the handler is told nothing of it', () => {
    const all = opened([phrase('yes'), phrase('steady'), listens()]);
    all.fake.advance(10_000);
    expect(gapsS(all.fake)).toEqual([3.7 + PLAIN_END_S, 3.7 + PLAIN_END_S]);
    expect(all.states).toEqual(['arming', 'listening', 'restarting(0)', 'listening', 'restarting(0)', 'listening']);
    expect(all.lasting).toEqual(['arming', 'listening']);
  });

  test('a phone that gives up after five quiet seconds listens again at once: silence in a hold is no fault', () => {
    const quiet = listens({ atMs: 5000, does: 'error', error: 'no-speech' }, { atMs: 5010, does: 'end' });
    const { fake, ear } = opened([quiet]);
    fake.advance(60_000);
    expect(ear.ear().tries).toBe(0);
    expect(fake.starts.length).toBeLessThanOrEqual(12);
  });

  test('an impatient clock or a session that looks all the time does not start it sooner', () => {
    const { fake, ear } = opened([failsAtOnce('network')]);
    for (let i = 0; i < 600; i++) {
      ear.look();
      fake.advance(100);
    }
    expect(fake.starts.length).toBeLessThanOrEqual(7);
  });

  test('a clock that stands still does not make it spin', () => {
    let woken = 0;
    const fake = createFakePlatform(() => listens());
    const ear = createPlatformEar({
      ...{ recogniser: fake.recogniser, onDevice: null, nowS: () => 7, sayings: () => SAYINGS, language: () => 'en' },
      ...{ mayLeave: () => true, onHeard: () => {}, onState: () => {} },
      after: (ms, work) => {
        woken++;
        return fake.after(ms, work);
      },
    });
    ear.open();
    fake.advance(10_000);
    expect(woken).toBeLessThanOrEqual(210);
    expect(fake.starts).toHaveLength(1);
  });
});

describe('it says how it is', () => {
  test('off, arming, listening; closing is off', () => {
    const { fake, ear, states } = opened([listens()]);
    fake.advance(500);
    ear.close();
    fake.advance(60_000);
    expect(states).toEqual(['arming', 'listening', 'off']);
    expect(fake.starts).toHaveLength(1);
    expect(fake.running()).toBe(0);
  });

  test.each(['not-allowed', 'service-not-allowed', 'language-not-supported'])('%s waits for a tap, however long', (error) => {
    const { fake, ear } = opened([failsAtOnce(error, false), listens()]);
    fake.advance(3_600_000);
    expect(named(ear.ear())).toBe(`blocked ${error}`);
    expect(fake.starts).toHaveLength(1);
    ear.open();
    fake.advance(500);
    expect(named(ear.ear())).toBe('listening');
  });

  test('a browser without a recogniser says so', () => {
    const ear = createPlatformEar({
      ...browserRecogniser(),
      ...{ after: () => () => {}, nowS: () => 0, sayings: () => SAYINGS, language: () => 'en', mayLeave: () => true },
      ...{ onHeard: () => {}, onState: () => {} },
    });
    expect(ear.open()).toBe('blocked');
    expect(ear.ear().why).toBe('no-recogniser');
  });

  test('one that never starts is noticed after three seconds', () => {
    const { fake, ear } = opened([neverStarts]);
    fake.advance(2_900);
    expect(named(ear.ear())).toBe('arming');
    fake.advance(200);
    expect(named(ear.ear())).toBe('restarting(1) no-start');
  });

  test('one that runs without any sound coming in is noticed after ten seconds', () => {
    const { fake, ear } = opened([startsDeaf, listens()]);
    fake.advance(10_200);
    expect(named(ear.ear())).toBe('restarting(1) no-sound');
    fake.advance(3_000);
    expect(named(ear.ear())).toBe('listening');
  });

  test('a handler who is silent for half a minute is not called a broken microphone', () => {
    const { fake, states } = opened([listens()]);
    fake.advance(30_000);
    expect(states).toEqual(['arming', 'listening']);
    expect(fake.starts).toHaveLength(1);
  });

  test('one that may have gone deaf is begun anew after a silent minute, once', () => {
    const { fake, lasting } = opened([listens()]);
    fake.advance(100_000);
    expect(fake.starts).toHaveLength(2);
    expect(lasting).toEqual(['arming', 'listening']);
  });

  test('after failures a start alone is no promise; a second of listening or one word is', () => {
    const { fake, ear } = opened([failsAtOnce('network'), failsAtOnce('network'), listens()]);
    fake.advance(3_200);
    expect(named(ear.ear())).toBe('restarting(2) network');
    fake.advance(1_100);
    expect(named(ear.ear())).toBe('listening');
    fake.advance(10_000);
    expect(ear.ear().tries).toBe(0);
  });

  test('a hidden page is suspended and starts nothing; shown again, it listens again', () => {
    const { fake, ear, states } = opened([listens()]);
    fake.advance(1_000);
    ear.away('hidden');
    fake.advance(120_000);
    expect(fake.starts).toHaveLength(1);
    expect(fake.running()).toBe(0);
    ear.back();
    fake.advance(1_000);
    expect(states).toEqual(['arming', 'listening', 'suspended hidden', 'restarting(0)', 'listening']);
  });

  test('when another tab has it, showing this one does not take it back; a tap does', () => {
    const { fake, ear } = opened([listens()]);
    fake.advance(1_000);
    ear.away('other-tab');
    ear.away('hidden');
    ear.back();
    fake.advance(60_000);
    expect(named(ear.ear())).toBe('suspended other-tab');
    ear.open();
    fake.advance(1_000);
    expect(named(ear.ear())).toBe('listening');
  });

  test('one that does not end when told to is not doubled: only the same one is tried again', () => {
    const { fake, ear } = opened([neverEnds]);
    fake.advance(1_000);
    ear.away('interrupted');
    ear.back();
    fake.advance(120_000);
    expect(named(ear.ear())).toBe('degraded stuck');
    expect(fake.mostAtOnce()).toBe(1);
    expect(fake.starts.length).toBeLessThan(10);
  });

  test('closed and opened at once, it waits for the end of the first run', () => {
    const { fake, ear } = opened([listens()]);
    fake.advance(1_000);
    ear.close();
    ear.open();
    expect(fake.starts).toHaveLength(1);
    fake.advance(500);
    expect(fake.starts).toHaveLength(2);
    expect(fake.mostAtOnce()).toBe(1);
    expect(named(ear.ear())).toBe('listening');
  });
});

describe('sound leaves the device only when the handler allowed it', () => {
  test('the switch says so in one sentence', () => {
    expect(MAY_LEAVE_SENTENCE).toMatch(/may send what the microphone hears/);
    expect(MAY_LEAVE_SENTENCE.match(/\./g)).toHaveLength(1);
  });

  test('where the browser can recognise on the device, it is asked to, with the words to expect', async () => {
    const { fake, ear } = opened([listens()], { onDevice: fakeOnDevice('available'), local: true, mayLeave: false });
    await promises();
    fake.advance(500);
    expect(fake.asked).toEqual([{ lang: 'en-GB', local: true, phrases: 3 }]);
    expect(ear.ear().state).toBe('listening');
  });

  test('where it cannot, nothing is started without leave', async () => {
    const onPhone = opened([listens()], { mayLeave: false });
    expect(named(onPhone.ear.ear())).toBe('blocked not-on-device');
    const noPack = opened([listens()], { onDevice: fakeOnDevice('unavailable'), local: true, mayLeave: false });
    await promises();
    expect(named(noPack.ear.ear())).toBe('blocked not-on-device');
    expect([...onPhone.fake.starts, ...noPack.fake.starts]).toEqual([]);
  });

  test('where it cannot, it is started the other way with leave', async () => {
    const { fake } = opened([listens()], { onDevice: fakeOnDevice('unavailable'), local: true, mayLeave: true });
    await promises();
    expect(fake.asked).toEqual([{ lang: 'en-GB', local: false, phrases: 0 }]);
  });

  test('a language that is promised and then missing on the device is tried once elsewhere, with leave only', async () => {
    const wish = { onDevice: fakeOnDevice('available'), local: true };
    const script = [failsAtOnce('language-not-supported', false), listens()];
    const allowed = opened(script, { ...wish, mayLeave: true });
    const refused = opened(script, { ...wish, mayLeave: false });
    await promises();
    for (const { fake } of [allowed, refused]) fake.advance(60_000);
    expect(allowed.fake.asked.map(({ local }) => local)).toEqual([true, false]);
    expect(named(refused.ear.ear())).toBe('blocked not-on-device');
    expect(refused.fake.asked.map(({ local }) => local)).toEqual([true]);
  });

  test('one that takes no phrases to expect is started once more without', async () => {
    const wish = { onDevice: fakeOnDevice('available'), local: true, mayLeave: false };
    const { fake, ear } = opened([failsAtOnce('phrases-not-supported'), listens()], wish);
    await promises();
    fake.advance(2_000);
    expect(fake.asked.map(({ phrases }) => phrases)).toEqual([3, 0]);
    expect(named(ear.ear())).toBe('listening');
  });

  test('fetching the language may take its time: without leave it waits, with leave it goes on after three seconds', async () => {
    const wish = { onDevice: fakeOnDevice('downloadable', new Promise<boolean>(() => {})), local: true };
    const waits = opened([listens()], { ...wish, mayLeave: false });
    const goesOn = opened([listens()], { ...wish, mayLeave: true });
    await promises();
    for (const { fake } of [waits, goesOn]) fake.advance(60_000);
    expect(named(waits.ear.ear())).toBe('arming installing');
    expect(waits.fake.starts).toEqual([]);
    expect(goesOn.fake.starts).toEqual([3000]);
  });

  test('a browser that does not say what it offers is not waited for', async () => {
    const wish = { onDevice: fakeOnDevice(new Promise<string>(() => {})), local: true };
    const refused = opened([listens()], { ...wish, mayLeave: false });
    await promises();
    refused.fake.advance(4_000);
    expect(named(refused.ear.ear())).toBe('blocked not-on-device');
  });

  test('an answer that comes after the ear was closed starts nothing', async () => {
    const { fake, ear } = opened([listens()], { onDevice: fakeOnDevice('available'), local: true });
    ear.close();
    await promises();
    fake.advance(60_000);
    expect(fake.starts).toEqual([]);
    expect(ear.ear().state).toBe('off');
  });

  test('a recogniser without the switch is never taken for one on the device', async () => {
    const { fake, ear } = opened([listens()], { onDevice: fakeOnDevice('available'), local: false, mayLeave: false });
    await promises();
    fake.advance(60_000);
    expect(fake.starts).toEqual([]);
    expect(ear.ear().state).toBe('degraded');
  });
});

describe('each word is heard once', () => {
  test('an interim that is right and a final that is empty are one word, at once', () => {
    const all = opened([phrase('Yes!'), listens()]);
    all.fake.advance(10_000);
    expect(words(all)).toEqual(['mark']);
    expect(all.heard[0]?.heard).toMatchObject({ startedAtS: 1, decidedAtS: 1.3, by: 'platform' });
    expect(all.heard[0]?.onsetFrom).toBe('speech-start');
  });

  test('two phrases of a phone, each in a run of its own, are two words', () => {
    const all = opened([phrase('steady'), phrase('yes'), listens()]);
    all.fake.advance(20_000);
    expect(words(all)).toEqual(['hold', 'mark']);
  });

  test('a word that a closed or hidden ear still hears is not the handler’s', () => {
    const late: Run = { ...listens(write(1_500, 'yes')), endsAfterAbortMs: 5_000 };
    const all = opened([late, listens()]);
    all.fake.advance(1_000);
    all.ear.away('hidden');
    all.ear.back();
    all.fake.advance(1_000);
    all.ear.close();
    all.ear.open();
    all.fake.advance(1_000);
    expect(words(all)).toEqual([]);
  });

  test('what an earlier run still calls back changes nothing', () => {
    const haunted: Run = {
      acts: [
        ...listens(write(4_000, 'yes')).acts,
        { atMs: 4_500, does: 'end' },
        write(5_500, 'steady', { index: 1 }),
        { atMs: 5_600, does: 'error', error: 'not-allowed' },
        { atMs: 5_700, does: 'end' },
      ],
      ...{ endsAfterAbortMs: 20, talksAfterEnd: true },
    };
    const all = opened([haunted, listens()]);
    all.fake.advance(20_000);
    expect(words(all)).toEqual(['mark']);
    expect(named(all.ear.ear())).toBe('listening');
    expect(all.fake.starts).toHaveLength(2);
  });

  test('words written without a start event are words, and mean that it listens', () => {
    const all = opened([{ acts: [write(500, 'steady')], endsAfterAbortMs: 1 }]);
    all.fake.advance(1_000);
    expect(words(all)).toEqual(['hold']);
    expect(all.ear.ear().state).toBe('listening');
  });
});

describe('whatever it does', () => {
  const act = fc
    .tuple(
      fc.integer({ min: 0, max: 20_000 }),
      fc.constantFrom('start', 'start', 'audiostart', 'audioend', 'soundstart', 'speechstart', 'end', 'end', 'error', 'write'),
      fc.constantFrom('network', 'aborted', 'no-speech', 'audio-capture', 'phrases-not-supported', 'not-allowed', 'odd'),
      fc.constantFrom('yes', 'steady', '', 'yes steady', 'who knows'),
      fc.nat(3),
    )
    .map(([at, does, error, text, index]): Act => {
      // Half of it at once: that is how they fail.
      const atMs = at % 2 === 0 ? at % 40 : at;
      if (does === 'error') return { atMs, does, error };
      return does === 'write' ? write(atMs, text, { index, isFinal: at % 3 === 0 }) : { atMs, does: does as 'start' };
    });
  const run: fc.Arbitrary<Run> = fc
    .record({
      acts: fc.array(act, { maxLength: 8 }),
      endsAfterAbortMs: fc.constantFrom(null, 0, 20, 2_000, 7_000),
      talksAfterEnd: fc.boolean(),
      throws: fc.constantFrom(null, null, null, 'InvalidStateError', 'TypeError'),
    })
    .map(({ throws, ...rest }) => (throws ? { ...rest, throws } : rest));
  const deed = fc.oneof(
    { weight: 6, arbitrary: fc.nat(15_000) },
    fc.constantFrom('open', 'close', 'back', 'look' as const),
    fc.constantFrom<AwayWhy>('hidden', 'interrupted', 'other-tab'),
  );

  function does({ ear, fake }: Scene, what: number | 'open' | 'close' | 'back' | 'look' | AwayWhy): void {
    if (typeof what === 'number') return fake.advance(what);
    if (what === 'hidden' || what === 'interrupted' || what === 'other-tab') return ear.away(what);
    ear[what]();
  }

  test('two starts are never nearer than the shortest wait, never two run at once, and closing is off', () => {
    fc.assert(
      fc.property(fc.array(run, { minLength: 1, maxLength: 6 }), fc.array(deed, { maxLength: 25 }), (runs, deeds) => {
        const all = opened((n) => runs[n % runs.length] as Run);
        for (const each of deeds) does(all, each as Parameters<typeof does>[1]);
        expect(all.fake.mostAtOnce()).toBeLessThanOrEqual(1);
        expect(Math.min(Infinity, ...gapsS(all.fake))).toBeGreaterThanOrEqual(PLAIN_END_S);
        all.ear.close();
        expect(all.ear.ear().state).toBe('off');
        const [starts, heard] = [all.fake.starts.length, all.heard.length];
        all.fake.advance(120_000);
        expect(all.ear.ear().state).toBe('off');
        expect([all.fake.starts.length, all.heard.length]).toEqual([starts, heard]);
      }),
      { seed: 20261104, numRuns: 2_000 },
    );
  });

  test('one that never writes a word and never lives for three seconds is started ever more slowly', () => {
    const dud = run.filter(({ acts }) =>
      acts.every((each) => each.does !== 'write' && each.does !== 'speechstart' && each.atMs < 3_000),
    );
    fc.assert(
      fc.property(fc.array(dud, { minLength: 1, maxLength: 4 }), (runs) => {
        const ends = runs.map((each): Run => ({ ...each, acts: [...each.acts, { atMs: 2_500, does: 'end' }] }));
        const { fake } = opened((n) => ends[n % ends.length] as Run);
        fake.advance(60_000);
        expect(fake.starts.length).toBeLessThanOrEqual(10);
      }),
      { seed: 20261104, numRuns: 500 },
    );
  });
});
