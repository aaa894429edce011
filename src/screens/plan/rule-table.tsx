/** The figures of rules as tables: one rule over every true success, and the rules side by side. */
import { CHOICES, type Evidence, evidenceFor, nameRule, ruleKey, type SessionRule, sameRule } from '../../core/rule.ts';
import { percentileRank } from '../../core/statistics/percentile.ts';
import type { Share } from '../../core/units.ts';
import css from './plan.module.css';
import { type KindFigures, type RuleFigures, speedOf } from './rule-figures.ts';
import { mean, TOO_MANY } from './rule-words.ts';

/** The chosen rule in figures, by kind of step. */
export function RuleTables({ figures: { handling, holding } }: { figures: RuleFigures }) {
  return (
    <details>
      <summary>The same as a table</summary>
      <KindTable title={holding ? 'Handling' : 'Holding still and handling'} figures={handling} />
      {holding ? <KindTable title="Holding still" figures={holding} /> : null}
      <p className="soft small">
        Exact, by trying all outcomes. “To raise” and “to return”: mean trials of the visits that end so.
      </p>
    </details>
  );
}

const hundred = (chance: number): number => Math.round(100 * chance);

function KindTable({ title, figures }: { title: string; figures: KindFigures }) {
  return (
    <table className={css.table}>
      <caption>{title}: raised, of 100 visits</caption>
      <thead>
        <tr>
          <th scope="col">truly kept</th>
          <th scope="col">in 10 trials</th>
          <th scope="col">in 20</th>
          <th scope="col">ever</th>
          <th scope="col">trials to raise</th>
          <th scope="col">to return</th>
        </tr>
      </thead>
      <tbody>
        {figures.rows.map(({ p, raised, trialsToRaise, trialsToReturn }) => (
          <tr key={p}>
            <th scope="row">{+(10 * p).toFixed(1)} of 10</th>
            <td>{hundred(raised['10'])}</td>
            <td>{hundred(raised['20'])}</td>
            <td>{hundred(raised.all)}</td>
            <td>{mean(trialsToRaise)}</td>
            <td>{mean(trialsToReturn)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Every rule on offer in one row, so that one sees at choosing time which is too fast. */
export function SideBySide({ rule }: { rule: SessionRule }) {
  const known = CHOICES.some((choice) => sameRule(choice, rule));
  return (
    <div className={css.wide}>
      <table className={css.table}>
        <caption>The rules side by side</caption>
        <thead>
          <tr>
            <th scope="col">rule</th>
            <th scope="col">raised at 7 of 10</th>
            <th scope="col">at 9 of 10</th>
            <th scope="col">lifts a dog</th>
            <th scope="col">early raises</th>
          </tr>
        </thead>
        <tbody>
          {(known ? CHOICES : [...CHOICES, rule]).map((each) => (
            <RuleLine key={ruleKey(each)} rule={each} isChosen={sameRule(each, rule)} />
          ))}
        </tbody>
      </table>
      <p className="soft small">
        Raised: of 100 visits to a handling step by a dog that truly keeps so many, exact. Lifts up to the goal, and raises of 100
        that came too early: on 2000 invented dogs trained by this app; they rank rules and say nothing about yours.
      </p>
    </div>
  );
}

function RuleLine({ rule, isChosen }: { rule: SessionRule; isChosen: boolean }) {
  const { at7, at9 } = speedOf(rule);
  const own = evidenceFor(rule).find(({ from }) => from === 'own');
  const figure = (say: (evidence: Evidence) => string) => (own ? say(own) : '–');
  return (
    <tr aria-current={isChosen || undefined} data-fast={at7 >= TOO_MANY || undefined}>
      <th scope="row">{nameRule(rule)}</th>
      <td>
        {hundred(at7)}
        {at7 >= TOO_MANY ? ' too fast' : ''}
      </td>
      <td>{hundred(at9)}</td>
      <td>{figure(({ lifts }) => lifts.toFixed(0))}</td>
      <td>{figure(({ earlyRaises }) => (100 * earlyRaises).toFixed(1))}</td>
    </tr>
  );
}

/** How many of the last holds are ranked, and which share of them is to be paid. */
const LOOKED_BACK = [5, 10, 20];
const PAID: readonly Share[] = [0.5, 0.8];

/** k = (m + 1)(1 - w): which of the last holds, counted from the shortest, the next one would have to beat. */
export function PercentileTable() {
  return (
    <table className={css.table}>
      <caption>Which hold the next one would have to beat, counted from the shortest</caption>
      <thead>
        <tr>
          <th scope="col">of the last</th>
          {PAID.map((share) => (
            <th key={share} scope="col">
              to pay {10 * share} of 10
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {LOOKED_BACK.map((m) => (
          <tr key={m}>
            <th scope="row">{m} holds</th>
            {PAID.map((share) => (
              <td key={share}>{sayRank(percentileRank(m, share))}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A rank between two takes the lower, which is easier. */
function sayRank(rank: number): string {
  return Number.isInteger(rank) ? `${rank}.` : `${Math.floor(rank)}. (k = ${rank.toFixed(1)})`;
}
