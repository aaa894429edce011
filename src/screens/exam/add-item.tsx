/** Puts one more thing on the list: a place of the body, then a step of the dog's plans, a common handling, or words of one's own. */
import { type FormEvent, useState } from 'react';
import { type ExamItem, type ExamPlan, MOST_ITEMS, MOST_LETTERS } from '../../core/exam/exam.ts';
import { cautionFor, readyLadder } from '../../core/ladders.ts';
import { t } from '../../core/language.ts';
import { areaOf, BODY_AREAS, type BodyArea, criterionS, LONGEST_S, type Plan } from '../../core/plan.ts';
import { useIntents } from '../app-context.tsx';
import { sayArea } from '../card/words.ts';
import css from './exam.module.css';

interface Props {
  readonly exam: ExamPlan;
  readonly plans: readonly Plan[];
  readonly onAdd: (item: ExamItem) => void;
}

type Offer = Pick<ExamItem, 'what' | 'forS' | 'step'>;

/** No offer has this place. */
const OWN_WORDS = -1;

export function AddItem({ exam, plans, onAdd }: Props) {
  const { newId } = useIntents();
  const [area, setArea] = useState<BodyArea>('ears');
  const [at, setAt] = useState(0);
  const own = ofPlans(plans, area);
  const offers = [...own, ...common(area, own)];
  const offer = offers[at];
  const add = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const what = offer?.what ?? String(form.get('what')).trim().normalize('NFC');
    const forS = Number(form.get('forS'));
    if (what !== '') onAdd({ id: newId(), area, what, forS, ...(offer?.step && { step: offer.step }) });
  };
  if (exam.items.length >= MOST_ITEMS) return <p>{t('The list is full: {n} items.', { n: MOST_ITEMS })}</p>;
  return (
    <form className={css.form} onSubmit={add} aria-label={t('Add to the list')}>
      <label>
        {t('Place of the body')}
        <select
          value={area}
          onChange={(event) => {
            setArea(event.target.value as BodyArea);
            setAt(0);
          }}
        >
          {BODY_AREAS.map((each) => (
            <option key={each} value={each}>
              {sayArea(each)}
            </option>
          ))}
        </select>
      </label>
      <label>
        {t('What is done')}
        <select value={offer ? at : OWN_WORDS} onChange={(event) => setAt(Number(event.target.value))}>
          <Offers label={t('On its plans')} offers={own} from={0} />
          <Offers label={t('Common handlings')} offers={offers.slice(own.length)} from={own.length} />
          <option value={OWN_WORDS}>{t('something else…')}</option>
        </select>
      </label>
      {offer ? null : (
        <label>
          {t('In a few words')}
          <input name="what" required maxLength={MOST_LETTERS} autoComplete="off" />
        </label>
      )}
      <label>
        {t('Seconds it takes')}
        <input
          key={`${area} ${at}`}
          className={css.few}
          name="forS"
          type="number"
          inputMode="numeric"
          required
          min={0}
          max={LONGEST_S}
          step="any"
          defaultValue={offer?.forS ?? 5}
        />
      </label>
      <button type="submit">{t('Add to the list')}</button>
      {area === 'position' ? null : <p className={css.caution}>{cautionFor(area)}</p>}
    </form>
  );
}

function Offers({ label, offers, from }: { label: string; offers: readonly Offer[]; from: number }) {
  if (offers.length === 0) return null;
  return (
    <optgroup label={label}>
      {offers.map(({ what }, nth) => (
        <option key={what} value={from + nth}>
          {what}
        </option>
      ))}
    </optgroup>
  );
}

/** The hardest first: that is what examinations ask for. */
function ofPlans(plans: readonly Plan[], area: BodyArea): readonly Offer[] {
  const all = plans.flatMap((plan) =>
    plan.steps
      .filter((step) => areaOf(step) === area && !step.halfOf)
      .map((step) => ({ what: step.title, forS: criterionS(step), step: { planId: plan.id, stepId: step.id } }))
      .reverse(),
  );
  return all.filter(({ what }, nth) => all.findIndex((other) => other.what === what) === nth);
}

function common(area: BodyArea, own: readonly Offer[]): readonly Offer[] {
  if (area === 'position') return [];
  const ladder = readyLadder('chin-on-lap', area).filter((step) => areaOf(step) === area);
  const offers = ladder.map((step) => ({ what: step.title, forS: criterionS(step) })).reverse();
  return offers.filter(({ what }) => !own.some((other) => other.what === what));
}
