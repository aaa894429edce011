/** The figures of rules as tables: one rule over every true success, and the rules side by side. */
import { fixed, t } from '../../core/language.ts';
import { CHOICES, type Evidence, evidenceFor, nameRule, ruleKey, type SessionRule, sameRule } from '../../core/rule.ts';
import { percentileRank } from '../../core/statistics/percentile.ts';
import type { Share } from '../../core/units.ts';
import { Wide } from '../parts/sideways.tsx';
import css from './plan.module.css';
import { type KindFigures, type RuleFigures, speedOf } from './rule-figures.ts';
import { mean, TOO_MANY } from './rule-words.ts';

/** The chosen rule in figures, by kind of step. */
export function RuleTables({ figures: { handling, holding } }: { figures: RuleFigures }) {
  return (
    <details>
      <summary>{t('The same as a table')}</summary>
      <KindTable title={holding ? t('Handling') : t('Holding still and handling')} figures={handling} />
      {holding ? <KindTable title={t('Holding still')} figures={holding} /> : null}
      <p className="soft small">
        {t('Exact, by trying all outcomes. “To raise” and “to return”: mean trials of the visits that end so.')}
      </p>
    </details>
  );
}

const hundred = (chance: number): number => Math.round(100 * chance);

function KindTable({ title, figures }: { title: string; figures: KindFigures }) {
  return (
    <Wide label={t('{title}, as a table', { title })}>
      <table className={css.table}>
        <caption>{t('{title}: raised, of 100 visits', { title })}</caption>
        <thead>
          <tr>
            <th scope="col">{t('truly kept')}</th>
            <th scope="col">{t('in 10 trials')}</th>
            <th scope="col">{t('in 20')}</th>
            <th scope="col">{t('ever')}</th>
            <th scope="col">{t('trials to raise')}</th>
            <th scope="col">{t('to return')}</th>
          </tr>
        </thead>
        <tbody>
          {figures.rows.map(({ p, raised, trialsToRaise, trialsToReturn }) => (
            <tr key={p}>
              <th scope="row">{t('{n} of 10', { n: +(10 * p).toFixed(1) })}</th>
              <td>{hundred(raised['10'])}</td>
              <td>{hundred(raised['20'])}</td>
              <td>{hundred(raised.all)}</td>
              <td>{mean(trialsToRaise)}</td>
              <td>{mean(trialsToReturn)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}

/** Every rule on offer in one row, so that one sees at choosing time which is too fast. */
export function SideBySide({ rule }: { rule: SessionRule }) {
  const known = CHOICES.some((choice) => sameRule(choice, rule));
  return (
    <div className={css.wide}>
      <Wide label={t('The rules side by side')}>
        <table className={css.table}>
          <caption>{t('The rules side by side')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('rule')}</th>
              <th scope="col">{t('raised at 7 of 10')}</th>
              <th scope="col">{t('at 9 of 10')}</th>
              <th scope="col">{t('lifts a dog')}</th>
              <th scope="col">{t('early raises')}</th>
            </tr>
          </thead>
          <tbody>
            {(known ? CHOICES : [...CHOICES, rule]).map((each) => (
              <RuleLine key={ruleKey(each)} rule={each} isChosen={sameRule(each, rule)} />
            ))}
          </tbody>
        </table>
      </Wide>
      <p className="soft small">
        {t(
          'Raised: of 100 visits to a handling step by a dog that truly keeps so many, exact. Lifts up to the goal, and raises of 100 that came too early: on 2000 invented dogs trained by this app; they rank rules and say nothing about yours.',
        )}
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
      <td>{at7 >= TOO_MANY ? t('{n} too fast', { n: hundred(at7) }) : hundred(at7)}</td>
      <td>{hundred(at9)}</td>
      <td>{figure(({ lifts }) => fixed(lifts, 0))}</td>
      <td>{figure(({ earlyRaises }) => fixed(100 * earlyRaises, 1))}</td>
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
      <caption>{t('Which hold the next one would have to beat, counted from the shortest')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('of the last')}</th>
          {PAID.map((share) => (
            <th key={share} scope="col">
              {t('to pay {n} of 10', { n: 10 * share })}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {LOOKED_BACK.map((m) => (
          <tr key={m}>
            <th scope="row">{t('{n} holds', { n: m })}</th>
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
  return Number.isInteger(rank) ? `${rank}.` : `${Math.floor(rank)}. (k = ${fixed(rank, 1)})`;
}
