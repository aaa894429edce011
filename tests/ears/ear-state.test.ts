/** What the ear says of itself when phones behave as phones do. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { EAR_OFF, type Ear, type EarEvent, NO_BLOCK_S, NO_SOUND_S, nextEar } from '../../src/ears/ear-state.ts';

const run = (...events: EarEvent[]): Ear => events.reduce(nextEar, EAR_OFF);
const asked: EarEvent = { kind: 'asked', atS: 10 };
const voice = (atS: number): EarEvent => ({ kind: 'block', levelDb: -40, atS });
const dead = (atS: number): EarEvent => ({ kind: 'block', levelDb: -100, atS });
const looked = (atS: number): EarEvent => ({ kind: 'looked', atS });

test('it listens once sound comes in, not before', () => {
  expect(run(asked).state).toBe('arming');
  expect(run(asked, voice(10.1)).state).toBe('listening');
});

test('a microphone that stops sending is noticed after three seconds and asked for again', () => {
  const ear = run(asked, voice(11), looked(11 + NO_BLOCK_S + 0.1));
  expect(ear).toMatchObject({ state: 'restarting', why: 'no-sound', tries: 1 });
  expect(run(asked, voice(11), looked(11 + NO_BLOCK_S - 0.1)).state).toBe('listening');
});

test('ten seconds of digital silence mean a muted microphone: the handler is told', () => {
  const silent = Array.from({ length: 12 }, (_, i) => dead(12 + i));
  expect(run(asked, voice(11), ...silent, looked(11 + NO_SOUND_S + 0.5))).toMatchObject({ state: 'degraded', why: 'silence' });
});

test('a quiet room is not digital silence', () => {
  const quiet = Array.from({ length: 30 }, (_, i): EarEvent => ({ kind: 'block', levelDb: -80, atS: 11 + i }));
  expect(run(asked, ...quiet, looked(41)).state).toBe('listening');
});

test('the first sound after a loss is listening again, with a clean slate', () => {
  expect(run(asked, voice(11), looked(20), { kind: 'asked', atS: 21 }, voice(21.1))).toMatchObject({
    state: 'listening',
    why: null,
    tries: 0,
  });
});

test('a microphone that is refused is not asked for again until the handler taps', () => {
  const ear = run(asked, { kind: 'refused', why: 'not-allowed', atS: 10.2 });
  expect(ear).toMatchObject({ state: 'blocked', why: 'not-allowed', retryAtS: null });
  expect(nextEar(ear, looked(60))).toEqual(ear);
});

test('a microphone that another app has is asked for again, ever slower, and called degraded after the third try', () => {
  let ear = run(asked);
  const waits: number[] = [];
  for (let i = 0; i < 8; i++) {
    ear = nextEar(ear, { kind: 'refused', why: 'in-use', atS: 100 });
    waits.push((ear.retryAtS ?? 0) - 100);
    ear = nextEar(ear, { kind: 'asked', atS: 100 });
  }
  expect(waits).toEqual([1, 2, 4, 8, 16, 30, 30, 30]);
  expect(ear.state).toBe('degraded');
});

test('a hidden page is a suspended ear, whatever stray sound still comes', () => {
  const ear = run(asked, voice(11), { kind: 'away', why: 'hidden' }, voice(11.1));
  expect(ear).toMatchObject({ state: 'suspended', why: 'hidden' });
  expect(nextEar(ear, { kind: 'back', atS: 30 })).toMatchObject({ state: 'restarting', retryAtS: 30 });
});

test('closing turns it off from anywhere, and off it stays', () => {
  const event = fc.oneof(
    fc.constant<EarEvent>({ kind: 'asked', atS: 5 }),
    fc.nat(100).map((atS): EarEvent => ({ kind: 'block', levelDb: -40, atS })),
    fc.nat(100).map((atS): EarEvent => ({ kind: 'lost', why: 'muted', atS })),
    fc.nat(100).map((atS): EarEvent => ({ kind: 'looked', atS })),
    fc.constant<EarEvent>({ kind: 'away', why: 'hidden' }),
  );
  fc.assert(
    fc.property(fc.array(event), (events) => {
      expect(nextEar(run(...events), { kind: 'closed' })).toEqual(EAR_OFF);
    }),
    { seed: 20260302 },
  );
  expect(nextEar(EAR_OFF, { kind: 'lost', why: 'muted', atS: 1 })).toEqual(EAR_OFF);
  expect(nextEar(EAR_OFF, looked(99))).toEqual(EAR_OFF);
});

test('a microphone that stays dead is asked for again and again, not once', () => {
  let ear = run(asked, voice(11));
  const askedAtS: number[] = [];
  for (let atS = 11; atS < 131; atS += 0.5) {
    ear = nextEar(ear, looked(atS));
    if (ear.retryAtS === null || atS < ear.retryAtS) continue;
    askedAtS.push(atS);
    ear = nextEar(ear, { kind: 'asked', atS });
  }
  // After 1, 2, 4, 8, 16, 30 s, each and the three seconds in which nothing came.
  expect(askedAtS.length).toBeGreaterThanOrEqual(6);
  expect(ear.state).toBe('degraded');
});
