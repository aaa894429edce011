/** How the recording's clock is laid on the session's: by the best fit, by the first hold, or by hand. */
import { fixed, t } from '../../core/language.ts';
import type { Alignment } from '../../core/observe/align.ts';
import css from './observe.module.css';
import type { LineUp as Wish } from './scoring.ts';

interface LineUpProps {
  readonly wish: Wish;
  readonly found: Alignment | null;
  readonly onWish: (wish: Wish) => void;
}

const WAYS = [
  ['best', 'the best fit'],
  ['first-hold', 'the first hold of both'],
  ['by-hand', 'by hand'],
] as const;

/** One press of − or +, s. */
const NUDGE_S = 0.5;

export function LineUp({ wish, found, onWish }: LineUpProps) {
  const offsetS = found?.offsetS ?? 0;
  const nudge = (byS: number) => onWish({ how: 'by-hand', offsetS: Math.round(10 * (offsetS + byS)) / 10 });
  return (
    <section className="stack" aria-label={t('Lining up')}>
      <label>
        {t('Lined up by')}{' '}
        <select
          value={wish.how}
          onChange={({ target: { value } }) =>
            onWish(value === 'by-hand' ? { how: value, offsetS } : { how: value as 'best' | 'first-hold' })
          }
        >
          {WAYS.map(([how, says]) => (
            <option key={how} value={how}>
              {t(says)}
            </option>
          ))}
        </select>
      </label>
      {found ? (
        <div className={css.offset}>
          <span>{sayOffset(found)}</span>
          <button type="button" aria-label={t('{s} s earlier', { s: NUDGE_S })} onClick={() => nudge(-NUDGE_S)}>
            −
          </button>
          <button type="button" aria-label={t('{s} s later', { s: NUDGE_S })} onClick={() => nudge(NUDGE_S)}>
            +
          </button>
        </div>
      ) : (
        <p role="alert">
          {t('You two have no such word in common. Line up by hand, or note a hold that the practice noted too.')}
        </p>
      )}
    </section>
  );
}

/** Fewer than this of all words lined up: another session's recording does as well (tried, no source). */
const FEW_SHARE = 0.6;

function sayOffset({ offsetS, met, first, second }: Alignment): string {
  const counts = { s: fixed(Math.abs(offsetS), 1), met, first, second };
  const said =
    offsetS < 0
      ? t('The recording began {s} s before the session: {met} words meet, of {first} and {second}.', counts)
      : t('The recording began {s} s into the session: {met} words meet, of {first} and {second}.', counts);
  const isFew = met < FEW_SHARE * Math.max(first, second);
  return isFew ? `${said} ${t('Few words meet: is this the recording of this session?')}` : said;
}
