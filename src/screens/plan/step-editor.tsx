/** Changes one step: its words, its seconds, its place on the ladder; what it handles is changed in `handling-editor.tsx`. */
import { type FormEvent, useId } from 'react';
import type { PlanEdit, Refused } from '../../core/edit-plan.ts';
import { areaInSentence } from '../../core/ladders.ts';
import { criterionS, type Step, titleLike } from '../../core/plan.ts';
import { HalfWay, HandlingForm } from './handling-editor.tsx';
import css from './plan.module.css';
import { Refusal } from './refusal.tsx';
import { sayRefusal } from './refusal-words.ts';

interface Props {
  readonly step: Step;
  readonly i: number;
  readonly steps: readonly Step[];
  readonly refused: Refused | null;
  readonly onEdit: (edit: PlanEdit) => void;
  readonly newId: () => string;
}

export function StepEditor({ step, i, steps, refused, onEdit, newId }: Props) {
  const stepId = step.id;
  const refusedAt = refused && placeOf(refused.edit, stepId);
  const refusal = refused && refusedAt ? sayRefusal(refused, steps) : '';
  const at = (place: Place) => (refusedAt === place ? refusal : '');
  return (
    <div className={css.editor}>
      <Words step={step} refusal={at('words')} onEdit={onEdit} />
      {step.kind === 'handling' ? <HandlingForm step={step} refusal={at('handling')} onEdit={onEdit} /> : null}
      <div className="row">
        <button type="button" disabled={i === steps.length - 1} onClick={() => onEdit({ kind: 'move', stepId, by: 1 })}>
          Move up
        </button>
        <button type="button" disabled={i === 0} onClick={() => onEdit({ kind: 'move', stepId, by: -1 })}>
          Move down
        </button>
        <button type="button" onClick={() => onEdit({ kind: 'insert', step: stepAbove(step, steps[i + 1], newId()), at: i + 1 })}>
          Put a step above
        </button>
        {step.kind === 'duration' ? (
          <button type="button" onClick={() => onEdit({ kind: 'insert', step: handlingAbove(steps, newId()), at: i + 1 })}>
            Put a handling above
          </button>
        ) : null}
        {step.halfOf ? (
          <button type="button" onClick={() => onEdit({ kind: 'unsplit', stepId })}>
            Take the half step out
          </button>
        ) : (
          <button type="button" disabled={i === 0} onClick={() => onEdit({ kind: 'split', stepId })}>
            Put half a step before it
          </button>
        )}
        <button type="button" disabled={steps.length === 1} onClick={() => onEdit({ kind: 'remove', stepId })}>
          Take it out
        </button>
      </div>
      <Refusal text={at('buttons')} />
      {step.kind === 'handling' ? <HalfWay step={step} refusal={at('half')} onEdit={onEdit} /> : null}
    </div>
  );
}

type Place = 'words' | 'handling' | 'buttons' | 'half';

/** Where on this editor the edit was asked for; null: on another. */
function placeOf(edit: PlanEdit, stepId: string): Place | null {
  if (edit.kind === 'insert') return 'buttons';
  if (!('stepId' in edit) || edit.stepId !== stepId) return null;
  if (edit.kind === 'reword') return 'words';
  if (edit.kind === 'rehandle') return 'handling';
  return edit.kind === 'prepare-half' ? 'half' : 'buttons';
}

/** A step like this one, a second longer, or half-way to the next hold. */
function stepAbove(step: Step, above: Step | undefined, id: string): Step {
  const { halfOf: _, ...plain } = step;
  if (plain.kind === 'handling') return { ...plain, id, title: `${plain.title}, again` };
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
    title: `Touch: ${areaInSentence(area)}`,
    extent: 'one finger, a touch and away',
    forS: 0,
  };
}

interface FormProps {
  readonly step: Step;
  /** Empty: nothing was refused. */
  readonly refusal: string;
  readonly onEdit: Props['onEdit'];
}

function Words({ step, refusal, onEdit }: FormProps) {
  const id = useId();
  const save = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const title = String(form.get('title') ?? '').trim();
    // An emptied field is no number; Number('') would make it 0, paid at once.
    const seconds = Number.parseFloat(String(form.get('seconds')));
    if (title !== step.title || seconds !== criterionS(step)) onEdit({ kind: 'reword', stepId: step.id, title, seconds });
  };
  return (
    <form className="row" noValidate onSubmit={save} key={`${step.title} ${criterionS(step)}`}>
      <div className={css.field}>
        <label htmlFor={`${id}t`}>In a few words</label>
        <input id={`${id}t`} name="title" defaultValue={step.title} maxLength={60} autoComplete="off" />
      </div>
      <div className={css.field}>
        <label htmlFor={`${id}s`}>{step.kind === 'handling' ? 'Seconds it lasts' : 'Seconds'}</label>
        <input
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
      <button type="submit">Change</button>
      <Refusal text={refusal} id={`${id}r`} />
    </form>
  );
}
