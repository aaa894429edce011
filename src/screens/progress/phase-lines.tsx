/** Draws where something else began to be measured, with its name, and the dates along the foot. */
import css from './ink.module.css';
import { LABEL_ROW_PX, type PhaseLine, type Slots } from './slots.ts';

export function PhaseLines({ lines, topPx, bottomPx }: { lines: readonly PhaseLine[]; topPx: number; bottomPx: number }) {
  return lines.map(({ xPx, label, row, side, isGap }, nth) => (
    <g key={xPx}>
      {nth === 0 ? null : (
        <path
          className={isGap ? css.gap : css.phase}
          d={`M${xPx},${row === null ? topPx : row * LABEL_ROW_PX + 2}V${bottomPx}`}
        />
      )}
      {row === null ? null : (
        <text
          className={css.label}
          x={side === 'after' ? xPx + 5 : xPx - 5}
          y={row * LABEL_ROW_PX + 14}
          textAnchor={side === 'after' ? undefined : 'end'}
        >
          {label}
        </text>
      )}
    </g>
  ));
}

export function Dates({ dates, yPx }: { dates: Slots['dates']; yPx: number }) {
  return dates.map(({ xPx, text }) => (
    <text key={xPx} className={css.tick} x={xPx - 8} y={yPx}>
      {text}
    </text>
  ));
}
