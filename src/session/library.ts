/** Keeps what outlives a session: dogs, plans, taught sounds, settings. Each change is one event; the library is their fold. */
import type { Draft, LibraryEvent, Stamp } from '../core/event.ts';
import { stampEvent } from '../core/event.ts';
import { foldLibrary, type Library } from '../core/library.ts';
import { isoWithOffset, type WallClock } from './wall-clock.ts';
import type { Writer } from './writer.ts';

export interface LibraryKeeper {
  library(): Library;
  /** After an import: the library is the fold of these. */
  replace(events: readonly LibraryEvent[]): void;
  /** Events that came from elsewhere and are kept already. */
  adopt(events: readonly LibraryEvent[]): void;
  /** Writes, then shows. */
  keep(...drafts: readonly Draft<LibraryEvent>[]): Promise<void>;
}

export function createLibraryKeeper(
  kept: readonly LibraryEvent[],
  { wall, writer, show }: { wall: WallClock; writer: Writer; show: (library: Library) => void },
): LibraryKeeper {
  let all = kept;
  let library = foldLibrary(all);
  return {
    library: () => library,
    replace: (events) => {
      all = events;
      library = foldLibrary(all);
    },
    adopt: (events) => {
      all = [...all, ...events];
      library = foldLibrary(all);
      show(library);
    },
    keep: async (...drafts) => {
      const stamp: Stamp = { ...writer.next(), session: null, at: isoWithOffset(wall.now()), monoMs: wall.monoMs() };
      const fresh = stampAll(drafts, stamp);
      all = [...all, ...fresh];
      library = foldLibrary(all);
      await writer.write(fresh);
      show(library);
    },
  };
}

function stampAll(drafts: readonly Draft<LibraryEvent>[], first: Stamp): readonly LibraryEvent[] {
  let stamp = first;
  return drafts.map((draft) => {
    const { event, next } = stampEvent(draft, stamp);
    stamp = next;
    return event as LibraryEvent;
  });
}
