/** Leads to sync, and says whether it is on. */
import { Link } from 'wouter';
import { t } from '../../core/language.ts';
import { useApp } from '../app-context.tsx';

export function SyncDoor() {
  const count = useApp((state) => state.sync?.dogs.length ?? 0);
  return (
    <section className="stack">
      <h2>{t('More than one device')}</h2>
      <p className="soft">{sayState(count)}</p>
      <Link href="/sync" className="button">
        {t('Keep dogs in step')}
      </Link>
    </section>
  );
}

function sayState(count: number): string {
  if (count === 0) return t('Over a server of your own. Off until you switch it on.');
  return count === 1 ? t('1 dog is kept in step.') : t('{n} dogs are kept in step.', { n: count });
}
