/** How safe what is kept is: what the browser promised, how much room is left, how old the last copy is. */
import { localeSpoken, t } from '../../core/language.ts';
import type { StorageStatus } from '../../session/app-state.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { sayCopy } from '../parts/copy-words.ts';
import { useStorage } from '../parts/use-storage.ts';

export function Storage() {
  const promise = useApp((state) => state.persistence);
  const { askToKeep } = useIntents();
  const status = useStorage();
  if (!status) return null;
  return (
    <>
      <p>{sayPromise(promise)}</p>
      {promise === 'may-be-cleared' ? (
        <button type="button" onClick={() => void askToKeep()}>
          {t('Ask it to keep everything')}
        </button>
      ) : null}
      <p>{sayRoom(status.room)}</p>
      <p>
        {sayCopy(status.copy)}
        {status.copy.isDue ? ` ${t('It is time for one.')}` : ''}
      </p>
    </>
  );
}

function sayPromise(promise: StorageStatus['persistence']): string {
  switch (promise) {
    case 'kept':
      return t('This browser has promised to keep it.');
    case 'may-be-cleared':
      return t('This browser may clear it when room is short, or after weeks unused: keep a copy.');
    case 'not-told':
      return t('Keep a copy: a browser may clear what it keeps.');
  }
}

function sayRoom(room: StorageStatus['room']): string {
  if (!room) return t('This browser does not tell how much room is left.');
  const left = sayBytes(Math.max(0, room.quotaBytes - room.usedBytes));
  return t('It uses {used} here; the browser allows about {left} more.', { used: sayBytes(room.usedBytes), left });
}

const UNITS = [
  ['gigabyte', 1e9],
  ['megabyte', 1e6],
  ['kilobyte', 1e3],
] as const;

/** "3.1 MB", in the reader's way. */
function sayBytes(bytes: number): string {
  const [unit, size] = UNITS.find(([, least]) => bytes >= least) ?? (['kilobyte', 1e3] as const);
  return new Intl.NumberFormat(localeSpoken(), { style: 'unit', unit, maximumFractionDigits: 1 }).format(bytes / size);
}
