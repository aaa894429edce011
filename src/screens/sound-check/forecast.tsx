/** What the ear promises, in plain words and with what each number rests on. */
import { t } from '../../core/language.ts';
import { useApp } from '../app-context.tsx';
import { wordName } from '../parts/word-names.ts';
import css from './sound-check.module.css';
import { sayAdvice, sayForecast, sayProblem } from './take-words.ts';

/** Once for all words, and beside the takes themselves. */
const SAID_ELSEWHERE: readonly string[] = ['too-little-talk', 'takes-unlike'];

export function Forecast() {
  const taught = useApp((state) => state.taught);
  const isWorking = useApp(({ teaching, isWorkingOut }) => isWorkingOut || teaching.kind === 'working');
  const isCatching = useApp(({ teaching }) => teaching.kind === 'catching' && teaching.last !== null);
  // What stood here before the latest takes is no longer true, and what will stand here is not known yet.
  if (isWorking) return <Unfinished says={t('Working out what it can tell apart…')} />;
  if (isCatching) return <Unfinished says={t('It is worked out anew when you are done recording.')} />;
  if (!taught) return null;
  const { enrolled, talk } = taught;
  return (
    <section className="stack" aria-live="polite">
      <h2>{t('What to expect')}</h2>
      {enrolled.ok ? (
        <ul className={css.forecast}>
          {enrolled.forecast.map((each) => (
            <li key={each.word}>
              <strong>{wordName(each.word)}</strong> {sayForecast(each, talk)}{' '}
              {each.advice
                .filter(({ kind }) => !SAID_ELSEWHERE.includes(kind))
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

/** Without the heading: that belongs to what can be relied on. */
function Unfinished({ says }: { says: string }) {
  return <p role="status">{says}</p>;
}
