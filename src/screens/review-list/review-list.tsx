/** All sessions, newest first. */
import { Link } from 'wouter';
import { useApp } from '../app-context.tsx';
import { sayWhen } from '../parts/when.ts';
import css from './review-list.module.css';

export function ReviewList() {
  const heads = useApp((state) => state.heads);
  return (
    <div className="stack wide">
      <h1>Sessions</h1>
      {heads.length === 0 ? (
        <div className="stack">
          <p>Nothing to review yet. After a session its picture, its table and where to start next time are kept here.</p>
          <Link href="/" className="button primary">
            Practise a first session
          </Link>
        </div>
      ) : (
        <ul className={css.list}>
          {heads.map(({ id, started, ended }) => (
            <li key={id}>
              <Link href={`/review/${encodeURIComponent(id)}`} className={css.line}>
                <strong>{started.body.dogName}</strong>
                <span>{started.body.planTitle}</span>
                <span className="soft">
                  {sayWhen(started.at)}
                  {ended ? '' : ' · not ended'}
                </span>
              </Link>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
