/** Shows a chart's rows as a table. */
import { useDeferredValue } from 'react';
import { t } from '../../core/language.ts';
import { Wide } from '../parts/sideways.tsx';
import css from './chart.module.css';
import type { Sheet } from './sheets.ts';

interface SheetTableProps {
  readonly sheet: Sheet;
  readonly caption: string;
}

/** Most stand folded: they are drawn after the picture. */
export function SheetTable({ sheet, caption }: SheetTableProps) {
  const late = useDeferredValue(sheet, null);
  return late ? <Rows sheet={late} caption={caption} /> : null;
}

function Rows({ sheet: { head, rows }, caption }: SheetTableProps) {
  const isNumber = head.map((_, column) => rows.every((row) => row[column] === null || typeof row[column] === 'number'));
  return (
    <Wide className={css.sheet} label={t('{title}, as a table', { title: caption })}>
      <table>
        <caption className="hidden-but-read">{caption}</caption>
        <thead>
          <tr>
            {head.map((name, column) => (
              <th key={name} scope="col" className={isNumber[column] ? css.number : undefined}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, nth) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name but their place.
            <tr key={nth}>
              {row.map((cell, column) =>
                column === 0 ? (
                  <th key={head[column]} scope="row" className={isNumber[column] ? css.number : undefined}>
                    {cell}
                  </th>
                ) : (
                  <td key={head[column]} className={isNumber[column] ? css.number : undefined}>
                    {cell ?? '–'}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}
