/**
 * Places bars on stairs: time runs along, the height of a tread is the step of the plan. Pure, plain numbers in px.
 *
 * Along: a rep is as long as it was held, all at one scale, but never shorter than can be seen and hit; the scale is chosen so
 * that the longest hold stays a bar and, where it can, the session fits. Between reps time is compressed: a usual gap is one
 * width, a rest of a minute or more is a break in the tread. Calls take room of their own, so a flag never covers a bar.
 */
import type { Call } from '../../core/call.ts';
import type { Rep } from '../../core/fold.ts';
import { isOverruled, type PlacedCall } from '../../core/placed-calls.ts';
import { indexOfStep, insertBefore, type Step } from '../../core/plan.ts';
import type { Outcome } from '../../core/rep.ts';
import type { Seconds } from '../../core/units.ts';
import { levelOf } from './level.ts';

export type PicturedRep = Pick<
  Rep,
  'n' | 'step' | 'isWarmUp' | 'outcome' | 'heldForS' | 'holdAtS' | 'endAtS' | 'calls' | 'voidReason'
>;

export interface StairsInput {
  readonly reps: readonly PicturedRep[];
  /** The ladder with its half steps. */
  readonly steps: readonly Step[];
  /** Every call with its place; without it, those that the reps carry (the handler's own moves are then not flagged). */
  readonly calls?: readonly PlacedCall[];
}

export interface StairsOptions {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Only the latest so many reps. */
  readonly lastOnly?: number;
  /** What happens to a session that is too long: it keeps its size and is scrolled, or it is pressed together. */
  readonly tooLong: 'scroll' | 'squeeze';
  /** Room above the highest tread for bars and flags, below the lowest for its name. */
  readonly headPx: number;
  readonly footPx: number;
}

export interface Tread {
  readonly stepId: string;
  readonly level: number;
  readonly fromPx: number;
  readonly toPx: number;
  /** Height of the tread's surface, from the top of the picture. */
  readonly yPx: number;
}

export interface Bar {
  readonly n: number;
  readonly outcome: Outcome;
  readonly isWarmUp: boolean;
  readonly fromPx: number;
  readonly lengthPx: number;
  readonly yPx: number;
  /** One a second, from the start of the bar; fewer when seconds are too narrow to count. */
  readonly notchesPx: readonly number[];
}

export interface Flag {
  readonly afterRep: number;
  /** Which of the calls after that rep. */
  readonly index: number;
  readonly call: Call;
  /** False: nobody was told, because nothing had to be (the warm-up is over) or the handler said it. */
  readonly isCalledOut: boolean;
  readonly xPx: number;
  readonly yPx: number;
}

/** A stretch of a tread that is drawn differently. */
export interface PhaseMark {
  readonly kind: 'warm-up' | 'break';
  readonly fromPx: number;
  readonly toPx: number;
  readonly yPx: number;
}

/** A step that the picture shows: one line across, named once. */
export interface Level {
  readonly step: Step;
  readonly level: number;
  readonly yPx: number;
  /** Is there room for its name? */
  readonly isNamed: boolean;
}

export interface StairsLayout {
  readonly treads: readonly Tread[];
  readonly bars: readonly Bar[];
  readonly flags: readonly Flag[];
  readonly marks: readonly PhaseMark[];
  /** Highest first. */
  readonly levels: readonly Level[];
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerS: number;
}

/** Left of the first bar. */
const MARGIN_PX = 8;
/** A bar that can still be told from its neighbours. With the gap: a target of 24 px (WCAG 2.2, 2.5.8). */
const SHORTEST_BAR_PX = 16;
const GAP_PX = 8;
/** From the end of a bar to the edge of its tread. */
const EDGE_PX = 6;
/** One flag, as wide as a target must be (WCAG 2.2, 2.5.8). */
export const FLAG_PX = 24;
const BREAK_PX = 28;
/** A rest this long is drawn as a break, s: long enough to have got up. */
const BREAK_S: Seconds = 60;
/** The scale: generous when there is room, and the longest hold is never a stub and never a wall. */
const WIDEST_PX_PER_S = 24;
const LONGEST_BAR_PX = { least: 48, most: 240 };
/** Notches closer than this are no longer counted but seen as grey. */
const CLOSEST_NOTCH_PX = 5;
const NOTCH_EVERY_S: readonly Seconds[] = [1, 5, 10, 30, 60];
/** A bar that tips up, and a line of text under the tread above it. */
const ROOMY_STAIR_PX = 54;
/** A name needs so much room above the next line. */
const NAME_PX = 20;

