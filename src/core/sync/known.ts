/** Remembers which events a server is known to have: per device, ranges of numbers, so that years of practice take a few lines. */

/** By device: ranges of numbers, both ends included, rising, never touching. */
export type Known = Readonly<Record<string, readonly Range[]>>;
type Range = readonly [from: number, to: number];

export const NOTHING_KNOWN: Known = {};

/** Null: no event is called so. */
export function partsOfId(id: string): { readonly device: string; readonly seq: number } | null {
  const colon = id.lastIndexOf(':');
  const seq = Number(id.slice(colon + 1));
  // As written, not as read: "a:07" and "a:7" would be one number and two names.
  if (colon < 1 || !Number.isSafeInteger(seq) || seq < 1 || id !== `${id.slice(0, colon)}:${seq}`) return null;
  return { device: id.slice(0, colon), seq };
}

export function isKnown(known: Known, id: string): boolean {
  const parts = partsOfId(id);
  const ranges = (parts && Object.hasOwn(known, parts.device) && known[parts.device]) || [];
  return ranges.some(([from, to]) => parts !== null && from <= parts.seq && parts.seq <= to);
}

/** What is no event's id is passed over. */
export function withKnown(known: Known, ids: readonly string[]): Known {
  const byDevice = new Map<string, Range[]>();
  for (const id of ids) {
    const parts = partsOfId(id);
    if (parts) byDevice.set(parts.device, [...(byDevice.get(parts.device) ?? []), [parts.seq, parts.seq]]);
  }
  const grown = [...byDevice].map(([device, fresh]) => [device, joined([...rangesOf(known, device), ...fresh])] as const);
  return { ...known, ...Object.fromEntries(grown) };
}

function rangesOf(known: Known, device: string): readonly Range[] {
  return Object.hasOwn(known, device) ? (known[device] ?? []) : [];
}

function joined(ranges: readonly Range[]): readonly Range[] {
  const out: [number, number][] = [];
  for (const [from, to] of ranges.toSorted((a, b) => a[0] - b[0])) {
    const last = out.at(-1);
    if (last && from <= last[1] + 1) last[1] = Math.max(last[1], to);
    else out.push([from, to]);
  }
  return out;
}

export function countKnown(known: Known): number {
  return Object.values(known)
    .flat()
    .reduce((sum, [from, to]) => sum + to - from + 1, 0);
}
