/** The way to the day: week by week at the dog's own pace, what to ask the practice for, and how it was counted. */
import { Link } from 'wouter';
import type { Pace } from '../../core/exam/pace.ts';
import type { Rehearsal as Plan } from '../../core/exam/rehearsal.ts';
import { t } from '../../core/language.ts';
import css from './exam.module.css';
import { sayAsk, sayPace, saySpan, sayStretch } from './words.ts';

interface Props {
  readonly rehearsal: Plan;
  readonly pace: Pace;
  readonly place: string;
}

export function Rehearsal({ rehearsal, pace, place }: Props) {
  const { asks, stretches, unplanned, verdict } = rehearsal;
  if (verdict.kind === 'empty' || verdict.kind === 'past') return null;
  return (
    <>
      {asks.length > 0 ? (
        <section className="stack">
          <h2>{t('Ask the practice for')}</h2>
          <ul className={css.facts}>
            {asks.map((ask) => (
              <li key={ask}>{sayAsk(ask, place)}</li>
            ))}
          </ul>
        </section>
      ) : null}
      {unplanned.length > 0 ? (
        <section className="stack">
          <h2>{t('On no plan yet')}</h2>
          <p>
            {t('How many steps these need is not known, so they count in no forecast: {what}.', {
              what: unplanned.map(({ what }) => what).join(', '),
            })}
          </p>
          <Link href="/plan/new" className="button">
            {t('Make a plan for them')}
          </Link>
        </section>
      ) : null}
      {stretches.length > 0 ? <Way rehearsal={rehearsal} pace={pace} /> : null}
    </>
  );
}

function Way({ rehearsal: { stretches }, pace }: Omit<Props, 'place'>) {
  return (
    <section className="stack">
      <h2>{t('The way there')}</h2>
      <p>
        {t(
          'At its own pace, not faster: a dog that is hurried lifts more, and what is missing on the day is no fault of its own.',
        )}
      </p>
      <ol className={css.way}>
        {stretches.map((stretch) => (
          <li key={stretch.fromDay} data-kind={stretch.kind}>
            <strong>{saySpan(stretch)}</strong>
            <br />
            {sayStretch(stretch)}
          </li>
        ))}
      </ol>
      <details className={css.change}>
        <summary>{t('How this is counted')}</summary>
        <p>{sayPace(pace)}</p>
        <p className="soft">
          {t(
            'Whole steps that were tried for the first time; the range a week is exact for steps that come at a steady pace (Garwood 1936), and so is that of the steps to come (Nelson 1970). Sessions as many as until now, one a day at most. Reaching a step is not keeping it: that takes three sessions at 9 in 10, on two days, in two places.',
          )}
        </p>
      </details>
    </section>
  );
}
