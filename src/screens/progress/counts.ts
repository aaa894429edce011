/** Says how many there are of what progress counts. */
import { t } from '../../core/language.ts';

export const sayTrialCount = (n: number): string => (n === 1 ? t('1 trial') : t('{n} trials', { n }));
export const saySessions = (n: number): string => (n === 1 ? t('1 session') : t('{n} sessions', { n }));
export const sayHolds = (n: number): string => (n === 1 ? t('1 hold') : t('{n} holds', { n }));
export const sayLifts = (n: number): string => (n === 1 ? t('1 lift') : t('{n} lifts', { n }));
export const sayPlaces = (n: number): string => (n === 1 ? t('1 place') : t('{n} places', { n }));