/** Every place of a session's treads, bars and flags. */
export function layoutStairs(input: StairsInput, options: StairsOptions): StairsLayout {
  const shown = newest(input, options.lastOnly);
  const heights = layoutHeights(shown, options);
  const pxPerS = chooseScale(shown, options.widthPx);
  const walked = walk(shown, heights.yOf, pxPerS);
  const squeeze = options.tooLong === 'squeeze' ? Math.min(1, options.widthPx / walked.endPx) : 1;
  return rounded({ ...walked, levels: heights.levels, widthPx: walked.endPx, heightPx: options.heightPx, pxPerS }, squeeze);
}

/** How high the picture must be so that every tread has room for its bars and its name. */
export function roomyHeightPx(input: StairsInput, headPx: number, footPx: number): number {
  const levels = levelsOf(input).map(({ level }) => level);
  return headPx + footPx + (rangeOf(levels) / closest(levels)) * ROOMY_STAIR_PX;
}

function newest({ reps, calls = reps.flatMap(callsOf), ...input }: StairsInput, lastOnly?: number): Required<StairsInput> {
  const steps = calls.reduce(withInserted, input.steps);
  if (lastOnly === undefined || reps.length <= lastOnly) return { reps, steps, calls };
  const last = reps.slice(-lastOnly);
  const firstN = last[0]?.n ?? 0;
  return { reps: last, steps, calls: calls.filter(({ afterRep }) => afterRep >= firstN) };
}

/** A half step that the handler declined is off the ladder again, but it was called, so it is drawn. */
function withInserted(steps: readonly Step[], { call: { inserted, fromStepId } }: PlacedCall): readonly Step[] {
  if (!inserted || indexOfStep(steps, inserted.id) >= 0) return steps;
  return insertBefore(steps, inserted.halfOf?.aboveId ?? fromStepId, inserted);
}

function callsOf(rep: PicturedRep): readonly PlacedCall[] {
  return rep.calls.map((call) => ({ call, afterRep: rep.n }));
}

function stepById(steps: readonly Step[], id: string): Step {
  const step = steps[indexOfStep(steps, id)];
  if (!step) throw new Error(`picture: step ${id} is not on the ladder`);
  return step;
}

/** The steps that were stood on, highest first. */
function levelsOf(input: StairsInput): readonly { readonly step: Step; readonly level: number }[] {
  const { reps, steps, calls } = newest(input);
  const seen = new Map(reps.map(({ step }) => [step.id, step]));
  for (const { call } of calls) seen.set(call.toStepId, stepById(steps, call.toStepId));
  return [...seen.values()].map((step) => ({ step, level: levelOf(steps, step) })).sort((a, b) => b.level - a.level);
}

function rangeOf(levels: readonly number[]): number {
  return levels.length === 0 ? 0 : Math.max(...levels) - Math.min(...levels);
}

/** The smallest stair that is drawn. */
function closest(levels: readonly number[]): number {
  return Math.min(1, ...levels.slice(1).map((level, at) => (levels[at] as number) - level));
}

function layoutHeights(input: StairsInput, { heightPx, headPx, footPx }: StairsOptions) {
  const found = levelsOf(input);
  const all = found.map(({ level }) => level);
  const lowest = Math.min(...all);
  const roomy = ROOMY_STAIR_PX / closest(all);
  const risePx = Math.min(roomy, (heightPx - headPx - footPx) / Math.max(rangeOf(all), 1e-9));
  const yAt = (level: number) => heightPx - footPx - (level - lowest) * risePx;
  const levels = found.map(({ step, level }) => ({ step, level, yPx: yAt(level) }));
  return { levels: nameLevels(levels), yOf: (step: Step) => yAt(levelOf(input.steps, step)) };
}

