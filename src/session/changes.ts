/** What changes around a session: the ear says how it is, the sound stops, the page is hidden and shown. */
import type { RoomState } from '../audio/sound-room.ts';
import { type Ear, hears } from '../ears/ear-state.ts';
import type { Rooms } from './rooms.ts';
import { isLive } from './run.ts';

export function earChanged(rooms: Rooms, ear: Ear): void {
  const { use, practice, room } = rooms;
  const before = use.getState().ear;
  use.setState({ ear });
  if (!isLive(use.getState().live)) return;
  if (hears(before) && !hears(ear)) room.calls.call('lost', 'I cannot hear');
  void practice.ear('own-words', ear.state);
}

export function roomChanged({ use, ear }: Rooms, room: RoomState): void {
  use.setState({ room });
  if (room === 'interrupted' || room === 'frozen') ear.away('interrupted');
  else if (room === 'running') ear.back();
}

/** Some systems take the microphone from a hidden page and say nothing: what could not be heard is a pause, not silence. */
export function hidden(rooms: Rooms): void {
  if (!isLive(rooms.use.getState().live)) return;
  rooms.ear.away('hidden');
  void rooms.practice.pause('hidden');
}

export function shown(rooms: Rooms): void {
  if (!isLive(rooms.use.getState().live)) return;
  rooms.ear.back();
  void rooms.parts.wakeLock.hold().then((screenStaysOn) => rooms.use.setState({ screenStaysOn }));
}
