/** Says moments and days as the language of the app writes them, by the reader's own clock. */
import { localeSpoken } from '../../core/language.ts';
import type { IsoTime } from '../../core/units.ts';

/** "Mon 2 March, 18:04". */
export function sayWhen(at: IsoTime): string {
  return said(at, { weekday: 'short', day: 'numeric', month: 'long', hour: '2-digit', minute: '2-digit' });
}

/** "2 March 2026". */
export function sayDay(at: IsoTime): string {
  return said(at, { day: 'numeric', month: 'long', year: 'numeric' });
}

/** What is no moment stands as it was written. */
function said(at: IsoTime, style: Intl.DateTimeFormatOptions): string {
  const moment = new Date(at);
  return Number.isNaN(moment.getTime()) ? at : new Intl.DateTimeFormat(localeSpoken(), style).format(moment);
}
