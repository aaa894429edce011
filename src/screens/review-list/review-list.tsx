/** All sessions, newest first, each with what it came to. */
import { useState } from 'react';
import { Link } from 'wouter';
import { t } from '../../core/language.ts';
import { nameOf } from '../../core/named.ts';
import type { SessionHead } from '../../session/app-state.ts';
import { useApp } from '../app-context.tsx';
import { fetched } from '../parts/fetched.tsx';
import { sayWhen } from '../parts/when.ts';
import css from './review-list.module.css';

const Result = fetched(() => import('./result.tsx').then(({ Result }) => Result));

/** Each line reads its session: so many at a time. */
const AT_A_TIME = 30;

export function ReviewList() {
  const heads = useApp((state) => state.heads);
  const [shown, setShown] = useState(AT_A_TIME);
  return (
    <div className="stack wide">
      <h1>{t('Sessions')}</h1>
      {heads.length === 0 ? (
        <div className="stack">
          <p>{t('Nothing to review yet. After a session its picture, its table and where to start next time are kept here.')}</p>
          <Link href="/" className="button primary">
            {t('Practise a first session')}
          </Link>
        </div>
      ) : (
        <ul className={css.list}>
          {heads.slice(0, shown).map((head) => (
            <li key={head.id}>
              <Line head={head} />
            </li>
          ))}
        </ul>
      )}
      {heads.length > shown ? (
        <button type="button" onClick={() => setShown(shown + AT_A_TIME)}>
          {t('Older sessions, {n} more', { n: heads.length - shown })}
        </button>
      ) : null}
    </div>
  );
}

function Line({ head: { id, started, ended, lastAt } }: { head: SessionHead }) {
  const dogs = useApp((state) => state.library.dogs);
  const places = useApp((state) => state.library.places);
  const { dogId, dogName, planTitle, place } = started.body;
  return (
    <Link href={`/review/${encodeURIComponent(id)}`} className={css.line}>
      <strong>{dogs.find((dog) => dog.id === dogId)?.name ?? dogName}</strong>
      <span>{planTitle}</span>
      <span className="soft">
        {sayWhen(started.at)}
        {place ? `, ${nameOf(places, place)}` : ''}
        {ended ? '' : ` · ${t('not ended')}`}
      </span>
      <Result sessionId={id} lastAt={lastAt} />
    </Link>
  );
}
