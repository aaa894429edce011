/** The list of what is to be done: how ready the dog is for each, how long it takes, and its place in the order. */
import type { ExamItem } from '../../core/exam/exam.ts';
import type { Judged } from '../../core/exam/rehearsal.ts';
import { t } from '../../core/language.ts';
import { StandingShape } from '../card/bars.tsx';
import { sayArea } from '../card/words.ts';
import css from './exam.module.css';
import { readinessWord, sayReadiness } from './words.ts';

interface Props {
  readonly judged: readonly Judged[];
  readonly today: number;
  readonly onChange: (items: readonly ExamItem[]) => void;
}

const SHAPES = { ready: 'kept', nearly: 'not-yet', begun: 'not-yet', never: 'never' } as const;

export function Items({ judged, today, onChange }: Props) {
  const items = judged.map(({ item }) => item);
  const move = (at: number, by: 1 | -1) => {
    const item = items[at];
    if (item) onChange(items.toSpliced(at, 1).toSpliced(at + by, 0, item));
  };
  return (
    <ol className={css.items}>
      {judged.map(({ item, readiness }, at) => (
        <li key={item.id}>
          <div>
            <h3>{item.what}</h3>
            <p>
              <StandingShape kind={SHAPES[readiness.kind]} /> <strong>{readinessWord(readiness.kind)}</strong>{' '}
              <span className="soft">
                {sayArea(item.area)} · {t('{s} s', { s: item.forS })}
              </span>
            </p>
            <p className="soft">{sayReadiness(readiness, today)}</p>
          </div>
          <div className="row">
            <button
              type="button"
              disabled={at === 0}
              aria-label={t('Earlier: {what}', { what: item.what })}
              onClick={() => move(at, -1)}
            >
              ↑
            </button>
            <button
              type="button"
              disabled={at === items.length - 1}
              aria-label={t('Later: {what}', { what: item.what })}
              onClick={() => move(at, 1)}
            >
              ↓
            </button>
            <button
              type="button"
              aria-label={t('Take off the list: {what}', { what: item.what })}
              onClick={() => onChange(items.toSpliced(at, 1))}
            >
              {t('Take off')}
            </button>
          </div>
        </li>
      ))}
    </ol>
  );
}
