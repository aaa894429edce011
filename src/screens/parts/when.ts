/** Says moments in the reader's own language and habit. */
import type { IsoTime } from '../../core/units.ts';

/** "Mon 2 March, 18:04". */
export function sayWhen(at: IsoTime): string {
  const moment = new Date(at);
  if (Number.isNaN(moment.getTime())) return at;
  return new Intl.DateTimeFormat(undefined, {
    weekday: 'short',
    day: 'numeric',
    month: 'long',
    hour: '2-digit',
    minute: '2-digit',
  }).format(moment);
}
