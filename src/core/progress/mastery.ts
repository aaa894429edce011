/**
 * Decides which steps are kept for good, where and with whom each was tried, and what to try next.
 * Kept for good: 9 in 10 in three sessions running, on two days at least, and once in another place (R: three sessions running at
 * 90 %, Longino et al. 2021, BAP 15:397-405; Richling et al. 2019, doi 10.1002/jaba.580; the other place: common practice).
 */
import { FEWEST_FOR_INTERVAL } from '../statistics/interval.ts';
import type { Day } from './day.ts';
import type { SessionDigest, StepDigest } from './digest.ts';
import { groupBy } from './group.ts';

const SESSIONS_RUNNING = 3;
const FEWEST_DAYS = 2;
const FEWEST_PLACES = 2;
/** A step kept for good and not practised for so long is checked, days (common practice, no source; 90 % was kept for a month, R as above). */
export const CHECK_AFTER_DAYS = 28;

/** One step in one session. */
export interface Visit {
  readonly day: Day;
  readonly place: string;
  readonly handler: string;
  readonly kept: number;
  readonly of: number;
}

/** In whole numbers. Fewer than five trials at 9 in 10 prove nothing, but a lift among them is a lift. */
export function verdictOf({ kept, of }: Pick<Visit, 'kept' | 'of'>): 'met' | 'not-met' | 'too-few' {
  if (10 * kept < 9 * of) return 'not-met';
  return of < FEWEST_FOR_INTERVAL ? 'too-few' : 'met';
}

/** One place with one person. */
export interface Column {
  readonly place: string;
  readonly handler: string;
}

export type Cell =
  | { readonly kind: 'never' }
  /** `isMet`: 9 in 10 in the latest session here that can tell. */
  | { readonly kind: 'tried'; readonly kept: number; readonly of: number; readonly sessions: number; readonly isMet: boolean };

export type Standing =
  | { readonly kind: 'never' }
  /** Of the sessions running at 9 in 10: how many, on how many days, in how many places. */
  | { readonly kind: 'on-the-way'; readonly running: number; readonly days: number; readonly places: number }
  | { readonly kind: 'kept-for-good'; readonly since: Day; readonly lastDay: Day };

export interface GridRow {
  readonly stepId: string;
  readonly title: string;
  readonly standing: Standing;
  /** [column] */
  readonly cells: readonly Cell[];
  /** The latest session with a trial on it; null: none yet. */
  readonly latest: Visit | null;
  /** A step that was taken out keeps its record, and is never the next thing to try. */
  readonly isOnLadder: boolean;
}

export interface Grid {
  /** The most used first. */
  readonly columns: readonly Column[];
  /** As on the ladder; steps that it has no more come last. */
  readonly rows: readonly GridRow[];
}

/** @param chosen sessions of one plan, oldest first. */
export function gridOf(
  chosen: readonly SessionDigest[],
  ladder: readonly { readonly id: string; readonly title: string }[],
): Grid {
  const columns = columnsOf(chosen);
  const visits = visitsByStep(chosen);
  const known = new Map(ladder.map(({ id, title }) => [id, title]));
  for (const { steps } of chosen) for (const { stepId, title } of steps) if (!known.has(stepId)) known.set(stepId, title);
  const onLadder = new Set(ladder.map(({ id }) => id));
  const rows = [...known].map(([stepId, title]) => {
    const isOnLadder = onLadder.has(stepId);
    return { stepId, title, isOnLadder, ...recordOf(visits.get(stepId) ?? [], columns) };
  });
  return { columns, rows };
}

function columnsOf(chosen: readonly SessionDigest[]): readonly Column[] {
  const groups = groupBy(chosen, ({ place, handler }) => JSON.stringify([place, handler]));
  return [...groups.values()]
    .toSorted((a, b) => b.length - a.length)
    .flatMap(([first]) => (first ? [{ place: first.place, handler: first.handler }] : []));
}

type Visits = ReadonlyMap<string, readonly Visit[]>;

function visitsByStep(chosen: readonly SessionDigest[]): Visits {
  const visits = new Map<string, Visit[]>();
  for (const { steps, day, place, handler } of chosen) for (const step of steps) noteVisit(visits, step, { day, place, handler });
  return visits;
}

function noteVisit(
  visits: Map<string, Visit[]>,
  { stepId, kept, lifted }: StepDigest,
  where: Pick<Visit, 'day' | 'place' | 'handler'>,
): void {
  const of = kept + lifted;
  if (of === 0) return;
  const visit = { ...where, kept, of };
  const known = visits.get(stepId);
  if (known) known.push(visit);
  else visits.set(stepId, [visit]);
}

function recordOf(visits: readonly Visit[], columns: readonly Column[]): Pick<GridRow, 'standing' | 'cells' | 'latest'> {
  const cells = columns.map(({ place, handler }) =>
    cellOf(visits.filter((one) => one.place === place && one.handler === handler)),
  );
  return { standing: standingOf(visits), cells, latest: visits.at(-1) ?? null };
}

function cellOf(visits: readonly Visit[]): Cell {
  if (visits.length === 0) return { kind: 'never' };
  const kept = visits.reduce((sum, visit) => sum + visit.kept, 0);
  const of = visits.reduce((sum, visit) => sum + visit.of, 0);
  const latest = visits.findLast((visit) => verdictOf(visit) !== 'too-few');
  return { kind: 'tried', kept, of, sessions: visits.length, isMet: latest !== undefined && verdictOf(latest) === 'met' };
}

