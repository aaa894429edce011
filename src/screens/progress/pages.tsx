/** Shows so many sessions at a time: more would be dust on a phone, and slow. The newest first. */
import { useState } from 'react';
import { t } from '../../core/language.ts';
import type { Point } from '../../core/progress/series.ts';

/** As many as fit on a printed page. */
const PAGE = 40;

export interface PagesOf {
  readonly shown: readonly Point[];
  readonly total: number;
  /** 0: the newest. */
  readonly page: number;
  readonly last: number;
  go(page: number): void;
}

export function usePages(points: readonly Point[]): PagesOf {
  const [wanted, go] = useState(0);
  const last = Math.max(0, Math.ceil(points.length / PAGE) - 1);
  const page = Math.min(wanted, last);
  const to = points.length - page * PAGE;
  return { shown: points.slice(Math.max(0, to - PAGE), to), total: points.length, page, last, go };
}

export function Pages({ pages: { shown, total, page, last, go } }: { pages: PagesOf }) {
  if (last === 0) return null;
  return (
    <div className="row">
      <button type="button" disabled={page === last} onClick={() => go(page + 1)}>
        {t('Earlier')}
      </button>
      <button type="button" disabled={page === 0} onClick={() => go(page - 1)}>
        {t('Later')}
      </button>
      <span className="soft small">
        {t('Sessions {from} to {to} of {of}', { from: shown[0]?.n ?? 0, to: shown.at(-1)?.n ?? 0, of: total })}
      </span>
    </div>
  );
}