/** Names from the top down, whole steps before half steps, wherever the lines are far enough apart. */
function nameLevels(levels: readonly Omit<Level, 'isNamed'>[]): readonly Level[] {
  const namedPx: number[] = [];
  const isNamed = ({ yPx }: { yPx: number }) => namedPx.every((other) => Math.abs(other - yPx) >= NAME_PX);
  const wholeFirst = [...levels].sort((a, b) => Number(!!a.step.halfOf) - Number(!!b.step.halfOf));
  const named = new Set(wholeFirst.filter((level) => isNamed(level) && namedPx.push(level.yPx)).map(({ step }) => step.id));
  return levels.map((level) => ({ ...level, isNamed: named.has(level.step.id) }));
}

/** Pixels a second: as many as fit, within what keeps the longest hold a bar. */
function chooseScale(input: Required<StairsInput>, widthPx: number): number {
  const longestS = Math.max(1, ...input.reps.map(({ heldForS }) => heldForS));
  const least = Math.min(WIDEST_PX_PER_S, LONGEST_BAR_PX.least / longestS);
  let pxPerS = Math.min(WIDEST_PX_PER_S, LONGEST_BAR_PX.most / longestS);
  while (pxPerS > least && walk(input, () => 0, pxPerS).endPx > widthPx) pxPerS *= 0.9;
  return Math.max(pxPerS, least);
}

interface Walked extends Pick<StairsLayout, 'treads' | 'bars' | 'flags' | 'marks'> {
  readonly endPx: number;
}

/** Walks the session from left to right and sets down what it meets. */
class Walk {
  readonly treads: Tread[] = [];
  readonly bars: Bar[] = [];
  readonly flags: Flag[] = [];
  readonly marks: PhaseMark[] = [];
  private xPx = MARGIN_PX;
  private standsOn: { readonly step: Step; readonly sincePx: number } | null = null;
  private readonly steps: readonly Step[];
  private readonly yOf: (step: Step) => number;
  private readonly pxPerS: number;

  constructor(steps: readonly Step[], yOf: (step: Step) => number, pxPerS: number) {
    this.steps = steps;
    this.yOf = yOf;
    this.pxPerS = pxPerS;
  }

  stepTo(step: Step): void {
    if (this.standsOn?.step.id === step.id) return;
    this.endTread();
    this.standsOn = { step, sincePx: this.standsOn ? this.xPx : 0 };
  }

  rep(rep: PicturedRep): void {
    this.stepTo(rep.step);
    const { n, outcome, isWarmUp, heldForS } = rep;
    const lengthPx = Math.max(SHORTEST_BAR_PX, heldForS * this.pxPerS);
    const notchesPx = notches(heldForS, this.pxPerS, lengthPx);
    this.bars.push({ n, outcome, isWarmUp, fromPx: this.xPx, lengthPx, yPx: this.yOf(rep.step), notchesPx });
    this.xPx += lengthPx;
  }

  /** What is called after a rep; a call that moves is an edge with its flag on the higher side. */
  calls(calls: readonly PlacedCall[]): void {
    if (calls.length > 0) this.xPx += EDGE_PX;
    calls.forEach(({ call, afterRep }, index) => {
      const to = stepById(this.steps, call.toStepId);
      const from = this.standsOn?.step ?? to;
      this.stepTo(to);
      const yPx = Math.min(this.yOf(from), this.yOf(to));
      this.flags.push({ afterRep, index, call, isCalledOut: isCalledOut(call), xPx: this.xPx, yPx });
      this.xPx += FLAG_PX;
    });
  }

  rest(restS: Seconds, hasFlags: boolean): void {
    if (restS >= BREAK_S && this.standsOn) {
      this.marks.push({ kind: 'break', fromPx: this.xPx + 4, toPx: this.xPx + BREAK_PX - 4, yPx: this.yOf(this.standsOn.step) });
      this.xPx += BREAK_PX;
    } else if (!hasFlags) this.xPx += GAP_PX;
  }

