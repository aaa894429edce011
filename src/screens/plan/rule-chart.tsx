/** The one small chart under a rule: chance to raise before going back, or within so many trials, against how much the dog truly keeps. */
import { scaleLinear } from 'd3-scale';
import { area, curveMonotoneX, line } from 'd3-shape';
import { t } from '../../core/language.ts';
import css from './rule-chart.module.css';
import { type CurvePoint, LEAST, type OwnTrials, ownInterval, type RuleFigures, type Span, TOO_EARLY } from './rule-figures.ts';

const WIDTH = 360;
const HEIGHT = 262;
const EDGE = { top: 44, right: 14, bottom: 62, left: 40 };
const x = scaleLinear([LEAST, 1], [EDGE.left, WIDTH - EDGE.right]);
const y = scaleLinear([0, 1], [HEIGHT - EDGE.bottom, EDGE.top]);
const FLOOR = y(0);

const pathOf = (span: Span) =>
  line<CurvePoint>(
    ({ p }) => x(p),
    ({ raised }) => y(raised[span]),
  ).curve(curveMonotoneX);
const under = (span: Span) =>
  area<CurvePoint>(
    ({ p }) => x(p),
    FLOOR,
    ({ raised }) => y(raised[span]),
  ).curve(curveMonotoneX);

interface Props {
  readonly figures: RuleFigures;
  readonly span: Span;
  /** Drawn thinly for comparison; null when it is the rule itself. */
  readonly usual: readonly CurvePoint[] | null;
  readonly own: OwnTrials | null;
  readonly finding: string;
}

export function RuleChart({ figures, span, usual, own, finding }: Props) {
  const [handling, holding] = [figures.handling.curve, figures.holding?.curve];
  const early = (holding ?? handling).filter(({ p }) => p <= TOO_EARLY + 1e-9);
  const path = pathOf(span);
  return (
    <svg
      className={css.chart}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${finding} ${t('The table below says the same.')}`}
    >
      <Early points={early} span={span} />
      <Axes />
      {own && own.of > 0 ? <Own own={own} /> : null}
      {usual ? <path className={css.usual} d={path(usual) ?? ''} /> : null}
      {holding ? <path className={css.holding} d={path(holding) ?? ''} /> : null}
      <path className={css.handling} d={path(handling) ?? ''} />
    </svg>
  );
}

/** The more ink left of 8 of 10, the more raises come too early. */
function Early({ points, span }: { points: readonly CurvePoint[]; span: Span }) {
  return (
    <>
      <defs>
        <pattern id="early-ink" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className={css.earlyPaper} width="6" height="6" />
          <line className={css.earlyInk} x1="0" x2="0" y1="0" y2="6" />
        </pattern>
      </defs>
      <path d={under(span)(points) ?? ''} fill="url(#early-ink)" />
      <line className={css.bound} x1={x(TOO_EARLY)} x2={x(TOO_EARLY)} y1={EDGE.top - 16} y2={FLOOR} />
      <text className={css.label} x={x(TOO_EARLY) - 6} y={EDGE.top - 8} textAnchor="end">
        {t('too early to raise')}
      </text>
    </>
  );
}

function Axes() {
  return (
    <g>
      <text className={css.label} x="0" y="14">
        {t('raised, of 100 visits')}
      </text>
      {[0, 0.5, 1].map((chance) => (
        <g key={chance}>
          <line className={css.grid} x1={EDGE.left} x2={WIDTH - EDGE.right} y1={y(chance)} y2={y(chance)} />
          <text className={css.label} x={EDGE.left - 8} y={y(chance) + 5} textAnchor="end">
            {100 * chance}
          </text>
        </g>
      ))}
      {[5, 6, 7, 8, 9, 10].map((kept) => (
        <text key={kept} className={css.label} x={x(kept / 10)} y={FLOOR + 30} textAnchor="middle">
          {kept}
        </text>
      ))}
      <text className={css.label} x={(EDGE.left + WIDTH - EDGE.right) / 2} y={HEIGHT - 8} textAnchor="middle">
        {t('truly kept of 10')}
      </text>
    </g>
  );
}

/** The dog's own interval lies on the axis; below five trials there is a dot and no interval. */
function Own({ own }: { own: OwnTrials }) {
  const interval = ownInterval(own);
  const onAxis = (p: number) => x(Math.min(1, Math.max(LEAST, p)));
  const share = own.kept / own.of;
  return (
    <g className={css.own}>
      {interval ? (
        <>
          <rect
            className={css.ownBand}
            x={onAxis(interval.lower)}
            width={onAxis(interval.upper) - onAxis(interval.lower)}
            y={EDGE.top}
            height={FLOOR - EDGE.top}
          />
          <path d={`M${onAxis(interval.lower)} ${FLOOR + 4}v8m0-4H${onAxis(interval.upper)}m0-4v8`} />
        </>
      ) : null}
      {share >= LEAST ? <circle cx={onAxis(share)} cy={FLOOR + 8} r="5" /> : null}
    </g>
  );
}
