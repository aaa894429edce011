/** Closes the review of an examination: each thing on its list as it went, and where it is told. No next step is called: it was no training. */
import { Link } from 'wouter';
import { type ItemSeen, seenIn } from '../../core/exam/during.ts';
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { sayHeld } from '../../core/summary.ts';
import { OutcomeShape } from '../picture/key.tsx';
import { itemWord } from './during.tsx';
import css from './exam.module.css';

const OUTCOMES = { done: 'kept', lifted: 'lifted', open: 'void' } as const;

export function AfterExam({ state, onDone }: { state: SessionState; onDone?: () => void }) {
  const { items, done } = seenIn(state);
  const dog = encodeURIComponent(state.start.dogId);
  return (
    <section className="stack">
      <h2>{t('The list: {n} of {of} done', { n: done, of: items.length })}</h2>
      <ul className={css.seen}>
        {items.map(({ step, state: how, heldForS, lifts }) => (
          <li key={step.id}>
            <OutcomeShape outcome={OUTCOMES[how]} />
            <span>
              <strong>{step.title}</strong>: {sayHow({ state: how, heldForS, lifts })}
            </span>
          </li>
        ))}
      </ul>
      <p>
        {t(
          'An examination is no training: progress and the next start leave it out. Held on its day, the card tells it as the last time; before it, it was a rehearsal.',
        )}
      </p>
      <div className="row">
        <Link href={`/card/${dog}`} className="button">
          {t('Card for the examiner')}
        </Link>
        {onDone ? (
          <button type="button" className="primary" onClick={onDone}>
            {t('Done')}
          </button>
        ) : null}
      </div>
    </section>
  );
}

/** "done, 8.2 s · head up: 1". */
function sayHow({ state, heldForS, lifts }: Pick<ItemSeen, 'state' | 'heldForS' | 'lifts'>): string {
  const ups = lifts > 0 ? t('head up: {n}', { n: lifts }) : '';
  if (state === 'lifted') return ups;
  const held = heldForS === null ? '' : `, ${sayHeld(heldForS)}`;
  return [`${itemWord(state)}${held}`, ups].filter(Boolean).join(' · ');
}
