/** One tread that fills toward the criterion, with a notch a second. After the rep it has the shape of its outcome, as a bar has. */
import { useEffect, useRef } from 'react';
import type { Rep } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { criterionS, type Step } from '../../core/plan.ts';
import type { Outcome } from '../../core/rep.ts';
import { useIntents } from '../app-context.tsx';
import css from './tread.module.css';

export function Tread({ step, sinceS, last }: { step: Step; sinceS: number | null; last: Rep | null }) {
  const wantedS = criterionS(step);
  // Paid at once has no length of its own: it is drawn as a second.
  const lengthS = wantedS || 1;
  const bar = useRef<SVGRectElement>(null);
  const { sessionS } = useIntents();
  const stillS = last ? last.heldForS : 0;
  useEffect(() => {
    let frame = 0;
    const fill = () => {
      const heldS = sinceS === null ? stillS : sessionS() - sinceS;
      bar.current?.setAttribute('width', String((100 * Math.min(1, Math.max(0, heldS) / lengthS)).toFixed(2)));
      if (sinceS !== null) frame = requestAnimationFrame(fill);
    };
    fill();
    return () => cancelAnimationFrame(frame);
  }, [sinceS, stillS, lengthS, sessionS]);
  const notches = Array.from({ length: Math.ceil(lengthS) - 1 }, (_, i) => (100 * (i + 1)) / lengthS);
  return (
    <svg
      className={css.tread}
      data-outcome={last?.outcome ?? 'none'}
      viewBox="0 0 100 8"
      preserveAspectRatio="none"
      role="img"
      aria-label={t('Criterion {s} s', { s: wantedS })}
    >
      <rect className={css.bed} x="0" y="0" width="100" height="8" />
      <rect ref={bar} className={css.fill} x="0" y="0" width="0" height="8" />
      {last ? <End outcome={last.outcome} x={100 * Math.min(1, stillS / lengthS)} /> : null}
      {notches.map((x) => (
        <line key={x} className={css.notch} x1={x} x2={x} y1="0" y2="8" />
      ))}
      <rect className={css.frame} x="0" y="0" width="100" height="8" />
    </svg>
  );
}

/** Kept ends in the marker's post, lifted tips up; short and void are outlines (CSS). */
function End({ outcome, x }: { outcome: Outcome; x: number }) {
  if (outcome === 'kept') return <rect className={css.post} x={Math.max(0, x - 1.6)} y="-4" width="1.6" height="12" />;
  return outcome === 'lifted' ? <path className={css.tip} d={`M${Math.max(0, x - 5)},8H${x}V0Z`} /> : null;
}
