/** The takes of the handler whose turn it is, by word. */
import { type Take, takesOf } from '../../core/library.ts';
import { settingsOf } from '../../core/settings.ts';
import { useApp } from '../app-context.tsx';

export function useTakes(): ReadonlyMap<string, readonly Take[]> {
  const library = useApp((state) => state.library);
  return takesOf(library, settingsOf(library).handler);
}
