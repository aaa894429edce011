/**
 * Makes what is known fit one page, by a rule that is printed on it: of every place on every ladder the hardest first, in turn, until the
 * lines are full; the others are named by their number. Texts are cut at a word, and say so.
 */
import type { BodyArea } from '../plan.ts';
import { groupBy } from '../progress/group.ts';
import type { Seconds } from '../units.ts';
import { type AreaCount, countAreas } from './count-areas.ts';
import type { Evidence } from './evidence.ts';

/** One step of one plan, with what is known of it. */
export interface CardLine {
  readonly planId: string;
  readonly stepId: string;
  readonly title: string;
  readonly area: BodyArea;
  readonly askedS: Seconds;
  readonly evidence: Evidence;
}

/** What fits a page of A4 and of Letter, in either language, with every text at its longest (tried: tests/e2e/card.e2e.test.ts). */
export const MOST_LINES = { kept: 6, 'not-yet': 3 } as const;
/** Of each text of the dog's, on paper. */
export const MOST_LETTERS = 150;

export interface Listed {
  /** As on the ladders, the hardest last. */
  readonly lines: readonly CardLine[];
  /** Those that are not listed. */
  readonly more: readonly AreaCount[];
}

export function condense(all: readonly CardLine[], heap: keyof typeof MOST_LINES): Listed {
  const chosen = new Set(hardestInTurn(all).slice(0, MOST_LINES[heap]));
  return {
    lines: all.filter((line) => chosen.has(line)),
    more: countAreas(all.filter((line) => !chosen.has(line)).map(({ area }) => area)),
  };
}

/** The hardest of each place on each ladder, then the second hardest of each, and so on. */
function hardestInTurn(all: readonly CardLine[]): readonly CardLine[] {
  const heaps = [...groupBy(all, ({ planId, area }) => `${planId}\n${area}`).values()].map((heap) => heap.toReversed());
  const longest = Math.max(0, ...heaps.map(({ length }) => length));
  return Array.from({ length: longest }, (_, nth) => heaps.flatMap((heap) => heap.slice(nth, nth + 1))).flat();
}

export type PaperSize = 'large' | 'medium' | 'small';

/** Up to so many lines and letters of the dog's texts the page is set so large (tried as above). */
const ROOM = { large: { lines: 3, letters: 150 }, medium: { lines: 8, letters: 500 } } as const;

/** With little to say the page is set larger: it is read standing. */
export function sizeFor(lines: number, letters: number): PaperSize {
  const fits = ({ lines: mostLines, letters: mostLetters }: { readonly lines: number; readonly letters: number }) =>
    lines <= mostLines && letters <= mostLetters;
  if (fits(ROOM.large)) return 'large';
  return fits(ROOM.medium) ? 'medium' : 'small';
}

/** The text as paper has room for it; `isCut`: there is more of it in the app. */
export function forPaper(text: string, most: number = MOST_LETTERS): { readonly text: string; readonly isCut: boolean } {
  const plain = text.trim().replaceAll(/\s+/g, ' ');
  if (plain.length <= most) return { text: plain, isCut: false };
  const room = plain.slice(0, most - 1);
  const atWord = room.lastIndexOf(' ');
  return { text: `${(atWord > most / 2 ? room.slice(0, atWord) : room).trimEnd()}…`, isCut: true };
}
