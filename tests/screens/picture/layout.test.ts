/** Where treads, bars and flags lie: what a trainer reads from the picture without a word. */
import { expect, test } from 'vitest';
import { type } from '../../../demo/typed-session.ts';
import { roomyHeightPx, type StairsLayout } from '../../../src/screens/picture/layout.ts';
import { layoutFull, layoutSmall } from '../../../src/screens/picture/variants.ts';
import { beginAt, fiveHundredReps, inputOf, wholeSession } from './sessions.ts';

const full = (reps: string, from = 'hold-3'): StairsLayout => layoutFull(inputOf(type(beginAt(from), reps).state));
const risesOf = ({ treads }: StairsLayout) => treads.slice(1).map((tread, at) => tread.level - (treads[at]?.level ?? 0));

test('a raise is a whole stair up', () => {
  expect(risesOf(full('kk kkkkk'))).toEqual([1, 1]);
});

test('a split is half a stair down', () => {
  expect(risesOf(full('kk ll'))).toEqual([1, -0.5]);
});

test('a return after a split is half a stair down, onto the half step', () => {
  // Up to 4 s, split to 3.5 s, up again, and this time back.
  expect(risesOf(full('kk kkkkk ll kkkkk ll'))).toEqual([1, 1, -0.5, 0.5, -0.5]);
});

test('a return to the step below is a whole stair down', () => {
  expect(risesOf(full('kk e'))).toEqual([1, -1]);
});

test('a half step that was declined is drawn: half a stair down and up again', () => {
  expect(risesOf(full('kk ll t k'))).toEqual([1, -0.5, 0.5]);
  expect(full('kk ll t k').flags.map(({ call }) => call.kind)).toEqual(['begin', 'split', 'remain']);
});

test('higher steps lie higher on the paper, half steps half-way', () => {
  const { levels } = full('kk ll');
  const [three, half, two] = levels.map(({ yPx }) => yPx) as [number, number, number];
  expect(levels.map(({ step }) => step.id)).toEqual(['hold-3', 'hold-2~hold-3', 'hold-2']);
  expect(half).toBeCloseTo((three + two) / 2, 0);
  expect(three).toBeLessThan(two);
});

test('a bar is as long as it was held, all at one scale', () => {
  const { bars, pxPerS } = full('kk kkk');
  for (const { lengthPx, isWarmUp } of bars) expect(lengthPx).toBeCloseTo((isWarmUp ? 2.5 : 3.5) * pxPerS, 0);
});

test('a bar has a notch for each whole second held', () => {
  const bar = full('kk k').bars[2];
  expect(bar?.notchesPx.map((px) => Math.round((10 * px) / 24) / 10)).toEqual([1, 2, 3]);
});

test('a rep that was never offered can still be seen and hit', () => {
  const { bars } = full('kk n');
  expect(bars[2]).toMatchObject({ outcome: 'void', lengthPx: 16 });
});

test('time only runs forward, and nothing lies on anything else', () => {
  const { bars, flags, widthPx } = layoutFull(inputOf(wholeSession()));
  const spans = [
    ...bars.map(({ fromPx, lengthPx }) => ({ fromPx, toPx: fromPx + lengthPx })),
    ...flags.map(({ xPx }) => ({ fromPx: xPx - 5, toPx: xPx + 18 })),
  ].sort((a, b) => a.fromPx - b.fromPx);
  for (const [at, span] of spans.entries()) expect(span.toPx).toBeLessThanOrEqual((spans[at + 1]?.fromPx ?? widthPx) + 0.1);
});

test('every bar lies on a tread of its own step', () => {
  for (const layout of [layoutFull(inputOf(wholeSession())), layoutFull(inputOf(fiveHundredReps()))])
    for (const bar of layout.bars) {
      const under = layout.treads.find(({ fromPx, toPx }) => fromPx <= bar.fromPx && bar.fromPx + bar.lengthPx <= toPx);
      expect(under?.yPx).toBe(bar.yPx);
    }
});

test('every call has its flag, also the one that the handler made', () => {
  const input = inputOf(wholeSession());
  const { flags } = layoutFull(input);
  expect(flags.map(({ call }) => call)).toEqual(input.calls?.map(({ call }) => call));
  expect(flags.filter(({ isCalledOut }) => !isCalledOut).map(({ call }) => call.reasons[0]?.kind)).toEqual([
    'warm-up-over',
    'handler-says',
  ]);
});

test('two flags after one rep stand side by side', () => {
  const { flags } = full('kk llll');
  const last = flags.slice(-2);
  expect(last.map(({ afterRep }) => afterRep)).toEqual([6, 6]);
  expect((last[1]?.xPx ?? 0) - (last[0]?.xPx ?? 0)).toBeGreaterThanOrEqual(24);
});

test('warm-ups lie on a marked stretch', () => {
  const { marks, bars } = full('kk k');
  expect(bars.map(({ isWarmUp }) => isWarmUp)).toEqual([true, true, false]);
  expect(marks).toMatchObject([{ kind: 'warm-up', fromPx: 0, toPx: (bars[1]?.fromPx ?? 0) + (bars[1]?.lengthPx ?? 0) }]);
});

test('a rest of a minute breaks the tread', () => {
  const played = type(beginAt('hold-3'), 'kk k');
  expect(layoutFull(inputOf(type(played, 'k').state)).marks.map(({ kind }) => kind)).toEqual(['warm-up']);
  const rested = type({ ...played, atS: played.atS + 60 }, 'k');
  expect(layoutFull(inputOf(rested.state)).marks.map(({ kind }) => kind)).toEqual(['warm-up', 'break']);
});

test('a raise at the very end shows the new step', () => {
  const { treads, levels } = full('kk kkkkk');
  expect(treads.at(-1)?.stepId).toBe('hold-4');
  expect(levels[0]?.step.id).toBe('hold-4');
});

test('in practice the last eight bars are shown, and they fit', () => {
  const { bars, widthPx } = layoutSmall(inputOf(wholeSession()), 'strip');
  expect(bars.map(({ n }) => n)).toEqual(
    wholeSession()
      .reps.slice(-8)
      .map(({ n }) => n),
  );
  expect(widthPx).toBeLessThanOrEqual(560);
});

test('a thumbnail holds the whole session, however long', () => {
  const { bars, widthPx } = layoutSmall(inputOf(fiveHundredReps()), 'thumbnail');
  expect(bars).toHaveLength(500);
  expect(widthPx).toBeLessThanOrEqual(420);
});

test('nothing becomes nothing, without a number that is none', () => {
  const { bars, treads, levels, widthPx, heightPx } = layoutFull({ reps: [], steps: [] });
  expect([bars, treads, levels]).toEqual([[], [], []]);
  expect(Number.isFinite(widthPx) && Number.isFinite(heightPx)).toBe(true);
});

test('names of steps never lie on each other', () => {
  for (const layout of [full('kk ll'), layoutFull(inputOf(fiveHundredReps()))]) {
    const named = layout.levels.filter(({ isNamed }) => isNamed).map(({ yPx }) => yPx);
    for (const [at, yPx] of named.slice(1).entries()) expect(yPx - (named[at] ?? 0)).toBeGreaterThanOrEqual(20);
  }
});

test('a roomy picture grows with the steps that were stood on, not with the plan', () => {
  const low = inputOf(type(beginAt('hold-3'), 'kk k').state);
  const high = inputOf(type(beginAt('hold-3'), 'kk kkkkk').state);
  expect(roomyHeightPx(high, 0, 0)).toBe(2 * roomyHeightPx(low, 0, 0));
});
