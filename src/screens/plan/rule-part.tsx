/** Which rule judges the steps: choose it, hear it in one sentence, and see how fast it is. */
import { useId } from 'react';
import {
  CHOICES,
  type Evidence,
  evidenceFor,
  explainRule,
  type KOfMRule,
  nameRule,
  ruleKey,
  type SessionRule,
  STEADY,
  sameRule,
  sayRule,
  USUAL_PERCENTILE,
} from '../../core/rule.ts';
import css from './plan.module.css';
import { RuleChart } from './rule-chart.tsx';
import { curvesOf, type OwnTrials, type RuleCurves, sayChance, sayFinding, sayOwn } from './rule-curve.ts';

interface Props {
  readonly rule: SessionRule;
  readonly own: OwnTrials | null;
  readonly onChoose: (rule: SessionRule) => void;
}

export function RulePart({ rule, own, onChoose }: Props) {
  const curves = curvesOf(rule);
  const finding = sayFinding(rule, curves);
  const usual = rule.kind === 'steady' ? null : curvesOf(STEADY).handling;
  return (
    <section className={css.part}>
      <h2>When the step goes up</h2>
      <Choice rule={rule} onChoose={onChoose} />
      {rule.kind === 'k-of-m' ? <OwnNumbers rule={rule} onChoose={onChoose} /> : null}
      <p>{sayRule(rule)}</p>
      <figure className={css.figure}>
        <figcaption className={css.finding}>{finding}</figcaption>
        <RuleChart {...{ curves, usual, own, finding }} />
        <Lines curves={curves} usual={usual !== null} />
      </figure>
      {own ? <p>{sayOwn(own)}</p> : null}
      <RuleTable curves={curves} />
      <Why rule={rule} />
    </section>
  );
}

function Choice({ rule, onChoose }: Pick<Props, 'rule' | 'onChoose'>) {
  const id = useId();
  const known = CHOICES.some((choice) => sameRule(choice, rule));
  const choices = known ? CHOICES : [...CHOICES, rule];
  return (
    <div className={css.field}>
      <label htmlFor={id}>Rule</label>
      <select
        id={id}
        value={ruleKey(rule)}
        onChange={(event) => {
          const chosen = choices.find((choice) => ruleKey(choice) === event.target.value);
          if (chosen) onChoose(chosen);
        }}
      >
        {choices.map((choice) => (
          <option key={ruleKey(choice)} value={ruleKey(choice)}>
            {nameRule(choice)}
            {sameRule(choice, STEADY) ? ' (usual)' : ''}
          </option>
        ))}
      </select>
    </div>
  );
}

function OwnNumbers({ rule, onChoose }: { rule: KOfMRule; onChoose: Props['onChoose'] }) {
  const most = rule.window === 'sliding' ? 10 : 20;
  const change = (part: Partial<KOfMRule>) => {
    const of = Math.min(part.of ?? rule.of, (part.window ?? rule.window) === 'sliding' ? 10 : 20);
    const kept = Math.min(part.kept ?? rule.kept, of);
    if (of >= 1 && kept >= 1) onChoose({ ...rule, ...part, kept, of });
  };
  return (
    <div className="row">
      <label className={css.number}>
        Kept
        <input
          type="number"
          min={1}
          max={rule.of}
          value={rule.kept}
          onChange={(event) => change({ kept: event.target.valueAsNumber })}
        />
      </label>
      <label className={css.number}>
        of
        <input
          type="number"
          min={1}
          max={most}
          value={rule.of}
          onChange={(event) => change({ of: event.target.valueAsNumber })}
        />
      </label>
      <label className={css.number}>
        counted
        <select
          value={rule.window}
          onChange={(event) => change({ window: event.target.value === 'blocks' ? 'blocks' : 'sliding' })}
        >
          <option value="blocks">in blocks</option>
          <option value="sliding">anywhere</option>
        </select>
      </label>
    </div>
  );
}

function Lines({ curves, usual }: { curves: RuleCurves; usual: boolean }) {
  return (
    <ul className={css.lines}>
      <li data-line="handling">{curves.holding ? 'handling' : 'holding still and handling'}</li>
      {curves.holding ? <li data-line="holding">holding still</li> : null}
      {usual ? <li data-line="usual">steady, for comparison</li> : null}
      <li data-line="early">raised too early</li>
    </ul>
  );
}

function RuleTable({ curves }: { curves: RuleCurves }) {
  return (
    <details>
      <summary>The same as a table</summary>
      <table className={css.table}>
        <thead>
          <tr>
            <th scope="col">truly kept</th>
            <th scope="col">holding still: raised</th>
            <th scope="col">handling: raised</th>
            <th scope="col">trials a visit</th>
          </tr>
        </thead>
        <tbody>
          {curves.rows.map(({ p, holding, handling, trials }) => (
            <tr key={p}>
              <th scope="row">{+(10 * p).toFixed(1)} of 10</th>
              <td>{sayChance(holding)}</td>
              <td>{sayChance(handling)}</td>
              <td>{trials.toFixed(1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

function Why({ rule }: { rule: SessionRule }) {
  const evidence = evidenceFor(rule);
  return (
    <details>
      <summary>How it counts, and what speaks for it</summary>
      <div className="stack">
        <p>{explainRule(rule)}</p>
        {evidence.length === 0 ? <p>Nobody has compared this rule on invented dogs. The chart is exact all the same.</p> : null}
        {evidence.map((each) => (
          <p key={each.from}>{sayEvidence(each)}</p>
        ))}
        {evidence.length === 0 ? null : <p>Invented dogs rank rules; they say nothing about yours.</p>}
        <p className="soft">{explainRule(USUAL_PERCENTILE)}</p>
      </div>
    </details>
  );
}

const WHOSE: Readonly<Record<Evidence['from'], string>> = {
  own: 'invented dogs trained by this app',
  confirmed: 'other invented dogs',
  first: 'or more invented dogs of an earlier comparison',
};

function sayEvidence({ from, dogs, reachTop, reps, lifts, earlyRaises }: Evidence): string {
  const [top, early] = [reachTop, earlyRaises].map((share) => (100 * share).toFixed(1));
  return `Of ${dogs} ${WHOSE[from]} ${top} of 100 reach the top, after ${reps} reps and ${lifts} lifts on average; ${early} of 100 raises come too early.`;
}
