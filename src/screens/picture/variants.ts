/** Sets the sizes of the picture's variants: whole on the screen and on paper, a strip in practice, a thumbnail in a list. */
import { layoutStairs, roomyHeightPx, type StairsInput, type StairsLayout } from './layout.ts';

/** Room above and below the stairs. */
const HEAD_PX = 50;
const FOOT_PX = 28;
/** A full picture is as wide as a page and not higher than half a phone. */
const FULL_PX = { wide: 900, highest: 440 };
/** Drawn large and shown small: a thumbnail is a picture seen from further away. */
export const SMALL_PX = {
  strip: { widthPx: 560, heightPx: 112, lastOnly: 8 },
  thumbnail: { widthPx: 420, heightPx: 126, lastOnly: Number.POSITIVE_INFINITY },
} as const;

/** The full layout. On paper, where a row shows only its own steps, it may be as high as it likes. */
export function layoutFull(input: StairsInput, highestPx: number = FULL_PX.highest): StairsLayout {
  return layoutStairs(input, {
    widthPx: FULL_PX.wide,
    heightPx: Math.min(highestPx, roomyHeightPx(input, HEAD_PX, FOOT_PX)),
    tooLong: 'scroll',
    headPx: HEAD_PX,
    footPx: FOOT_PX,
  });
}

export function layoutSmall(input: StairsInput, variant: 'strip' | 'thumbnail'): StairsLayout {
  // From so far away flags are only noise.
  const seen = variant === 'thumbnail' ? { ...input, calls: [], reps: input.reps.map((rep) => ({ ...rep, calls: [] })) } : input;
  const headPx = variant === 'thumbnail' ? 30 : HEAD_PX;
  return layoutStairs(seen, { ...SMALL_PX[variant], tooLong: 'squeeze', headPx, footPx: 4 });
}
