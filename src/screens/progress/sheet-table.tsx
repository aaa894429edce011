/** Shows a chart's rows as a table. */
import css from './chart.module.css';
import type { Sheet } from './sheets.ts';

export function SheetTable({ sheet: { head, rows }, caption }: { sheet: Sheet; caption: string }) {
  const isNumber = head.map((_, column) => rows.every((row) => row[column] === null || typeof row[column] === 'number'));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what is scrolled must be reached by keys.
    <section className={css.sheet} tabIndex={0} aria-label={`${caption}, as a table`}>
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
    </section>
  );
}
