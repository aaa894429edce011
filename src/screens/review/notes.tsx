/** What the handler wrote about single reps: notes, and why one was no trial. */
import type { CorrectedSession } from '../../core/correct.ts';
import css from './review.module.css';

export function Notes({ session: { state, notes, voidReasons } }: { session: CorrectedSession }) {
  const written = state.reps.flatMap(({ n, endedBy }) => {
    const reason = voidReasons.get(endedBy);
    const note = notes.get(endedBy);
    const texts = [reason && `No trial: ${reason}`, note].filter((text) => text !== undefined && text !== '');
    return texts.map((text) => ({ n, text: text as string }));
  });
  if (written.length === 0) return null;
  return (
    <section className={css.calls}>
      <h2>Your notes</h2>
      <ul className={css.list}>
        {written.map(({ n, text }) => (
          <li key={`${n} ${text}`}>
            <span className={css.when}>rep {n}</span>
            <span>{text}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
