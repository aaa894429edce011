/** Homework told in words: whose dog, how often, what to say, what to mind, and every step from the easiest up. */
import { HOMEWORK_WORDS, type Homework } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import { ruleOf, sayRule } from '../../core/rule.ts';
import css from './handover.module.css';
import { sayASessionsAWeek, sayCaution, sayStep, wordMeaning } from './words.ts';

export function Told({ homework }: { homework: Homework }) {
  const { caution, note, position, rule, sessionsAWeek, steps } = homework;
  return (
    <div className={css.told}>
      <dl className={css.facts}>
        <dt>{t('Position')}</dt>
        <dd>{position}</dd>
        <dt>{t('How often')}</dt>
        <dd>{sayASessionsAWeek(sessionsAWeek)}</dd>
        <Words homework={homework} />
        {note ? (
          <>
            <dt>{t('From your trainer')}</dt>
            <dd className="pre">{note}</dd>
          </>
        ) : null}
        <dt>{t('How a step is earned')}</dt>
        <dd>{sayRule(ruleOf(rule))}</dd>
      </dl>
      {caution ? <p className={css.caution}>{caution}</p> : null}
      <Steps steps={steps} />
    </div>
  );
}

function Words({ homework: { words } }: { homework: Homework }) {
  const said = HOMEWORK_WORDS.filter((word) => words[word] !== '');
  if (said.length === 0) return null;
  return (
    <>
      <dt>{t('Words to use')}</dt>
      <dd>
        <ul className={css.plain}>
          {said.map((word) => (
            <li key={word}>
              “{words[word]}”: {wordMeaning(word)}
            </li>
          ))}
        </ul>
      </dd>
    </>
  );
}

function Steps({ steps }: Pick<Homework, 'steps'>) {
  return (
    <section className="stack">
      <h3>{steps.length === 1 ? t('1 step') : t('{n} steps, the easiest first', { n: steps.length })}</h3>
      <ol className={css.steps}>
        {steps.map((step, at) => (
          <li key={step.id}>
            <strong>{step.title}</strong>
            <span className="soft"> · {sayStep(step)}</span>
            {step.caution ? <span className={css.minds}>{sayCaution(steps, at)}</span> : null}
          </li>
        ))}
      </ol>
    </section>
  );
}
