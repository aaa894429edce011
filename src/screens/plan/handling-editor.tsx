/** Fields for what a handling step handles: the place, what the hand does, the caution, and the half that is prepared for it. */
import { useId } from 'react';
import type { StepChange } from '../../core/edit-plan.ts';
import { areaName, HANDLED_AREAS } from '../../core/ladders.ts';
import { t } from '../../core/language.ts';
import type { HandlingStep } from '../../core/plan.ts';
import css from './plan.module.css';
import { Refusal } from './refusal.tsx';

interface FieldsProps {
  readonly step: HandlingStep;
  /** Empty: nothing was refused. */
  readonly refusal: string;
}

const textIn = (form: FormData, name: string): string => String(form.get(name) ?? '').trim();

export function handlingIn(form: FormData, { id, area, extent, caution = '' }: HandlingStep): readonly StepChange[] {
  const chosen = HANDLED_AREAS.find((each) => each === form.get('area')) ?? area;
  const [newExtent, newCaution] = [textIn(form, 'extent'), textIn(form, 'caution')];
  if (chosen === area && newExtent === extent && newCaution === caution) return [];
  return [{ kind: 'rehandle', stepId: id, area: chosen, extent: newExtent, caution: newCaution }];
}

export function HandlingFields({ step, refusal }: FieldsProps) {
  const id = useId();
  const { area, extent, caution = '' } = step;
  return (
    <div className={css.handling}>
      <div className={css.field}>
        <label htmlFor={`${id}e`}>{t('What the hand does')}</label>
        <input key={extent} id={`${id}e`} name="extent" defaultValue={extent} maxLength={120} autoComplete="off" />
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}a`}>{t('Place')}</label>
        <select key={area} id={`${id}a`} name="area" defaultValue={area}>
          {HANDLED_AREAS.map((each) => (
            <option key={each} value={each}>
              {areaName(each)}
            </option>
          ))}
        </select>
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}c`}>{t('Caution, said before the step')}</label>
        <textarea key={caution} id={`${id}c`} name="caution" defaultValue={caution} maxLength={240} rows={3} />
      </div>
      <Refusal text={refusal} />
    </div>
  );
}

/** Half of a handling is never invented: the plan or the handler words it. Nothing written where none is prepared: still none. */
export function halfIn(form: FormData, { id, halfway }: HandlingStep): readonly StepChange[] {
  const [title, extent] = [textIn(form, 'half-title'), textIn(form, 'half-extent')];
  // An emptied field is no number; Number('') would make it 0, a touch and away.
  const forS = Number.parseFloat(String(form.get('half-seconds')));
  const isSame = halfway
    ? title === halfway.title && extent === halfway.extent && forS === halfway.forS
    : title === '' && extent === '';
  return isSame ? [] : [{ kind: 'prepare-half', stepId: id, halfway: { title, extent, forS } }];
}

export function HalfFields({ step, refusal }: FieldsProps) {
  const id = useId();
  const { title = '', extent = '', forS = step.forS / 2 } = step.halfway ?? {};
  return (
    <div className={css.handling}>
      <div className={css.field}>
        <label htmlFor={`${id}t`}>{t('Half of it, in a few words: less of the place, less pressure or less time')}</label>
        <input key={title} id={`${id}t`} name="half-title" defaultValue={title} maxLength={60} autoComplete="off" />
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}e`}>{t('What the hand does in the half')}</label>
        <input key={extent} id={`${id}e`} name="half-extent" defaultValue={extent} maxLength={120} autoComplete="off" />
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}s`}>{t('Seconds the half lasts')}</label>
        <input
          key={forS}
          id={`${id}s`}
          name="half-seconds"
          type="number"
          min={0}
          max={step.forS}
          step={0.5}
          defaultValue={forS}
          className={css.few}
        />
      </div>
      <Refusal text={refusal} />
    </div>
  );
}
