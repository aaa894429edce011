/** Writes rows as CSV (RFC 4180) in which no cell can become a formula. */

/** Spreadsheets run a cell that begins so, some the wide signs too: it gets an apostrophe in front. Numbers are ours and stay. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;

export function csvOf(head: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  return [head, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const safe = FORMULA.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
