/** Shows how well two observers agree: the finding, the trade's measures as a table, and each difference with its place. */
import type { Comparison } from '../../core/observe/compare.ts';
import type { Seconds } from '../../core/units.ts';
import css from './observe.module.css';
import { MEASURES, sayDifference, sayFinding, sayIntervals, sayOutcomes, sayPlace } from './say.ts';

interface AgreementProps {
  readonly comparison: Comparison;
  /** Null: there is no recording to look at. Takes a moment of the session, s. */
  readonly onJump: ((atS: Seconds) => void) | null;
}

export function Agreement({ comparison, onJump }: AgreementProps) {
  return (
    <section className="stack" aria-label="Agreement">
      <p className={css.finding}>{sayFinding(comparison)}</p>
      <p>{sayOutcomes(comparison)}</p>
      {comparison.outside === 0 ? null : <p>Not compared, because only one of you could see there: {comparison.outside}.</p>}
      <Differences {...{ comparison, onJump }} />
      <h3>Every measure</h3>
      <Table comparison={comparison} />
      <p className="small soft">
        {sayIntervals(comparison)} Under “all” a word counts only against the same word. The trade usually asks for 80 of 100 or
        more, on a fifth to a third of all sessions.
      </p>
    </section>
  );
}

function Differences({ comparison: { disagreements }, onJump }: AgreementProps) {
  if (disagreements.length === 0) return <p>No difference in any word.</p>;
  return (
    <>
      <h3>Where you differ, {disagreements.length}</h3>
      <ol className={css.differences}>
        {disagreements.map((difference) => (
          <li key={`${difference.kind} ${difference.word} ${difference.atS}`}>
            <span>
              <span className={css.time}>{sayPlace(difference.atS)}</span> {sayDifference(difference)}
            </span>
            {onJump ? (
              <button type="button" aria-label={`Look at ${sayPlace(difference.atS)}`} onClick={() => onJump(difference.atS)}>
                Look
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
    // biome-ignore lint/a11y/noNoninteractiveTabindex: on a phone the table is wider than the screen, and keys must move it
    <section className={css.wrap} aria-label="Measures of agreement" tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">Measure</th>
            <th scope="col">all</th>
            {byWord.map(({ word }) => (
              <th key={word} scope="col">
                {word}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {MEASURES.map(([name, say]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className={css.sum}>{say(all)}</td>
              {byWord.map((measures) => (
                <td key={measures.word}>{say(measures)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
