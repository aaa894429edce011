/** Says how the picture is read: each shape with its word, in the very ink of the picture. */
import type { Call } from '../../core/call.ts';
import { type PlainMessage, t } from '../../core/language.ts';
import type { PlacedCall } from '../../core/placed-calls.ts';
import type { Outcome } from '../../core/rep.ts';
import { outcomeWords } from '../../core/sentences.ts';
import { BarShape, FlagShape, type Ink, PutRightDot } from './ink.tsx';
import css from './key.module.css';
import { type Bar, type Flag, isCalledOut } from './layout.ts';

const OUTCOMES: readonly Outcome[] = ['kept', 'lifted', 'short', 'void'];

const SAMPLE: Omit<Bar, 'outcome' | 'isWarmUp'> = { n: 0, fromPx: 1, lengthPx: 34, yPx: 27, notchesPx: [] };

const CALL: Call = { kind: 'raise', fromStepId: '', toStepId: '', inserted: null, reasons: [] };

const FLAG: Flag = { ...{ afterRep: 0, index: 0, isCalledOut: true, xPx: 3, yPx: 44 }, call: CALL };

/** Which way a move goes is told by the stair; the cloth tells the rest. */
const FLAGS = {
  ...{ raise: 'a step', return: 'a step', begin: 'a step', split: 'half a step', rest: 'rest#the call' },
  ...{ stay: 'make it easier', remain: 'stay' },
} as const satisfies Record<Call['kind'], PlainMessage>;

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

export interface KeyProps {
  /** The calls of the picture: each kind of flag is explained that it shows. Left out: that a flag is a call. */
  readonly calls?: readonly PlacedCall[];
  /** Are there reps that were put right? */
  readonly hasPutRight?: boolean;
}

export function Key({ calls, hasPutRight = false }: KeyProps) {
  return (
    <ul className={css.key} aria-label={t('How to read the bars')}>
      {OUTCOMES.map((outcome) => (
        <li key={outcome}>
          <Sample outcome={outcome} />
          {outcomeWords(outcome)}
        </li>
      ))}
      <li>
        <Sample outcome="kept" isWarmUp />
        {t('warm-up')}
      </li>
      {flagsOf(calls).map(({ words, flag }) => (
        <li key={words}>
          <svg className={css.shape} width="1.375rem" height="1.875rem" viewBox="0 0 22 46" aria-hidden="true">
            <FlagShape flag={flag} />
          </svg>
          {words}
        </li>
      ))}
      {hasPutRight ? (
        <li>
          <svg className={css.shape} width="0.75rem" height="0.75rem" viewBox="0 0 12 12" aria-hidden="true">
            <PutRightDot x={6} y={6} />
          </svg>
          {t('put right')}
        </li>
      ) : null}
    </ul>
  );
}

function flagsOf(calls: readonly PlacedCall[] | undefined): readonly { readonly words: string; readonly flag: Flag }[] {
  if (!calls) return [{ words: t('call'), flag: FLAG }];
  const flags = calls.map(({ call }) => {
    const isCalled = isCalledOut(call);
    const words = t(isCalled ? FLAGS[call.kind] : 'not called out, or your own word');
    return { words, flag: { ...FLAG, call, isCalledOut: isCalled } };
  });
  return [...new Map(flags.map((each) => [each.words, each])).values()];
}
