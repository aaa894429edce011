/** One tread that fills toward the criterion, with a notch a second. After the rep it has the shape of its outcome, as a bar has. */
import { useState } from 'react';
import type { Rep } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { criterionS, type Step } from '../../core/plan.ts';
import type { Outcome } from '../../core/rep.ts';
import type { Seconds } from '../../core/units.ts';
import { useIntents } from '../app-context.tsx';
import css from './tread.module.css';

export function Tread({ step, sinceS, last }: { step: Step; sinceS: Seconds | null; last: Rep | null }) {
  const wantedS = criterionS(step);
  // Paid at once has no length of its own: it is drawn as a second.
  const lengthS = wantedS || 1;
  const stillX = 100 * Math.min(1, Math.max(0, last?.heldForS ?? 0) / lengthS);
  const said = last ? t('Criterion {s} s, of the rep that is over', { s: wantedS }) : t('Criterion {s} s', { s: wantedS });
  const notches = Array.from({ length: Math.ceil(lengthS) - 1 }, (_, i) => (100 * (i + 1)) / lengthS);
  return (
    <div className={css.tread} data-outcome={last?.outcome ?? 'none'}>
      {sinceS === null ? null : <Growing key={sinceS} sinceS={sinceS} lengthS={lengthS} />}
      <svg viewBox="0 0 100 8" preserveAspectRatio="none" role="img" aria-label={said}>
        {last ? <rect className={css.fill} x="0" y="0" width={stillX.toFixed(2)} height="8" /> : null}
        {last ? <End outcome={last.outcome} x={stillX} /> : null}
        {notches.map((x) => (
          <line key={x} className={css.notch} x1={x} x2={x} y1="0" y2="8" />
        ))}
        <rect className={css.frame} x="0" y="0" width="100" height="8" />
      </svg>
    </div>
  );
}

/** The running hold. It grows as an animation of the browser's, which needs no frame of ours: the main thread stays free for words and taps. */
function Growing({ sinceS, lengthS }: { sinceS: Seconds; lengthS: Seconds }) {
  const { sessionS } = useIntents();
  const [timing] = useState(() => ({ animationDuration: `${lengthS}s`, animationDelay: `${sinceS - sessionS()}s` }));
  return <span className={css.growing} style={timing} />;
}

/** Kept ends in the marker's post, lifted tips up; short and void are outlines (CSS). */
function End({ outcome, x }: { outcome: Outcome; x: number }) {
  if (outcome === 'kept') return <rect className={css.post} x={Math.max(0, x - 1.6)} y="-4" width="1.6" height="12" />;
  return outcome === 'lifted' ? <path className={css.tip} d={`M${Math.max(0, x - 5)},8H${x}V0Z`} /> : null;
}
