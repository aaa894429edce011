/** Says how the picture is read: each shape with its word, in the very ink of the picture. */
import type { Outcome } from '../../core/rep.ts';
import { OUTCOME_WORDS } from '../../core/sentences.ts';
import { BarShape, FlagShape, type Ink } from './ink.tsx';
import css from './key.module.css';
import type { Bar, Flag } from './layout.ts';

const OUTCOMES: readonly Outcome[] = ['kept', 'lifted', 'short', 'void'];

const SAMPLE: Omit<Bar, 'outcome' | 'isWarmUp'> = { n: 0, fromPx: 1, lengthPx: 34, yPx: 27, notchesPx: [] };

const FLAG: Flag = {
  ...{ afterRep: 0, index: 0, isCalledOut: true, xPx: 3, yPx: 44 },
  call: { kind: 'raise', fromStepId: '', toStepId: '', inserted: null, reasons: [] },
};

/** One outcome's shape, to stand before its word. */
export function OutcomeShape({ outcome, isWarmUp = false, ink = 'colour' }: OutcomeShapeProps) {
  return (
    <svg className={`${css.shape} ${css[ink]}`} width="2.5rem" height="1.875rem" viewBox="0 0 40 30" aria-hidden="true">
      <path className={css.tread} d="M0,27H40" />
      <BarShape bar={{ ...SAMPLE, outcome, isWarmUp }} ink={ink} />
    </svg>
  );
}

interface OutcomeShapeProps {
  readonly outcome: Outcome;
  readonly isWarmUp?: boolean;
  readonly ink?: Ink;
}

/** In colour on the screen, hatched on paper, as the picture above it. */
function Sample(sample: Omit<OutcomeShapeProps, 'ink'>) {
  return (
    <>
      <OutcomeShape {...sample} />
      <OutcomeShape {...sample} ink="hatch" />
    </>
  );
}

export function Key() {
  return (
    <ul className={css.key} aria-label="How to read the bars">
      {OUTCOMES.map((outcome) => (
        <li key={outcome}>
          <Sample outcome={outcome} />
          {OUTCOME_WORDS[outcome]}
        </li>
      ))}
      <li>
        <Sample outcome="kept" isWarmUp />
        warm-up
      </li>
      <li>
        <svg className={css.shape} width="1.375rem" height="1.875rem" viewBox="0 0 22 46" aria-hidden="true">
          <FlagShape flag={FLAG} />
        </svg>
        call
      </li>
    </ul>
  );
}
