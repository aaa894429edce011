/** What this is, in three sentences, for somebody who opens it for the first time, with the one picture to learn. */
import { useState } from 'react';
import { t } from '../../core/language.ts';
import { inventedSession } from '../picture/invented.ts';
import { Stairs } from '../picture/stairs.tsx';
import css from './home.module.css';

export function Lesson() {
  const [invented] = useState(inventedSession);
  return (
    <section className="stack">
      <h1>{t('Hold still, by choice')}</h1>
      <p>
        {t(
          'You say a short word when the dog settles, another when you pay, a third when the head comes up; the phone on the table listens, taps the seconds and keeps every rep. After each rep it tells you whether to go on, go back, halve the step or rest. Everything stays on this device.',
        )}
      </p>
      <figure className={css.picture}>
        <Stairs variant="strip" reps={invented.reps} steps={invented.standing.steps} />
        <figcaption className="small soft">
          {t(
            'A session as bars on stairs (invented): a flat bar was kept, a bar that tips up was a lift, each stair is a step of the plan.',
          )}
        </figcaption>
      </figure>
    </section>
  );
}
