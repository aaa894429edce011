/** The picture read aloud: the same reps as a table of time, step, held, outcome and what was called. */
import type { Rep } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import type { PlacedCall } from '../../core/placed-calls.ts';
import { callWords, sayOutcome } from '../../core/sentences.ts';
import { sayHeld, sayMoment } from '../../core/summary.ts';
import { OutcomeShape } from './key.tsx';
import css from './table.module.css';
import { unbroken } from './unbroken.ts';

export interface StairsTableProps {
  readonly reps: readonly Rep[];
  /** As in the picture; left out: the calls that the reps carry. */
  readonly calls?: readonly PlacedCall[];
  /** The rep that is picked in the picture. */
  readonly selectedRep?: number | null;
  /** Reps that were put right afterwards. */
  readonly putRight?: ReadonlySet<number>;
}

export function StairsTable({ reps, calls, selectedRep = null, putRight }: StairsTableProps) {
  return (
    <table className={css.table}>
      <caption className="hidden-but-read">{t('Every rep: time, step, held, outcome, what was called')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('time')}</th>
          <th scope="col">{t('step')}</th>
          <th scope="col" className={css.number}>
            {t('held')}
          </th>
          <th scope="col">{t('outcome')}</th>
          <th scope="col">{t('called')}</th>
        </tr>
      </thead>
      <tbody>
        {reps.map((rep, at) => (
          <Row
            key={rep.n}
            rep={rep}
            isNewStep={reps[at - 1]?.step.id !== rep.step.id}
            called={sayCalled(rep, calls)}
            isPicked={rep.n === selectedRep}
            isPutRight={putRight?.has(rep.n) ?? false}
          />
        ))}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly rep: Rep;
  readonly isNewStep: boolean;
  readonly called: string;
  readonly isPicked: boolean;
  readonly isPutRight: boolean;
}

function Row({ rep, isNewStep, called, isPicked, isPutRight }: RowProps) {
  const { holdAtS, heldForS, outcome, voidReason, isWarmUp, step } = rep;
  return (
    <tr className={isNewStep ? css.edge : css.same} data-picked={isPicked || undefined}>
      <th scope="row">{sayMoment(holdAtS)}</th>
      {/* A step is shown once and read every time. */}
      <td className={css.step}>{isNewStep ? unbroken(step.title) : <span className="hidden-but-read">{step.title}</span>}</td>
      <td className={css.number}>{voidReason === 'not-offered' ? '' : sayHeld(heldForS)}</td>
      <td>
        <span className={css.outcome}>
          <OutcomeShape outcome={outcome} isWarmUp={isWarmUp} />
          <span>{sayRow(rep, isPutRight)}</span>
        </span>
      </td>
      <td className={css.called}>{called}</td>
    </tr>
  );
}

function sayRow({ outcome, voidReason, isWarmUp }: Rep, isPutRight: boolean): string {
  const plain = sayOutcome(outcome, voidReason);
  const said = isWarmUp ? t('{outcome}, warm-up', { outcome: plain }) : plain;
  return isPutRight ? t('{outcome} (put right)', { outcome: said }) : said;
}

function sayCalled(rep: Rep, calls: readonly PlacedCall[] | undefined): string {
  const made = calls ? calls.filter(({ afterRep }) => afterRep === rep.n).map(({ call }) => call) : rep.calls;
  return made.map(({ kind }) => callWords(kind)).join(', ');
}
