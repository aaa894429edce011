/** Changes what a handling step handles: the place, what the hand does, the caution, and the half that is prepared for it. */
import { type FormEvent, useId } from 'react';
import type { PlanEdit } from '../../core/edit-plan.ts';
import { areaName, HANDLED_AREAS } from '../../core/ladders.ts';
import type { HandlingStep } from '../../core/plan.ts';
import css from './plan.module.css';
import { Refusal } from './refusal.tsx';

interface FormProps {
  readonly step: HandlingStep;
  /** Empty: nothing was refused. */
  readonly refusal: string;
  readonly onEdit: (edit: PlanEdit) => void;
}

const textIn = (form: FormData, name: string): string => String(form.get(name) ?? '').trim();

export function HandlingForm({ step, refusal, onEdit }: FormProps) {
  const id = useId();
  const { area, extent, caution = '' } = step;
  const save = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const chosen = HANDLED_AREAS.find((each) => each === form.get('area')) ?? area;
    const [newExtent, newCaution] = [textIn(form, 'extent'), textIn(form, 'caution')];
    if (chosen === area && newExtent === extent && newCaution === caution) return;
    onEdit({ kind: 'rehandle', stepId: step.id, area: chosen, extent: newExtent, caution: newCaution });
  };
  return (
    <form className={css.handling} noValidate onSubmit={save} key={`${area} ${extent} ${caution}`}>
      <div className={css.field}>
        <label htmlFor={`${id}e`}>What the hand does</label>
        <input id={`${id}e`} name="extent" defaultValue={extent} maxLength={120} autoComplete="off" />
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}a`}>Place</label>
        <select id={`${id}a`} name="area" defaultValue={area}>
          {HANDLED_AREAS.map((each) => (
            <option key={each} value={each}>
              {areaName(each)}
            </option>
          ))}
        </select>
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}c`}>Caution, said before the step</label>
        <textarea id={`${id}c`} name="caution" defaultValue={caution} maxLength={240} rows={3} />
      </div>
      <Refusal text={refusal} />
      <button type="submit">Change the handling</button>
    </form>
  );
}

/** Half of a handling is never invented: the plan or the handler words it. */
export function HalfWay({ step, refusal, onEdit }: FormProps) {
  const id = useId();
  const { halfway } = step;
  const save = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    // An emptied field is no number; Number('') would make it 0, a touch and away.
    const forS = Number.parseFloat(String(form.get('seconds')));
    const half = { title: textIn(form, 'half'), extent: textIn(form, 'extent'), forS };
    onEdit({ kind: 'prepare-half', stepId: step.id, halfway: half });
  };
  return (
    <form className={css.handling} noValidate onSubmit={save} key={`${halfway?.title} ${halfway?.extent} ${halfway?.forS}`}>
      <div className={css.field}>
        <label htmlFor={`${id}t`}>Half of it, in a few words: less of the place, less pressure or less time</label>
        <input id={`${id}t`} name="half" defaultValue={halfway?.title ?? ''} maxLength={60} autoComplete="off" />
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}e`}>What the hand does in the half</label>
        <input id={`${id}e`} name="extent" defaultValue={halfway?.extent ?? ''} maxLength={120} autoComplete="off" />
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}s`}>Seconds the half lasts</label>
        <input
          id={`${id}s`}
          name="seconds"
          type="number"
          min={0}
          max={step.forS}
          step={0.5}
          defaultValue={halfway?.forS ?? step.forS / 2}
          className={css.few}
        />
      </div>
      <Refusal text={refusal} />
      <div className="row">
        <button type="submit">Change the half</button>
        {halfway ? (
          <button type="button" onClick={() => onEdit({ kind: 'prepare-half', stepId: step.id, halfway: null })}>
            Prepare no half
          </button>
        ) : null}
      </div>
    </form>
  );
}
