/** What the handler wrote: about the session, about single reps, and why one was no trial. */
import type { CorrectedSession } from '../../core/correct.ts';
import { t } from '../../core/language.ts';
import css from './review.module.css';

export function Notes({ session: { state, notes, voidReasons } }: { session: CorrectedSession }) {
  const whole = notes.get('');
  const single = state.reps.flatMap(({ n, endedBy }) => {
    const reason = voidReasons.get(endedBy);
    const note = notes.get(endedBy);
    const texts = [reason && t('No trial: {reason}', { reason }), note].filter((text) => text !== undefined && text !== '');
    return texts.map((text) => ({ of: t('rep {n}', { n }), text: text as string }));
  });
  const written = whole ? [{ of: t('session'), text: whole }, ...single] : single;
  if (written.length === 0) return null;
  return (
    <section className={css.calls}>
      <h2>{t('Your notes')}</h2>
      <ul className={css.list}>
        {written.map(({ of, text }) => (
          <li key={`${of} ${text}`}>
            <span className={css.when}>{of}</span>
            <span>{text}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
