/** The ladder as stairs, easiest at the bottom; a half step is half as high. A tap on a tread opens it for changes. */
import type { CSSProperties } from 'react';
import type { PlanEdit, Refused } from '../../core/edit-plan.ts';
import { t } from '../../core/language.ts';
import { criterionS, type Step, titleSaysSeconds } from '../../core/plan.ts';
import css from './ladder.module.css';
import { StepEditor } from './step-editor.tsx';

interface Props {
  readonly steps: readonly Step[];
  /** Where the next session starts; null while that is not known. */
  readonly startStepId: string | null;
  readonly openId: string | null;
  readonly onOpen: (stepId: string | null) => void;
  readonly refused: Refused | null;
  readonly onEdit: (edit: PlanEdit) => void;
  readonly newId: () => string;
}

export function Ladder(props: Props) {
  const { steps } = props;
  return (
    <ol className={css.ladder} style={{ '--count': steps.length } as CSSProperties} aria-label={t('Steps, hardest first')}>
      {steps.map((step, i) => <Tread key={step.id} step={step} i={i} {...props} />).reverse()}
    </ol>
  );
}

function Tread({ step, i, ...props }: Props & { step: Step; i: number }) {
  const open = props.openId === step.id;
  return (
    <li className={css.tread} data-half={step.halfOf !== undefined} data-open={open} style={{ '--n': i } as CSSProperties}>
      <button type="button" className={css.face} aria-expanded={open} onClick={() => props.onOpen(open ? null : step.id)}>
        <span className={css.title}>{step.title}</span>
        {step.caution ? <CautionMark /> : null}
        {step.halfOf ? <span className={css.note}>{t('half step')}</span> : null}
        {props.startStepId === step.id ? <span className={css.start}>{t('next session')}</span> : null}
        {saysSeconds(step) ? null : <span className={css.seconds}>{t('{n} s', { n: criterionS(step) })}</span>}
      </button>
      {beginsCaution(props.steps, i) ? <p className={css.caution}>{step.caution}</p> : null}
      {open ? <StepEditor {...props} step={step} i={i} /> : null}
    </li>
  );
}

/** "Lie flat 3 s" needs no second "3 s"; "paid at once" says it too. */
function saysSeconds(step: Step): boolean {
  return criterionS(step) === 0 || titleSaysSeconds(step);
}

/** Said once, before the first step that it holds for. */
function beginsCaution(steps: readonly Step[], i: number): boolean {
  const caution = steps[i]?.caution;
  return caution !== undefined && steps.findIndex((step) => step.caution === caution) === i;
}

function CautionMark() {
  return (
    <svg className={css.mark} viewBox="0 0 20 18" role="img" aria-label={t('with caution')}>
      <path d="M10 1.5 19 17H1Z" />
      <path d="M10 7v5m0 2v.5" />
    </svg>
  );
}
