/** Which rule judges the steps: choose it, hear it in one sentence, and see how fast it is. */
import { useId, useState } from 'react';
import { fixed, t } from '../../core/language.ts';
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
import { sayFinding, sayLadder, sayOwn, sayTrials, spanWords, TOO_MANY } from './rule-words.ts';

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
      <h2>{t('When the step goes up')}</h2>
      <Choice rule={rule} onChoose={onChoose} />
      {rule.kind === 'k-of-m' ? <OwnNumbers rule={rule} onChoose={onChoose} /> : null}
      {refusal === '' ? null : (
        <p role="alert" className={css.refusal}>
          {refusal}
        </p>
      )}
      <p>{sayRule(rule)}</p>
      <Speed rule={rule} own={own} />
      <Why rule={rule} />
    </section>
  );
}

/** How fast the chosen rule is: one sentence for whoever begins, the rest for whoever asks. */
function Speed({ rule, own }: Pick<Props, 'rule' | 'own'>) {
  const figures = figuresOf(rule);
  const finding = sayFinding(rule, figures);
  return (
    <>
      {own ? <p>{sayOwn(own)}</p> : null}
      <figure className={css.figure}>
        <figcaption className={css.finding}>{finding}</figcaption>
        <details>
          <summary>{t('How fast it is, drawn and in figures')}</summary>
          <div className="stack">
            <Exact {...{ rule, own, figures, finding }} />
          </div>
        </details>
      </figure>
    </>
  );
}

/** What the exact chain says of the rule: drawn, in sentences, as a table, and beside the other rules. */
function Exact({ rule, own, figures, finding }: Pick<Props, 'rule' | 'own'> & { figures: RuleFigures; finding: string }) {
  const [span, setSpan] = useState<Span>('all');
  const usual = rule.kind === 'steady' ? null : figuresOf(STEADY).handling.curve;
  return (
    <>
      <Spans span={span} onChoose={setSpan} />
      <RuleChart {...{ figures, span, usual, own, finding }} />
      <Lines figures={figures} usual={usual !== null} />
      <p>{sayTrials(figures)}</p>
      <p>{sayLadder(figures)}</p>
      <RuleLadder figures={figures} said={sayLadder(figures)} />
      <RuleTables figures={figures} />
      <SideBySide rule={rule} />
    </>
  );
}

function Spans({ span, onChoose }: { span: Span; onChoose: (span: Span) => void }) {
  return (
    <fieldset className={css.spans}>
      <legend>{t('Raised')}</legend>
      {SPANS.map((each) => (
        <label key={each} className={css.choice}>
          <input type="radio" name="span" checked={each === span} onChange={() => onChoose(each)} />
          {spanWords(each)}
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
      <label htmlFor={id}>{t('Rule')}</label>
      <select
        id={id}
        value={known ? ruleKey(rule) : OWN_KEY}
        onChange={(event) => {
          onChoose(CHOICES.find((choice) => ruleKey(choice) === event.target.value) ?? OWN);
        }}
      >
        {CHOICES.map((choice) => (
          <option key={ruleKey(choice)} value={ruleKey(choice)}>
            {sayChoice(choice)}
          </option>
        ))}
        <option value={OWN_KEY}>
          {known ? t('k of m, in your own numbers') : t('Your own: {rule}', { rule: nameRule(rule) })}
        </option>
        <option disabled>{t('Percentile: not for marked holds (below: why)')}</option>
      </select>
    </div>
  );
}

function sayChoice(choice: SessionRule): string {
  const rule = nameRule(choice);
  if (sameRule(choice, STEADY)) return t('{rule} (usual)', { rule });
  return speedOf(choice).at7 >= TOO_MANY ? t('{rule}: too fast', { rule }) : rule;
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
        {t('Kept')}
        <input
          type="number"
          min={1}
          max={rule.of}
          value={rule.kept}
          onChange={(event) => change({ kept: event.target.valueAsNumber })}
        />
      </label>
      <label className={css.number}>
        {t('of#kept _ of _')}
        <input
          type="number"
          min={1}
          max={most}
          value={rule.of}
          onChange={(event) => change({ of: event.target.valueAsNumber })}
        />
      </label>
      <label className={css.number}>
        {t('counted')}
        <select
          value={rule.window}
          onChange={(event) => change({ window: event.target.value === 'blocks' ? 'blocks' : 'sliding' })}
        >
          <option value="blocks">{t('in blocks')}</option>
          <option value="sliding">{t('anywhere')}</option>
        </select>
      </label>
    </div>
  );
}

function Lines({ figures, usual }: { figures: RuleFigures; usual: boolean }) {
  return (
    <ul className={css.lines}>
      <li data-line="handling">{figures.holding ? t('handling') : t('holding still and handling')}</li>
      {figures.holding ? <li data-line="holding">{t('holding still')}</li> : null}
      {usual ? <li data-line="usual">{t('steady, for comparison')}</li> : null}
      <li data-line="early">{t('raised too early')}</li>
    </ul>
  );
}

function Why({ rule }: { rule: SessionRule }) {
  const evidence = evidenceFor(rule);
  return (
    <details>
      <summary>{t('How it counts, and what speaks for it')}</summary>
      <div className="stack">
        <p>{explainRule(rule)}</p>
        {evidence.length === 0 ? (
          <p>{t('Nobody has compared this rule on invented dogs. The chart is exact all the same.')}</p>
        ) : null}
        {evidence.map((each) => (
          <p key={each.from}>{sayEvidence(each)}</p>
        ))}
        {evidence.length === 0 ? null : <p>{t('Invented dogs rank rules; they say nothing about yours.')}</p>}
        <h3>{t('Percentile')}</h3>
        <p className="soft">{explainRule(USUAL_PERCENTILE)}</p>
        <PercentileTable />
      </div>
    </details>
  );
}

const EVIDENCE = {
  own: 'Of {dogs} invented dogs trained by this app {top} of 100 reach the top, after {reps} reps and {lifts} lifts on average; {early} of 100 raises come too early.',
  confirmed:
    'Of {dogs} other invented dogs {top} of 100 reach the top, after {reps} reps and {lifts} lifts on average; {early} of 100 raises come too early.',
  first:
    'Of {dogs} or more invented dogs of an earlier comparison {top} of 100 reach the top, after {reps} reps and {lifts} lifts on average; {early} of 100 raises come too early.',
} as const satisfies Record<Evidence['from'], string>;

function sayEvidence({ from, dogs, reachTop, reps, lifts, earlyRaises }: Evidence): string {
  const shares = { top: fixed(100 * reachTop, 1), early: fixed(100 * earlyRaises, 1) };
  return t(EVIDENCE[from], { dogs, reps, lifts, ...shares });
}
