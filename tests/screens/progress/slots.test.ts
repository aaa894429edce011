/** Room along: the newest phase is named whatever stands before it, and no name lies on another. */
import { expect, test } from 'vitest';
import { cutRows, LABEL_ROWS, layoutSlots, SLOT_PX } from '../../../src/screens/progress/slots.ts';
import { folded, fortySessions, nothing, oneSession } from './histories.ts';

const { points } = folded(fortySessions());

test.each(['screen', 'paper'] as const)('on %s the newest phase is named, within the picture', (medium) => {
  const { lines, widthPx } = layoutSlots(points, medium);
  expect(lines.at(-1)?.row).not.toBeNull();
  expect(lines.filter(({ row }) => row !== null).length).toBeGreaterThan(lines.length / 3);
  expect(lines.every(({ xPx }) => xPx <= widthPx)).toBe(true);
});

test.each(['screen', 'paper'] as const)('on %s no name begins before the one to its left has ended', (medium) => {
  const { lines } = layoutSlots(points, medium);
  for (let row = 0; row < LABEL_ROWS; row++) {
    const inRow = lines.filter((line) => line.row === row && line.side === 'after');
    for (const [nth, line] of inRow.slice(1).entries()) {
      const before = inRow[nth];
      // A letter of 14 px is at least 5 px wide.
      expect(line.xPx - (before?.xPx ?? 0)).toBeGreaterThan(5 * (before?.label.length ?? 0));
    }
  }
});

test('sessions keep a slot of their own, and one more where nothing is joined', () => {
  const { xPx } = layoutSlots(points, 'screen');
  for (const [nth, x] of xPx.slice(1).entries())
    expect(x - (xPx[nth] ?? 0)).toBe(SLOT_PX.screen * (points[nth + 1]?.changes.length ? 2 : 1));
});

test('rows of a page hold every session once, in order', () => {
  expect(cutRows(points).flat()).toEqual(points);
  expect(cutRows(points).length).toBeGreaterThan(1);
});

test('nothing and one session have their places too', () => {
  expect(layoutSlots(folded(nothing).points, 'screen').xPx).toEqual([]);
  expect(layoutSlots(folded(oneSession()).points, 'screen').xPx).toEqual([SLOT_PX.screen]);
});
