/** Homework told in words: whose dog, how often, what to say, what to mind, and every step from the easiest up. */
import { HOMEWORK_WORDS, type Homework } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import { ruleOf, sayRule } from '../../core/rule.ts';
import css from './handover.module.css';
import { sayASessionsAWeek, sayCaution, sayStep, wordMeaning } from './words.ts';

/** @param under the level of the heading that it stands under. */
export function Told({ homework, under = 1 }: { homework: Homework; under?: 1 | 2 }) {
  const { position, rule, sessionsAWeek, steps } = homework;
  return (
    <div className={css.told}>
      <dl className={css.facts}>
        <dt>{t('Position')}</dt>
        <dd>{position}</dd>
        <dt>{t('How often')}</dt>
        <dd>{sayASessionsAWeek(sessionsAWeek)}</dd>
        <Words homework={homework} />
        <dt>{t('How a step is earned')}</dt>
        <dd>{sayRule(ruleOf(rule))}</dd>
        <FromTrainer homework={homework} />
      </dl>
      <Steps steps={steps} Heading={under === 1 ? 'h2' : 'h3'} />
    </div>
  );
}

/** The trainer's own words: the note, and what to mind beside the cautions of the steps. Stands in a list of facts. */
export function FromTrainer({ homework: { note, caution } }: { homework: Homework }) {
  return (
    <>
      {note ? (
        <>
          <dt>{t('From your trainer')}</dt>
          <dd className="pre">{note}</dd>
        </>
      ) : null}
      {caution ? (
        <>
          <dt>{t('What to mind')}</dt>
          <dd className={`pre ${css.caution}`}>{caution}</dd>
        </>
      ) : null}
    </>
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

function Steps({ steps, Heading }: Pick<Homework, 'steps'> & { Heading: 'h2' | 'h3' }) {
  return (
    <section className="stack">
      <Heading>{steps.length === 1 ? t('1 step') : t('{n} steps, the easiest first', { n: steps.length })}</Heading>
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