/** @param visits of one step, oldest first. */
export function standingOf(visits: readonly Visit[]): Standing {
  const last = visits.at(-1);
  if (!last) return { kind: 'never' };
  const run = visits
    .slice(visits.findLastIndex((visit) => verdictOf(visit) === 'not-met') + 1)
    .filter((visit) => verdictOf(visit) === 'met');
  const earned = run[earnedAt(run)];
  if (earned) return { kind: 'kept-for-good', since: earned.day, lastDay: last.day };
  return { kind: 'on-the-way', running: run.length, ...spreadOf(run) };
}

function spreadOf(run: readonly Visit[]): { days: number; places: number } {
  return { days: new Set(run.map(({ day }) => day)).size, places: new Set(run.map(({ place }) => place)).size };
}

/** The session of the run with which it was earned; -1: not yet. */
function earnedAt(run: readonly Visit[]): number {
  const days = new Set<Day>();
  const places = new Set<string>();
  return run.findIndex(({ day, place }, at) => {
    days.add(day);
    places.add(place);
    return at + 1 >= SESSIONS_RUNNING && days.size >= FEWEST_DAYS && places.size >= FEWEST_PLACES;
  });
}

export interface Due {
  readonly stepId: string;
  readonly title: string;
  readonly lastDay: Day;
  readonly days: number;
}

/** Kept for good and not practised for long; longest ago first. */
export function dueOf({ rows }: Grid, today: Day): readonly Due[] {
  return rows
    .flatMap(({ stepId, title, standing }): readonly Due[] => {
      if (standing.kind !== 'kept-for-good') return [];
      const days = today - standing.lastDay;
      return days >= CHECK_AFTER_DAYS ? [{ stepId, title, lastDay: standing.lastDay, days }] : [];
    })
    .toSorted((a, b) => b.days - a.days);
}

/** The one next thing to try. */
export type NextTry =
  | { readonly kind: 'begin' }
  | { readonly kind: 'check'; readonly title: string; readonly days: number }
  /** Good elsewhere, never tried here: one thing is new, the other stays. */
  | { readonly kind: 'try-here'; readonly title: string; readonly isNew: 'place' | 'handler'; readonly at: Column }
  /** Good where it was practised, and no other place is known. */
  | { readonly kind: 'another-place'; readonly title: string; readonly knownPlace: string }
  | { readonly kind: 'go-on'; readonly title: string; readonly isPractised: boolean }
  /** The lowest step, and it lifted: nothing easier is on the ladder. `better`: where it is good; null: nowhere yet. */
  | {
      readonly kind: 'too-big';
      readonly title: string;
      readonly at: Column;
      readonly latest: Visit;
      readonly better: Column | null;
    }
  | { readonly kind: 'all-kept' };

export function nextToTry({ columns, rows }: Grid, today: Day): NextTry {
  const grid: Grid = { columns, rows: rows.filter(({ isOnLadder }) => isOnLadder) };
  if (grid.columns.length === 0) return { kind: 'begin' };
  const [due] = dueOf(grid, today);
  if (due) return { kind: 'check', title: due.title, days: due.days };
  return (
    neverTried(grid, 'place') ?? secondPlace(grid) ?? neverTried(grid, 'handler') ?? stepUnderWay(grid) ?? { kind: 'all-kept' }
  );
}

/** The easiest step that is good somewhere and was never tried in a place (or with a person) known from others. One thing new at a time. */
function neverTried({ rows, columns }: Grid, isNew: 'place' | 'handler'): NextTry | null {
  const same = isNew === 'place' ? 'handler' : 'place';
  for (const [row, { title, cells }] of rows.entries()) {
    const met = columns.filter((_, nth) => isMet(cells[nth]));
    const been = new Set(columns.filter((_, nth) => cells[nth]?.kind === 'tried').map((column) => column[isNew]));
    const at = columns.find(
      (column, nth) =>
        cells[nth]?.kind === 'never' &&
        !been.has(column[isNew]) &&
        met.some((one) => one[same] === column[same]) &&
        // What is harder goes well there already.
        !rows.slice(row + 1).some((harder) => isMet(harder.cells[nth])),
    );
    if (at) return { kind: 'try-here', title, isNew, at };
  }
  return null;
}

const isMet = (cell: Cell | undefined): boolean => cell?.kind === 'tried' && cell.isMet;

function secondPlace({ rows, columns }: Grid): NextTry | null {
  const [only, ...others] = new Set(columns.map(({ place }) => place));
  const ready = rows.find(({ standing }) => standing.kind === 'on-the-way' && standing.running >= SESSIONS_RUNNING);
  if (only === undefined || others.length > 0 || !ready) return null;
  return { kind: 'another-place', title: ready.title, knownPlace: only };
}

/** The hardest step that was practised and is not yet kept for good; when all are, the next on the ladder. */
function stepUnderWay(grid: Grid): NextTry | null {
  const { rows } = grid;
  const under = rows.findLast(({ standing }) => standing.kind === 'on-the-way');
  const next = under ?? rows.find(({ standing }) => standing.kind === 'never');
  if (!next) return null;
  return tooBig(grid, next) ?? { kind: 'go-on', title: next.title, isPractised: next === under };
}

/**
 * The lowest step, of whose latest trials half or more lifted: to do the same again where it failed is no advice.
 * (Half: common practice, no source. On a higher step the next session begins lower by itself.)
 */
function tooBig({ rows, columns }: Grid, row: GridRow): NextTry | null {
  const { title, latest, cells } = row;
  if (row !== rows[0] || !latest || 2 * latest.kept > latest.of) return null;
  const better = columns.find((column, nth) => isMet(cells[nth]) && column.place !== latest.place) ?? null;
  return { kind: 'too-big', title, at: { place: latest.place, handler: latest.handler }, latest, better };
}