  end(): Walked {
    this.xPx += MARGIN_PX;
    this.endTread();
    const { treads, bars, flags, marks } = this;
    return { treads, bars, flags, marks: [...warmUpMarks(bars), ...marks], endPx: this.xPx };
  }

  private endTread(): void {
    if (!this.standsOn) return;
    const { step, sincePx } = this.standsOn;
    this.treads.push({
      stepId: step.id,
      level: levelOf(this.steps, step),
      fromPx: sincePx,
      toPx: this.xPx,
      yPx: this.yOf(step),
    });
  }
}

function walk({ reps, steps, calls }: Required<StairsInput>, yOf: (step: Step) => number, pxPerS: number): Walked {
  const way = new Walk(steps, yOf, pxPerS);
  const after = byRep(calls);
  const before = after.get((reps[0]?.n ?? 1) - 1) ?? [];
  if (before[0]) way.stepTo(stepById(steps, before[0].call.fromStepId));
  way.calls(before);
  reps.forEach((rep, at) => {
    way.rep(rep);
    const called = after.get(rep.n) ?? [];
    way.calls(called);
    const next = reps[at + 1];
    if (next) way.rest(next.holdAtS - rep.endAtS, called.length > 0);
  });
  return way.end();
}

function byRep(calls: readonly PlacedCall[]): ReadonlyMap<number, readonly PlacedCall[]> {
  const after = new Map<number, PlacedCall[]>();
  for (const call of calls) after.set(call.afterRep, [...(after.get(call.afterRep) ?? []), call]);
  return after;
}

function notches(heldForS: Seconds, pxPerS: number, lengthPx: number): readonly number[] {
  const everyS = NOTCH_EVERY_S.find((s) => s * pxPerS >= CLOSEST_NOTCH_PX) ?? 60;
  const found: number[] = [];
  // None at the very end: there stands the marker, or the bar tips up.
  for (let s = everyS; s <= heldForS && s * pxPerS < lengthPx - 5; s += everyS) found.push(s * pxPerS);
  return found;
}

/** One mark under each run of warm-ups. */
function warmUpMarks(bars: readonly Bar[]): readonly PhaseMark[] {
  const warm = bars.filter(({ isWarmUp }) => isWarmUp);
  const first = warm[0];
  const last = warm.at(-1);
  if (!first || !last) return [];
  return [{ kind: 'warm-up', fromPx: 0, toPx: last.fromPx + last.lengthPx, yPx: first.yPx }];
}

const tenth = (px: number): number => Math.round(10 * px) / 10;

/** Tenths of a pixel: nobody sees less, and the pictures stay small. `squeeze` presses time together. */
function rounded(layout: StairsLayout, squeeze: number): StairsLayout {
  const along = (px: number) => tenth(px * squeeze);
  const span = <T extends { fromPx: number; toPx: number; yPx: number }>(it: T): T => ({
    ...it,
    fromPx: along(it.fromPx),
    toPx: along(it.toPx),
    yPx: tenth(it.yPx),
  });
  return {
    treads: layout.treads.map(span),
    marks: layout.marks.map(span),
    bars: layout.bars.map((bar) => ({
      ...bar,
      fromPx: along(bar.fromPx),
      lengthPx: along(bar.lengthPx),
      yPx: tenth(bar.yPx),
      notchesPx: squeeze === 1 ? bar.notchesPx.map(tenth) : [],
    })),
    flags: layout.flags.map((flag) => ({ ...flag, xPx: along(flag.xPx), yPx: tenth(flag.yPx) })),
    levels: layout.levels.map((level) => ({ ...level, yPx: tenth(level.yPx) })),
    widthPx: along(layout.widthPx),
    heightPx: tenth(layout.heightPx),
    pxPerS: Math.round(100 * layout.pxPerS) / 100,
  };
}

/** The end of the warm-up is silent, and the handler's own word needs no call. */
export function isCalledOut(call: Call): boolean {
  return call.kind !== 'begin' && !isOverruled(call);
}
