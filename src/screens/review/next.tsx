/** Closes the review: where to start next time, why, and the one thing to do now. */
import { WARM_UPS } from '../../core/criterion.ts';
import { t } from '../../core/language.ts';
import type { NextStart } from '../../core/next-start.ts';
import { indexOfStep } from '../../core/plan.ts';
import { sayStart } from '../../core/start-words.ts';
import { unbroken } from '../picture/unbroken.ts';
import css from './review.module.css';

export interface NextProps {
  readonly next: NextStart;
  readonly onPractise?: () => void;
  readonly onDone?: () => void;
  /** Of a session on homework that was not sent back yet. */
  readonly onSend?: () => void;
  /** Lifts asked for the veterinarian: to practise on at once is not the thing to do. */
  readonly mayHurt?: boolean;
}

export function Next({ next, onPractise, onDone, onSend, mayHurt = false }: NextProps) {
  const at = indexOfStep(next.steps, next.startStepId);
  const step = next.steps[at];
  return (
    <section className={css.next}>
      <h2>{t('Next time')}</h2>
      <p className={css.first}>{step ? step.title : next.startStepId}</p>
      <p>{unbroken(`${sayStart(next.why)} ${sayWarmUp(next, at)} ${sayCarried(next)}`)}</p>
      {step?.caution ? <p className={css.caution}>{step.caution}</p> : null}
      <div className={`row ${css.actions}`}>
        {onPractise ? (
          <button type="button" className={mayHurt ? undefined : 'primary'} onClick={onPractise}>
            {t('Practise again')}
          </button>
        ) : null}
        {onSend ? (
          <button type="button" onClick={onSend}>
            {t('Send to your trainer')}
          </button>
        ) : null}
        {onDone ? (
          <button type="button" className={mayHurt ? 'primary' : 'plain'} onClick={onDone}>
            {t('Done')}
          </button>
        ) : null}
      </div>
    </section>
  );
}

function sayWarmUp({ steps }: NextStart, at: number): string {
  const below = steps[at - 1];
  return below ? t('Before it, {n} warm-ups on {step}.', { n: WARM_UPS, step: below.title }) : '';
}

function sayCarried({ carried: { trials } }: NextStart): string {
  return trials.count === 0 ? '' : t('{kept} of {of} kept there carry over.', { kept: trials.kept, of: trials.count });
}
