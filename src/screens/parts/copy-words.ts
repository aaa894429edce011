/** Says how old the last copy is. */
import type { CopyAge } from '../../core/copies.ts';
import { localeSpoken, t } from '../../core/language.ts';

/** "Last copy: 12 days ago, 9 sessions since." */
export function sayCopy({ daysAgo, sessionsSince }: CopyAge): string {
  if (daysAgo === null) return sayUncopied(sessionsSince);
  const when = new Intl.RelativeTimeFormat(localeSpoken(), { numeric: 'auto' }).format(-daysAgo, 'day');
  return t('Last copy: {when}, {since}.', { when, since: saySince(sessionsSince) });
}

function sayUncopied(sessions: number): string {
  if (sessions === 0) return t('No copy was saved yet.');
  return sessions === 1
    ? t('No copy was saved yet: 1 session is on this device alone.')
    : t('No copy was saved yet: {n} sessions are on this device alone.', { n: sessions });
}

function saySince(sessions: number): string {
  if (sessions === 0) return t('no session since');
  return sessions === 1 ? t('1 session since') : t('{n} sessions since', { n: sessions });
}
