/** The grid of places and people: a table that is its own picture. Shapes say it, words repeat it. */
import { useId } from 'react';
import { t } from '../../core/language.ts';
import type { Cell, Grid, GridRow } from '../../core/progress/mastery.ts';
import { Wide } from '../parts/sideways.tsx';
import css from './grid.module.css';
import { SaveChart } from './save-chart.tsx';
import { gridSheet } from './sheets.ts';
import { personName, placeName, sayCell, sayStanding } from './words.ts';

export function PlacesAndPeople({ grid, name }: { grid: Grid; name: string }) {
  const title = useId();
  return (
    <section className={css.part} aria-labelledby={title}>
      <h2 id={title}>{t('Places and people')}</h2>
      <p>{findGrid(grid)}</p>
      <Wide label={t('Steps by places and people')} isPinned>
        <table className={css.grid}>
          <caption className="hidden-but-read">{t('Where and with whom each step was tried, and where it is kept')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('step')}</th>
              {grid.columns.map(({ place, handler }) => (
                <th key={`${place}\n${handler}`} scope="col" className={css.column}>
                  {placeName(place)}
                  <br />
                  {personName(handler)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {grid.rows.map((row) => (
              <Row key={row.stepId} row={row} />
            ))}
          </tbody>
        </table>
      </Wide>
      <ul className={css.key} aria-label={t('How to read the grid')}>
        <li>
          <Shape kind="met" /> {t('9 in 10 in the latest session there')}
        </li>
        <li>
          <Shape kind="tried" /> {t('tried')}
        </li>
        <li>
          <Shape kind="never" /> {t('never tried')}
        </li>
      </ul>
      <p className="soft small">
        {t('Kept for good: 9 in 10 in three sessions running, on two days at least, and once in another place.')}{' '}
        {t('A session with fewer than 5 trials on the step proves nothing either way.')}
      </p>
      <SaveChart name={name} sheet={gridSheet(grid)} />
    </section>
  );
}

function Row({ row }: { row: GridRow }) {
  return (
    <tr>
      <th scope="row" className={css.step}>
        {row.title}
        <br />
        <span className={row.standing.kind === 'kept-for-good' ? css.good : 'soft'}>{sayStanding(row.standing)}</span>
      </th>
      {row.cells.map((cell, nth) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its column.
        <td key={nth} className={css.cell}>
          <span className={css.mark}>
            <Shape kind={shapeOf(cell)} />
          </span>
          {cell.kind === 'never' ? (
            <span className="hidden-but-read">{sayCell(cell)}</span>
          ) : (
            <span className={css.counts}>{sayCell(cell)}</span>
          )}
        </td>
      ))}
    </tr>
  );
}

type ShapeKind = 'met' | 'tried' | 'never';

function shapeOf(cell: Cell): ShapeKind {
  if (cell.kind === 'never') return 'never';
  return cell.isMet ? 'met' : 'tried';
}

/** As in the one picture: a solid bar is kept, an outline is not yet, a dot is nothing. */
function Shape({ kind }: { kind: ShapeKind }) {
  return (
    <svg className={css.shape} width="2rem" height="1rem" viewBox="0 0 32 16" aria-hidden="true">
      {kind === 'never' ? (
        <circle className={css.never} cx={16} cy={8} r={2} />
      ) : (
        <rect className={css[kind]} x={3} y={3} width={26} height={10} />
      )}
    </svg>
  );
}

export function findGrid({ rows, columns }: Grid): string {
  if (columns.length === 0) return t('Nothing was tried yet.');
  const good = rows.filter(({ standing }) => standing.kind === 'kept-for-good').length;
  const never = rows.flatMap(({ cells }) => cells).filter(({ kind }) => kind === 'never').length;
  const [of, squares] = [rows.length, rows.length * columns.length];
  return t('{good} of {of} steps kept for good. {never} of {squares} squares were never tried.', { good, of, never, squares });
}
