/** Hands out a copy of everything, and notes that it was. From a tap. */
import type { Intents } from '../../session/app.ts';
import { saveFile } from './save-file.ts';

export type CopyHanded = { readonly kind: 'handed-out'; readonly name: string } | { readonly kind: 'called-off' | 'unreadable' };

export async function saveCopy({
  exportAll,
  noteCopy,
  after,
}: Pick<Intents, 'exportAll' | 'noteCopy' | 'after'>): Promise<CopyHanded> {
  const file = await exportAll();
  if (!file) return { kind: 'unreadable' };
  const done = await saveFile({ name: file.name, content: file.text, type: 'application/json' }, after);
  if (done === 'called-off') return { kind: 'called-off' };
  await noteCopy();
  return { kind: 'handed-out', name: file.name };
}
