/** Passes on the keys, pedals and remotes that the handler bound, while something else than a session is scored. */
import { settingsOf } from '../core/settings.ts';
import type { Seconds } from '../core/units.ts';
import type { Word } from '../core/word.ts';
import type { Rooms } from './rooms.ts';

/** Tells each word pressed, and how long ago, s. Returns the way to stop. */
export function watchKeys({ parts, keeper }: Rooms, onWord: (word: Word, agoS: Seconds) => void): () => void {
  return parts.listenToKeys({
    bindings: () => settingsOf(keeper.library()).keys,
    atS: (timeStampMs) => (parts.wall.monoMs() - timeStampMs) / 1000,
    onHeard: ({ word, startedAtS }) => onWord(word, Math.max(0, startedAtS)),
  });
}
