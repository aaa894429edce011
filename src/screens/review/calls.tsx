/** Lists every call of a session with its reasons, in the order made. */

import { t } from '../../core/language.ts';
import type { PlacedCall } from '../../core/placed-calls.ts';
import type { Step } from '../../core/plan.ts';
import { sayCall } from '../../core/sentences.ts';
import { unbroken } from '../picture/unbroken.ts';
import css from './review.module.css';

export function Calls({ calls, steps }: { calls: readonly PlacedCall[]; steps: readonly Step[] }) {
  return (
    <section className={css.calls}>
      <h2>{t('What was called, and why')}</h2>
      {calls.length === 0 ? <p className="soft">{t('Nothing was called: the step stayed as it was.')}</p> : null}
      <ol className={css.list}>
        {calls.map(({ call, afterRep }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the list of a session that is over does not change.
          <li key={at}>
            <span className={css.when}>{sayAfter(afterRep)}</span>
            <span>{unbroken(sayCall(call, steps))}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

export function sayAfter(afterRep: number): string {
  return afterRep === 0 ? t('at the start') : t('after rep {n}', { n: afterRep });
}
