/** Solves an absorbing Markov chain exactly: with what chance it ends where, and after how many steps on average. */

/** One way out of a state. `to` >= 0 is a state; `to` < 0 is the ending numbered -1 - to. */
export interface Edge {
  readonly to: number;
  readonly chance: number;
}

/** Where a chain started in state 0 ends. */
export interface Absorption {
  /** [ending]: chance to end there. */
  readonly chance: readonly number[];
  /** [ending]: mean of (steps, counted only when it ends there); divide by `chance` for the mean given that ending. */
  readonly steps: readonly number[];
  /** Chance never to end; above 0 only where some state cannot reach an ending. */
  readonly never: number;
}

/** Weight of a bundle of paths and its derivative by z at z = 1, when every step carries a factor z: the second counts steps. */
interface Weight {
  readonly w: number;
  readonly d: number;
}

type Row = Map<number, Weight>;

/** The ending of those that never end; never clashes, being no state and no ending. */
const NOWHERE = Number.NEGATIVE_INFINITY;

/**
 * Takes states away one by one, from the last to the first, joining the paths through each (Grassmann, Taksar & Heyman 1985).
 * Nothing is subtracted: 1 - stay is summed from the ways out, so tiny chances keep their relative precision.
 * @param rows [state]: its ways out; chances of a row sum to 1.
 * @param endings how many endings there are.
 */
export function absorb(rows: readonly (readonly Edge[])[], endings: number): Absorption {
  const table = rows.map(rowOf);
  const callers = callersOf(table);
  for (let state = table.length - 1; state > 0; state--) eliminate(state, table, callers);
  const left = waysOut(0, table[0] as Row);
  const at = (ending: number) => left.get(-1 - ending) ?? { w: 0, d: 0 };
  const numbers = Array.from({ length: endings }, (_, ending) => ending);
  return {
    chance: numbers.map((ending) => at(ending).w),
    steps: numbers.map((ending) => at(ending).d),
    never: left.get(NOWHERE)?.w ?? 0,
  };
}

function rowOf(edges: readonly Edge[]): Row {
  const row: Row = new Map();
  for (const { to, chance } of edges) if (chance > 0) add(row, to, { w: chance, d: chance });
  return row;
}

function add(row: Row, to: number, more: Weight): void {
  const was = row.get(to);
  row.set(to, was ? { w: was.w + more.w, d: was.d + more.d } : more);
}

/** [state]: the other states with an edge to it. */
function callersOf(table: readonly Row[]): Set<number>[] {
  const callers = table.map(() => new Set<number>());
  table.forEach((row, from) => {
    for (const to of row.keys()) if (to !== from) callers[to]?.add(from);
  });
  return callers;
}

const times = (a: Weight, b: Weight): Weight => ({ w: a.w * b.w, d: a.w * b.d + a.d * b.w });

/** The ways out of a state once it has circled in itself any number of times. */
function waysOut(state: number, row: Row): Row {
  const self = row.get(state) ?? { w: 0, d: 0 };
  row.delete(state);
  let leave = 0;
  for (const { w } of row.values()) leave += w;
  if (leave === 0) return new Map([[NOWHERE, { w: 1, d: 0 }]]);
  const circles: Weight = { w: 1 / leave, d: self.d / (leave * leave) };
  return new Map([...row].map(([to, weight]) => [to, times(circles, weight)]));
}

function eliminate(state: number, table: readonly Row[], callers: readonly Set<number>[]): void {
  const out = waysOut(state, table[state] as Row);
  for (const to of out.keys()) callers[to]?.delete(state);
  for (const from of callers[state] as Set<number>) {
    const row = table[from] as Row;
    const into = row.get(state) as Weight;
    row.delete(state);
    for (const [to, weight] of out) {
      add(row, to, times(into, weight));
      if (to !== from) callers[to]?.add(from);
    }
  }
}
