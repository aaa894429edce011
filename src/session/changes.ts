/** What changes around a session: the ear says how it is, the sound stops, the page is hidden and shown. */
import type { RoomState } from '../audio/sound-room.ts';
import { t } from '../core/language.ts';
import { EAR_OFF, type Ear, hears } from '../ears/ear-state.ts';
import { isLive } from './live.ts';
import type { Rooms } from './rooms.ts';

export function earChanged(rooms: Rooms, ear: Ear, name: 'own-words' | 'platform' = 'own-words'): void {
  const { use, practice, room } = rooms;
  // An ear that closes so that the other can open has nothing to say of the one that listens.
  if (ear.state === 'off' && otherListens(rooms, name)) return;
  const before = use.getState().ear;
  use.setState({ ear });
  if (!isLive(use.getState().live)) return;
  if (hears(before) && !hears(ear)) room.calls.call('lost', t('I cannot hear'));
  void practice.ear(name, ear.state);
}

function otherListens({ ear, platformEar }: Rooms, name: 'own-words' | 'platform'): boolean {
  return (name === 'platform' ? ear.ear() : platformEar.ear()).state !== 'off';
}

/** @param lasting false for the short gap after each phrase: neither shown as a loss, nor sounded, nor kept. */
export function platformChanged(rooms: Rooms, { state, why }: Pick<Ear, 'state' | 'why'>, lasting: boolean): void {
  if (lasting) earChanged(rooms, { ...EAR_OFF, state, why }, 'platform');
}

export function roomChanged({ use, ear, platformEar, practice }: Rooms, room: RoomState): void {
  use.setState({ room });
  // The session's clock stands still with the sound: what happens meanwhile cannot be timed.
  if (room !== 'running' && isLive(use.getState().live)) void practice.pause('hidden');
  for (const each of [ear, platformEar]) {
    if (room === 'interrupted' || room === 'frozen') each.away('interrupted');
    else if (room === 'running') each.back();
  }
}

/** Some systems take the microphone from a hidden page and say nothing: what could not be heard is a pause, not silence. */
export function hidden(rooms: Rooms): void {
  if (!isLive(rooms.use.getState().live)) return;
  rooms.ear.away('hidden');
  rooms.platformEar.away('hidden');
  void rooms.practice.pause('hidden');
}

export function shown(rooms: Rooms): void {
  if (!isLive(rooms.use.getState().live)) return;
  rooms.ear.back();
  rooms.platformEar.back();
  void rooms.parts.wakeLock.hold().then((screenStaysOn) => rooms.use.setState({ screenStaysOn }));
}
