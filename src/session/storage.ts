/** Tells how safe what is kept is: the browser's promise, the room left, the age of the last copy; and notes that a copy was handed out. */
import { ageOfCopy, type CopyAge } from '../core/copies.ts';
import type { Persistence, Room } from '../store/persist.ts';
import type { HomeRooms } from './rooms.ts';
import { isoWithOffset } from './wall-clock.ts';

export interface StorageStatus {
  readonly persistence: Persistence;
  /** null: this browser does not tell. */
  readonly room: Room | null;
  readonly copy: CopyAge;
}

export async function lookAtStorage({ parts, use, keeper, writer }: HomeRooms): Promise<StorageStatus> {
  const [persistence, room] = await Promise.all([parts.persistence(), parts.roomLeft()]);
  use.setState({ persistence });
  const started = use.getState().heads.map((head) => head.started);
  const now = isoWithOffset(parts.wall.now());
  return { persistence, room, copy: ageOfCopy(keeper.library().copies, started, writer.next().device, now) };
}

export function noteCopy({ keeper, use }: HomeRooms): Promise<void> {
  return keeper.keep({ type: 'copy-saved', body: { sessions: use.getState().heads.length } });
}

export async function askToKeep({ parts, use }: HomeRooms): Promise<void> {
  use.setState({ persistence: await parts.askToPersist() });
}
