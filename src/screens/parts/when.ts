/**
 * Says moments and days as the language of the app writes them, by the wall clock where they were written down, wherever they are read:
 * a session at ten past six stays one, also for a trainer three hours east. So the offset is cut off, not applied.
 */
import { localeSpoken } from '../../core/language.ts';
import type { IsoTime } from '../../core/units.ts';

/** "Mon 2 March, 18:04". */
export function sayWhen(at: IsoTime): string {
  return said(at, { weekday: 'short', day: 'numeric', month: 'long', hour: '2-digit', minute: '2-digit' });
}

/** "Monday 2 March 2026 at 18:04". */
export function sayWhenInFull(at: IsoTime): string {
  return said(at, { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric', hour: '2-digit', minute: '2-digit' });
}

/** "2 March 2026". */
export function sayDay(at: IsoTime): string {
  return said(at, { day: 'numeric', month: 'long', year: 'numeric' });
}

/** What is no moment stands as it was written. */
function said(at: IsoTime, style: Intl.DateTimeFormatOptions): string {
  const moment = new Date(`${at.slice(0, 'yyyy-mm-ddThh:mm:ss'.length)}Z`);
  if (Number.isNaN(moment.getTime())) return at;
  return new Intl.DateTimeFormat(localeSpoken(), { ...style, timeZone: 'UTC' }).format(moment);
}
