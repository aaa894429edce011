/** Chooses the one thing the practice screen says: a headline for two metres, a sentence for one. */
import type { Call } from '../../core/call.ts';
import { stepOf } from '../../core/criterion.ts';
import type { Rep, SessionState } from '../../core/fold.ts';
import { fixed, localeSpoken, t } from '../../core/language.ts';
import { callsInOrder, isOverruled } from '../../core/placed-calls.ts';
import { criterionS } from '../../core/plan.ts';
import { callWords, sayCall, sayOutcome, sayQuestion } from '../../core/sentences.ts';
import type { Seconds } from '../../core/units.ts';
import type { Word } from '../../core/word.ts';
import { listOr, wordName } from '../parts/word-names.ts';

export interface Saying {
  /** Two or three words; empty during a hold, when nothing is to be said. */
  readonly headline: string;
  readonly detail: string;
}

/** How the screen names a word that was heard, pressed or tapped. */
export function sayWord(word: Word): string {
  if (word === 'void') return t('not a trial');
  return word === 'resume' ? t('go on') : wordName(word);
}

/** @param unsure something was nearly a word a moment ago. @param hears the ear listens: words, not taps, are asked for. */
export function whatToSay(live: SessionState, { unsure, hears }: { unsure: boolean; hears: boolean }): Saying {
  const { phase, question, lastUnsure, reps } = live;
  if (phase.phase === 'paused')
    return { headline: t('paused'), detail: t('Nothing you say counts now. Tap “Go on” when you are ready.') };
  if (question) return { headline: t('hm?'), detail: sayQuestion(question) };
  if (unsure && lastUnsure) {
    const words = listOr(lastUnsure.nearest.map(({ word }) => wordName(word)));
    return { headline: t('say it again'), detail: t('Unsure: {words}?', { words }) };
  }
  if (phase.phase === 'holding') return { headline: '', detail: caution(live) };
  const ownSay = latestOwnSay(live);
  if (ownSay) return { headline: callWords(ownSay.kind), detail: sayCall(ownSay, live.standing.steps) };
  return reps.length === 0 ? beforeFirst(live, hears) : afterRep(live);
}

/** What the handler said of the step since the last rep: it overrules what was called after it. */
function latestOwnSay(live: SessionState): Call | null {
  const latest = callsInOrder(live).at(-1);
  return latest && latest.afterRep === live.reps.length && isOverruled(latest.call) ? latest.call : null;
}

function beforeFirst(live: SessionState, hears: boolean): Saying {
  const begin = hears ? t('Say your hold word when the dog settles.') : t('Tap Hold, or press its key, when the dog settles.');
  return { headline: t('ready'), detail: [begin, caution(live)].filter(Boolean).join(' ') };
}

function afterRep({ reps, standing }: SessionState): Saying {
  const last = reps.at(-1);
  if (!last) return { headline: '', detail: '' };
  const outcome = sayOutcome(last.outcome, last.voidReason);
  const loudest = last.calls.findLast(isLoud) ?? last.calls.at(-1);
  // What may be pain is said before everything else.
  const calls = last.calls.toSorted((a, b) => Number(asksForVeterinarian(b)) - Number(asksForVeterinarian(a)));
  const sentences = calls.map((call) => sayCall(call, standing.steps));
  if (!loudest) return { headline: outcome, detail: last.outcome === 'short' ? sayShort(last) : '' };
  const before = last.calls.some(asksForVeterinarian) ? [] : [`${capital(outcome)}.`];
  return { headline: callWords(loudest.kind), detail: [...before, ...sentences].join(' ') };
}

const asksForVeterinarian = (call: Call): boolean =>
  call.reasons.some((reason) => reason.kind === 'area-alarm' && reason.level === 'veterinarian');

/** Floor, not round: 0.96 s held is not yet 1 s. */
const tenths = (heldForS: Seconds): string => fixed(Math.floor(10 * heldForS + 1e-6) / 10, 1);

function sayShort({ heldForS, step }: Rep): string {
  return t('Paid at {paid} of {criterion} s: not counted.', { paid: tenths(heldForS), criterion: criterionS(step) });
}

/** The seconds of a rep that is over. Under one second tenths are told, or a kept rep would read as nothing. */
export function sayStill(heldForS: Seconds): string {
  return heldForS > 0 && heldForS < 1 ? tenths(heldForS) : `${Math.floor(heldForS)}`;
}

/** A sentence begins large, also when its first word mostly stands alone. */
function capital(words: string): string {
  return words.charAt(0).toLocaleUpperCase(localeSpoken()) + words.slice(1);
}

/** To rest outranks the step that was just gained. */
function isLoud(call: Call): boolean {
  return call.kind === 'rest';
}

/** Before the first rep on a step that has one. */
function caution({ standing, reps }: SessionState): string {
  const step = stepOf(standing);
  return reps.some((rep) => rep.step.id === step.id) ? '' : (step.caution ?? '');
}
