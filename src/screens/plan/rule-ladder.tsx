/** Where a rule settles on a ladder without learning: a column a step, as high as the time spent there. */
import { t } from '../../core/language.ts';
import css from './rule-chart.module.css';
import { LADDER, type RuleFigures, TOO_EARLY } from './rule-figures.ts';

const WIDTH = 360;
const HEIGHT = 150;
const EDGE = { top: 40, right: 14, bottom: 44, left: 40 };
const FLOOR = HEIGHT - EDGE.bottom;
const STEP = (WIDTH - EDGE.left - EDGE.right) / LADDER.length;

export function RuleLadder({ figures: { timeByStep }, said }: { figures: RuleFigures; said: string }) {
  const most = Math.max(...timeByStep);
  return (
    <svg className={css.chart} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={said}>
      <text className={css.label} x="0" y="14">
        {t('time on each step, of 100 trials')}
      </text>
      {timeByStep.map((share, step) => (
        <Column key={LADDER[step]} step={step} share={share} highPx={((FLOOR - EDGE.top) * share) / most} />
      ))}
      <line className={css.axis} x1={EDGE.left} x2={WIDTH - EDGE.right} y1={FLOOR} y2={FLOOR} />
      <text className={css.label} x={(EDGE.left + WIDTH - EDGE.right) / 2} y={HEIGHT - 6} textAnchor="middle">
        {t('kept there, of 100')}
      </text>
    </svg>
  );
}

function Column({ step, share, highPx }: { step: number; share: number; highPx: number }) {
  const kept = LADDER[step] ?? 0;
  const middlePx = EDGE.left + STEP * (step + 0.5);
  // Hatched like the raises that come too early: what is spent there is spent on a step that is too hard.
  const fill = kept < TOO_EARLY ? 'url(#early-ink)' : undefined;
  return (
    <g>
      <rect className={fill ? undefined : css.time} fill={fill} x={middlePx - 14} width="28" y={FLOOR - highPx} height={highPx} />
      <text className={css.label} x={middlePx} y={FLOOR - highPx - 5} textAnchor="middle">
        {share > 0 && share < 0.005 ? '<1' : Math.round(100 * share)}
      </text>
      <text className={css.label} x={middlePx} y={FLOOR + 18} textAnchor="middle">
        {Math.round(100 * kept)}
      </text>
    </g>
  );
}
