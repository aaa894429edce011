/** Lists the sessions, and finds the one that was closed in the middle. */
import type { HomeRooms } from './rooms.ts';
import { daysBetween } from './wall-clock.ts';

/** A session left open longer ago than this is over, days. */
const GO_ON_DAYS = 0.5;

export async function showHeads({ store, use, parts, writer }: HomeRooms): Promise<void> {
  const heads = await store.sessionHeads();
  if (!heads.ok) return use.setState({ writeProblem: heads.problem });
  // Another phone may be in the middle of its session: nobody goes on with it here.
  const latest = heads.value.heads.find(({ started }) => started.device === writer.next().device);
  const open = latest && !latest.ended && daysBetween(latest.lastAt, parts.wall.now()) < GO_ON_DAYS;
  use.setState({ heads: heads.value.heads, unfinished: open ? latest : null });
}
