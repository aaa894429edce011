/** Words what the rule called beside what it would have called, and a rep as it was heard beside what it is now. */
import type { CallsBeside } from '../../core/correct.ts';
import type { Rep, SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { callWords, sayOutcome } from '../../core/sentences.ts';
import { sayHeld } from '../../core/summary.ts';

/** Null: it would have called the same. */
export function sayBeside({ called, wouldCall }: CallsBeside): { readonly called: string; readonly wouldCall: string } | null {
  const [made, instead] = [named(called), named(wouldCall)];
  return made === instead ? null : { called: made, wouldCall: instead };
}

function named(calls: CallsBeside['called']): string {
  return calls.length === 0 ? t('nothing#was called') : calls.map(({ kind }) => callWords(kind)).join(', ');
}

/** "As heard: lifted, held 2.0 s." Where one rep was two, or none, that is said. */
export function sayAsHeard(original: SessionState, { reps }: SessionState, rep: Rep): string {
  const fromS = reps[rep.n - 2]?.endAtS ?? Number.NEGATIVE_INFINITY;
  const heard = original.reps.filter(({ holdAtS, endAtS }) => endAtS > fromS && holdAtS <= rep.endAtS);
  if (heard.length === 0) return t('As heard: no rep.');
  return t('As heard: {reps}.', { reps: heard.map(sayOne).join(t('; then ')) });
}

function sayOne({ outcome, voidReason, heldForS }: Rep): string {
  const said = sayOutcome(outcome, voidReason);
  return voidReason === 'not-offered' ? said : t('{outcome}, held {held}', { outcome: said, held: sayHeld(heldForS) });
}
