/** The picture of a QR code: dark on white in every theme, with the quiet zone that cameras need. */
import type { Modules } from './qr-modules.ts';

/** Light modules around it (ISO/IEC 18004, M). */
const QUIET = 4;

export function CodePicture({ modules: { dark }, label }: { modules: Modules; label: string }) {
  const size = dark.length + 2 * QUIET;
  return (
    <svg viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label} shapeRendering="crispEdges">
      <rect width={size} height={size} fill="#fff" />
      <path d={pathOf(dark)} fill="#000" />
    </svg>
  );
}

/** One stroke for each run of dark modules in a row. */
function pathOf(dark: Modules['dark']): string {
  const runs: string[] = [];
  for (const [row, line] of dark.entries())
    for (let column = 0; column < line.length; ) {
      const end = line.indexOf(false, column);
      const until = end < 0 ? line.length : end;
      if (until > column) runs.push(`M${column + QUIET} ${row + QUIET}h${until - column}v1h${column - until}z`);
      column = until + 1;
    }
  return runs.join('');
}
