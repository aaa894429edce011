/** Checks the one clock, the watch over it, and when a loudspeaker is woken. */
import { describe, expect, test } from 'vitest';
import { createContextClock } from '../../src/audio/clock.ts';
import { beginWatch, isFrozen, lookAtClock } from '../../src/audio/clock-watch.ts';
import { needsPreRoll, PRE_ROLL_S, preRollSamples } from '../../src/audio/pre-roll.ts';
import { longestSpeechS } from '../../src/audio/speaker.ts';

describe('the session clock', () => {
  test('runs on when the phone had to be given a new audio context', () => {
    let context = { currentTime: 42 };
    const clock = createContextClock(() => context);
    expect(clock.now()).toBe(42);
    context = { currentTime: 0.5 };
    clock.goOnFrom(44);
    expect(clock.now()).toBe(44);
    context.currentTime = 1.5;
    expect(clock.now()).toBe(45);
  });

  test('a beat at a session time lands at the same moment of the new context, and a frame back again', () => {
    const context = { currentTime: 0 };
    const clock = createContextClock(() => context);
    clock.goOnFrom(44);
    expect(clock.toContextS(46)).toBe(2);
    expect(clock.fromContextS(clock.toContextS(46.25))).toBe(46.25);
  });
});

describe('a clock that stands still', () => {
  /** Looks every 25 ms at a clock that stopped at 5 s. */
  function standing(forMs: number) {
    let watch = beginWatch(5, 0);
    for (let nowMs = 25; nowMs <= forMs; nowMs += 25) watch = lookAtClock(watch, 5, nowMs);
    return isFrozen(watch, forMs);
  }

  test('for half a second is a loudspeaker waking up', () => {
    expect(standing(500)).toBe(false);
  });

  test('for more than a second has stopped', () => {
    expect(standing(1100)).toBe(true);
  });

  test('is forgiven as soon as it moves', () => {
    let watch = beginWatch(5, 0);
    for (let nowMs = 25; nowMs <= 3000; nowMs += 25) watch = lookAtClock(watch, 5, nowMs);
    watch = lookAtClock(watch, 5.01, 3025);
    expect(isFrozen(watch, 3050)).toBe(false);
  });

  test('is not suspected because the page itself was busy for five seconds', () => {
    const watch = lookAtClock(beginWatch(5, 0), 5, 5000);
    expect(isFrozen(watch, 5000)).toBe(false);
  });
});

describe('a wireless loudspeaker', () => {
  test('is woken before the first sound and after a pause, not between two beats', () => {
    expect(needsPreRoll(Number.NEGATIVE_INFINITY, 0)).toBe(true);
    expect(needsPreRoll(10, 14)).toBe(true);
    expect(needsPreRoll(10, 11)).toBe(false);
  });

  test('is woken by something nobody hears, that is yet not nothing', () => {
    const samples = preRollSamples(48_000);
    expect(samples).toHaveLength(PRE_ROLL_S * 48_000);
    const peak = Math.max(...samples.map(Math.abs));
    expect(peak).toBeGreaterThan(2 / 32_768);
    expect(peak).toBeLessThan(0.0005);
    expect(Math.abs(samples[0] ?? 1)).toBe(0);
    expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(0.00001);
  });
});

test('the ear stays closed for longer than any voice takes to say a call', () => {
  // "Back to two seconds" takes a slow voice about 1.8 s.
  expect(longestSpeechS('Back to two seconds')).toBeGreaterThan(2);
});
