/** Changes one step: all that is written of it is kept by one button; its place on the ladder is changed beside it. */
import { type FormEvent, useId } from 'react';
import type { PlanEdit, Refused, StepChange } from '../../core/edit-plan.ts';
import { areaInSentence } from '../../core/ladders.ts';
import { t } from '../../core/language.ts';
import { criterionS, type Step, titleLike } from '../../core/plan.ts';
import { HalfFields, HandlingFields, halfIn, handlingIn } from './handling-editor.tsx';
import css from './plan.module.css';
import { Refusal } from './refusal.tsx';
import { type Place, placeOf, sayRefusal } from './refusal-words.ts';

interface Props {
  readonly step: Step;
  readonly i: number;
  readonly steps: readonly Step[];
  readonly refused: Refused | null;
  readonly onEdit: (edit: PlanEdit) => void;
  readonly newId: () => string;
}

export function StepEditor(props: Props) {
  const { step, steps, refused } = props;
  const refusedAt = refused && placeOf(refused, step.id);
  const refusal = refused && refusedAt ? sayRefusal(refused, steps) : '';
  const at = (place: Place) => (refusedAt === place ? refusal : '');
  return (
    <div className={css.editor}>
      <Written step={step} at={at} onEdit={props.onEdit} />
      <Moves {...props} />
      <Refusal text={at('buttons')} />
    </div>
  );
}

interface WrittenProps extends Pick<Props, 'step' | 'onEdit'> {
  /** What was refused there; empty: nothing. */
  readonly at: (place: Place) => string;
}

/** A field begins anew only when what it shows was changed: what is typed in the others stays. */
function Written({ step, at, onEdit }: WrittenProps) {
  const save = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const changes = changesIn(new FormData(event.currentTarget), step);
    if (changes.length > 0) onEdit({ kind: 'together', stepId: step.id, changes });
  };
  return (
    <form className="stack" noValidate onSubmit={save}>
      <Words step={step} refusal={at('words')} />
      {step.kind === 'handling' ? (
        <>
          <HandlingFields step={step} refusal={at('handling')} />
          <HalfFields step={step} refusal={at('half')} />
        </>
      ) : null}
      <div className="row">
        <button type="submit">{t('Change')}</button>
        {step.kind === 'handling' && step.halfway ? (
          <button type="button" onClick={() => onEdit({ kind: 'prepare-half', stepId: step.id, halfway: null })}>
            {t('Prepare no half')}
          </button>
        ) : null}
      </div>
    </form>
  );
}

function changesIn(form: FormData, step: Step): readonly StepChange[] {
  const title = String(form.get('title') ?? '').trim();
  // An emptied field is no number; Number('') would make it 0, paid at once.
  const seconds = Number.parseFloat(String(form.get('seconds')));
  const isSame = title === step.title && seconds === criterionS(step);
  const words: readonly StepChange[] = isSame ? [] : [{ kind: 'reword', stepId: step.id, title, seconds }];
  return step.kind === 'handling' ? [...words, ...handlingIn(form, step), ...halfIn(form, step)] : words;
}

function Words({ step, refusal }: { step: Step; refusal: string }) {
  const id = useId();
  return (
    <div className="row">
      <div className={css.field}>
        <label htmlFor={`${id}t`}>{t('In a few words')}</label>
        <input key={step.title} id={`${id}t`} name="title" defaultValue={step.title} maxLength={60} autoComplete="off" />
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}s`}>{step.kind === 'handling' ? t('Seconds it lasts') : t('Seconds')}</label>
        <input
          key={criterionS(step)}
          id={`${id}s`}
          name="seconds"
          type="number"
          min={0}
          max={600}
          step={0.5}
          defaultValue={criterionS(step)}
          className={css.few}
          aria-describedby={refusal === '' ? undefined : `${id}r`}
        />
      </div>
      <Refusal text={refusal} id={`${id}r`} />
    </div>
  );
}

/** Where it lies on the ladder, and what lies beside it. */
function Moves({ step, i, steps, onEdit, newId }: Props) {
  const stepId = step.id;
  return (
    <div className="row">
      <button type="button" disabled={i === steps.length - 1} onClick={() => onEdit({ kind: 'move', stepId, by: 1 })}>
        {t('Move up')}
      </button>
      <button type="button" disabled={i === 0} onClick={() => onEdit({ kind: 'move', stepId, by: -1 })}>
        {t('Move down')}
      </button>
      <button type="button" onClick={() => onEdit({ kind: 'insert', step: stepAbove(step, steps[i + 1], newId()), at: i + 1 })}>
        {t('Put a step above')}
      </button>
      {step.kind === 'duration' ? (
        <button type="button" onClick={() => onEdit({ kind: 'insert', step: handlingAbove(steps, newId()), at: i + 1 })}>
          {t('Put a handling above')}
        </button>
      ) : null}
      {step.halfOf ? (
        <button type="button" onClick={() => onEdit({ kind: 'unsplit', stepId })}>
          {t('Take the half step out')}
        </button>
      ) : (
        <button type="button" disabled={i === 0} onClick={() => onEdit({ kind: 'split', stepId })}>
          {t('Put half a step before it')}
        </button>
      )}
      <button type="button" disabled={steps.length === 1} onClick={() => onEdit({ kind: 'remove', stepId })}>
        {t('Take it out')}
      </button>
    </div>
  );
}

/** A step like this one, a second longer, or half-way to the next hold. */
function stepAbove(step: Step, above: Step | undefined, id: string): Step {
  const { halfOf: _, ...plain } = step;
  if (plain.kind === 'handling') return { ...plain, id, title: t('{title}, again', { title: plain.title }) };
  const room = above?.kind === 'duration' ? above.holdForS - plain.holdForS : 2;
  const holdForS = plain.holdForS + Math.min(1, room / 2);
  return { ...plain, id, title: titleLike([step], holdForS), holdForS };
}

/** The least of a handling, at the place that the plan handles first; its words are changed afterwards. */
function handlingAbove(steps: readonly Step[], id: string): Step {
  const area = steps.find((each) => each.kind === 'handling')?.area ?? 'paws';
  return {
    kind: 'handling',
    id,
    area,
    title: t('Touch: {area}', { area: areaInSentence(area) }),
    extent: t('one finger, a touch and away'),
    forS: 0,
  };
}
