/** Keeps the names of handlers and places, and counts what a dog was given today. */
import type { Named } from '../core/event.ts';
import { readSession } from './read-back.ts';
import type { Rooms } from './rooms.ts';
import { isoWithOffset } from './wall-clock.ts';

export function saveNamed({ keeper }: Rooms, what: 'handler' | 'place', named: Named): Promise<void> {
  return keeper.keep(what === 'handler' ? { type: 'handler-saved', body: named } : { type: 'place-saved', body: named });
}

/** Treats of all sessions with this dog that began on this day, by the wall clock where each was held. */
export async function treatsGivenToday(rooms: Rooms, dogId: string): Promise<number> {
  const today = isoWithOffset(rooms.parts.wall.now()).slice(0, 10);
  const heads = rooms.use.getState().heads.filter(({ started }) => started.body.dogId === dogId && started.at.startsWith(today));
  const sessions = await Promise.all(heads.map(({ id }) => readSession(rooms, id)));
  return sessions.reduce((sum, session) => sum + (session?.standing.today.treats ?? 0), 0);
}
