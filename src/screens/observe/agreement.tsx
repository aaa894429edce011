/** Shows how well two observers agree: the finding, the trade's measures as a table, and each difference with its place. */
import { t } from '../../core/language.ts';
import type { Comparison } from '../../core/observe/compare.ts';
import type { Seconds } from '../../core/units.ts';
import { Wide } from '../parts/sideways.tsx';
import { wordName } from '../parts/word-names.ts';
import css from './observe.module.css';
import { measures, sayDifference, sayFinding, sayIntervals, sayOutcomes, sayPlace } from './say.ts';

interface AgreementProps {
  readonly comparison: Comparison;
  /** Null: there is no recording to look at. Takes a moment of the session, s. */
  readonly onJump: ((atS: Seconds) => void) | null;
}

export function Agreement({ comparison, onJump }: AgreementProps) {
  return (
    <section className="stack" aria-label={t('Agreement')}>
      <p className={css.finding}>{sayFinding(comparison)}</p>
      <p>{sayOutcomes(comparison)}</p>
      {comparison.outside === 0 ? null : (
        <p>{t('Not compared, because only one of you could see there: {n}.', { n: comparison.outside })}</p>
      )}
      <Differences {...{ comparison, onJump }} />
      <h3>{t('Every measure')}</h3>
      <Table comparison={comparison} />
      <p className="small soft">
        {sayIntervals(comparison)} {t('Under “all” a word counts only against the same word.')}{' '}
        {t('The trade usually asks for 80 of 100 or more, on a fifth to a third of all sessions.')}
      </p>
    </section>
  );
}

function Differences({ comparison: { disagreements }, onJump }: AgreementProps) {
  if (disagreements.length === 0) return <p>{t('No difference in any word.')}</p>;
  return (
    <>
      <h3>{t('Where you differ, {n}', { n: disagreements.length })}</h3>
      <ol className={css.differences}>
        {disagreements.map((difference) => (
          <li key={`${difference.kind} ${difference.word} ${difference.atS}`}>
            <span>
              <span className={css.time}>{sayPlace(difference.atS)}</span> {sayDifference(difference)}
            </span>
            {onJump ? (
              <button
                type="button"
                aria-label={t('Look at {place}', { place: sayPlace(difference.atS) })}
                onClick={() => onJump(difference.atS)}
              >
                {t('Look#at a place in the film')}
              </button>
            ) : null}
          </li>
        ))}
      </ol>
    </>
  );
}

function Table({ comparison: { byWord, all } }: { comparison: Comparison }) {
  if (!all) return null;
  return (
    <Wide className={css.wrap} label={t('Measures of agreement')}>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('Measure')}</th>
            <th scope="col">{t('all')}</th>
            {byWord.map(({ word }) => (
              <th key={word} scope="col">
                {wordName(word)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {measures().map(([name, say]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className={css.sum}>{say(all)}</td>
              {byWord.map((ofWord) => (
                <td key={ofWord.word}>{say(ofWord)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}
