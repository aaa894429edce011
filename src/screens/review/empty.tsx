/** A session without a rep: teaches the picture with invented data, clearly named as such. */
import { useState } from 'react';
import { t } from '../../core/language.ts';
import { callsInOrder } from '../../core/placed-calls.ts';
import { summarize } from '../../core/summary.ts';
import { inventedSession } from '../picture/invented.ts';
import { Key } from '../picture/key.tsx';
import { type Picked, Stairs } from '../picture/stairs.tsx';
import { Detail } from './detail.tsx';
import css from './review.module.css';

export function Empty() {
  const [invented] = useState(inventedSession);
  const [picked, setPicked] = useState<Picked | null>(null);
  const calls = callsInOrder(invented);
  return (
    <>
      <section className={css.finding} aria-label={t('What happened')}>
        <p className={css.first}>{t('No reps yet.')}</p>
        <p>
          {t('A session becomes a picture like this one. Say hold when the dog settles, and your marker when it has earned it.')}
        </p>
      </section>
      <section className={css.picture} aria-label={t('An invented session as bars on stairs')}>
        <p className="soft">
          <strong>{t('Invented, to show how it is read:')}</strong> {summarize(invented).finding}
        </p>
        <Stairs reps={invented.reps} steps={invented.standing.steps} calls={calls} selected={picked} onPick={setPicked} />
        <Key />
        <Detail state={invented} calls={calls} picked={picked} />
      </section>
    </>
  );
}
