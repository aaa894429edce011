/** The sound of heard words, where the handler wished it kept: played in the review, deleted after a month or by one button. */
import { playSamples } from '../audio/play-samples.ts';
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import type { Rooms } from './rooms.ts';

/** What is kept beside an event (features, sound) is kept so long, days. */
const KEPT_DAYS = 30;

export async function forgetOldHearings({ store, parts }: Pick<Rooms, 'store' | 'parts'>): Promise<void> {
  await store.forgetHeardBefore(parts.wall.now().getTime() - KEPT_DAYS * 86_400_000);
}

export async function hasHeardSound({ store }: Rooms, eventId: string): Promise<boolean> {
  const kept = await store.heard([eventId]);
  return kept.ok && kept.value.some(({ sound }) => sound !== null);
}

/** From a tap. */
export async function playHeardSound({ store, room }: Rooms, eventId: string): Promise<void> {
  await room.unlock();
  const kept = await store.heard([eventId]);
  const sound = kept.ok ? kept.value[0]?.sound : null;
  if (sound) playSamples(room.context(), sound, EAR_RATE_HZ);
}

export async function countSounds({ store }: Rooms): Promise<number> {
  const count = await store.countSounds();
  return count.ok ? count.value : 0;
}

/** The features stay: they are no sound, and what is put right later can still teach. */
export async function forgetSounds({ store }: Rooms): Promise<boolean> {
  return (await store.forgetSounds()).ok;
}
