/** Which rule judges the steps: choose it, hear it in one sentence, and see how fast it is. */
import { useId, useState } from 'react';
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
import { figuresOf, type OwnTrials, type RuleFigures, SPANS, type Span, speedOf } from './rule-figures.ts';
import { RuleLadder } from './rule-ladder.tsx';
import { PercentileTable, RuleTables, SideBySide } from './rule-table.tsx';
import { SPAN_WORDS, sayFinding, sayLadder, sayOwn, sayTrials, TOO_MANY } from './rule-words.ts';

interface Props {
  readonly rule: SessionRule;
  readonly own: OwnTrials | null;
  /** Why the latest choice was not made; empty: it was. */
  readonly refusal: string;
  readonly onChoose: (rule: SessionRule) => void;
}

export function RulePart({ rule, own, refusal, onChoose }: Props) {
  return (
    <section className={css.part}>
      <h2>When the step goes up</h2>
      <Choice rule={rule} onChoose={onChoose} />
      {rule.kind === 'k-of-m' ? <OwnNumbers rule={rule} onChoose={onChoose} /> : null}
      {refusal === '' ? null : (
        <p role="alert" className={css.refusal}>
          {refusal}
        </p>
      )}
      <p>{sayRule(rule)}</p>
      <Speed rule={rule} own={own} />
      <SideBySide rule={rule} />
      <Why rule={rule} />
    </section>
  );
}

/** What the exact chain says of the chosen rule: drawn, in sentences, and as a table. */
function Speed({ rule, own }: Pick<Props, 'rule' | 'own'>) {
  const [span, setSpan] = useState<Span>('all');
  const figures = figuresOf(rule);
  const finding = sayFinding(rule, figures);
  const usual = rule.kind === 'steady' ? null : figuresOf(STEADY).handling.curve;
  return (
    <>
      <figure className={css.figure}>
        <figcaption className={css.finding}>{finding}</figcaption>
        <Spans span={span} onChoose={setSpan} />
        <RuleChart {...{ figures, span, usual, own, finding }} />
        <Lines figures={figures} usual={usual !== null} />
      </figure>
      {own ? <p>{sayOwn(own)}</p> : null}
      <p>{sayTrials(figures)}</p>
      <p>{sayLadder(figures)}</p>
      <RuleLadder figures={figures} said={sayLadder(figures)} />
      <RuleTables figures={figures} />
    </>
  );
}

function Spans({ span, onChoose }: { span: Span; onChoose: (span: Span) => void }) {
  return (
    <fieldset className={css.spans}>
      <legend>Raised</legend>
      {SPANS.map((each) => (
        <label key={each} className={css.choice}>
          <input type="radio" name="span" checked={each === span} onChange={() => onChoose(each)} />
          {SPAN_WORDS[each]}
        </label>
      ))}
    </fieldset>
  );
}

/** Where one's own numbers begin. */
const OWN: KOfMRule = { kind: 'k-of-m', kept: 8, of: 10, window: 'sliding' };
const OWN_KEY = 'own';

function Choice({ rule, onChoose }: Pick<Props, 'rule' | 'onChoose'>) {
  const id = useId();
  const known = CHOICES.some((choice) => sameRule(choice, rule));
  return (
    <div className={css.field}>
      <label htmlFor={id}>Rule</label>
      <select
        id={id}
        value={known ? ruleKey(rule) : OWN_KEY}
        onChange={(event) => {
          onChoose(CHOICES.find((choice) => ruleKey(choice) === event.target.value) ?? OWN);
        }}
      >
        {CHOICES.map((choice) => (
          <option key={ruleKey(choice)} value={ruleKey(choice)}>
            {nameRule(choice)}
            {sameRule(choice, STEADY) ? ' (usual)' : ''}
            {speedOf(choice).at7 >= TOO_MANY ? ': too fast' : ''}
          </option>
        ))}
        <option value={OWN_KEY}>{known ? 'k of m, in your own numbers' : `Your own: ${nameRule(rule)}`}</option>
        <option disabled>Percentile: not for marked holds, why is said below</option>
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

function Lines({ figures, usual }: { figures: RuleFigures; usual: boolean }) {
  return (
    <ul className={css.lines}>
      <li data-line="handling">{figures.holding ? 'handling' : 'holding still and handling'}</li>
      {figures.holding ? <li data-line="holding">holding still</li> : null}
      {usual ? <li data-line="usual">steady, for comparison</li> : null}
      <li data-line="early">raised too early</li>
    </ul>
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
        <h3>Percentile</h3>
        <p className="soft">{explainRule(USUAL_PERCENTILE)}</p>
        <PercentileTable />
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
