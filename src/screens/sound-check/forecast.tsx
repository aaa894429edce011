/** What the ear promises, in plain words and with what each number rests on. */
import { useApp } from '../app-context.tsx';
import css from './sound-check.module.css';
import { sayAdvice, sayForecast, sayProblem } from './take-words.ts';

export function Forecast() {
  const taught = useApp((state) => state.taught);
  const working = useApp((state) => state.teaching.kind === 'working');
  if (working) return <p role="status">Working out what it can tell apart…</p>;
  if (!taught) return null;
  const { enrolled, talk } = taught;
  return (
    <section className="stack" aria-live="polite">
      <h2>What to expect</h2>
      {enrolled.ok ? (
        <ul className={css.forecast}>
          {enrolled.forecast.map((each) => (
            <li key={each.word}>
              <strong>{each.word}</strong> {sayForecast(each, talk)}{' '}
              {each.advice
                .filter(({ kind }) => kind !== 'too-little-talk')
                .map(sayAdvice)
                .join(' ')}
            </li>
          ))}
        </ul>
      ) : null}
      {enrolled.ok && enrolled.forecast.some(({ advice }) => advice.some(({ kind }) => kind === 'too-little-talk')) ? (
        <p>{sayAdvice({ kind: 'too-little-talk', takes: talk })}</p>
      ) : null}
      {enrolled.problems.length > 0 ? (
        <ul className={css.forecast}>
          {enrolled.problems.map((problem) => (
            <li key={JSON.stringify(problem)}>{sayProblem(problem)}</li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}
