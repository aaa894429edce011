/** Chooses the one thing the practice screen says: a headline for two metres, a sentence for one. */
import type { Call } from '../../core/call.ts';
import { stepOf } from '../../core/criterion.ts';
import type { Rep, SessionState } from '../../core/fold.ts';
import { callsInOrder, isOverruled } from '../../core/placed-calls.ts';
import { criterionS } from '../../core/plan.ts';
import { callWords, sayCall, sayOutcome, sayQuestion } from '../../core/sentences.ts';
import type { Word } from '../../core/word.ts';

export interface Saying {
  /** Two or three words; empty during a hold, when nothing is to be said. */
  readonly headline: string;
  readonly detail: string;
}

/** How the screen names a word that was heard, pressed or tapped. */
const WORD_NAMES: Readonly<Partial<Record<Word, string>>> = { void: 'not a trial', resume: 'go on' };

export function sayWord(word: Word): string {
  return WORD_NAMES[word] ?? word;
}

/** @param unsure something was nearly a word a moment ago. @param hears the ear listens: words, not taps, are asked for. */
export function whatToSay(live: SessionState, { unsure, hears }: { unsure: boolean; hears: boolean }): Saying {
  const { phase, question, lastUnsure, reps } = live;
  if (phase.phase === 'paused')
    return { headline: 'paused', detail: 'Nothing you say counts now. Tap “Go on” when you are ready.' };
  if (question) return { headline: 'hm?', detail: sayQuestion(question) };
  if (unsure && lastUnsure) {
    const nearest = lastUnsure.nearest.map(({ word }) => word).join(' or ');
    return { headline: 'say it again', detail: `Unsure: ${nearest}?` };
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
  const begin = hears ? 'Say your hold word when the dog settles.' : 'Tap Hold, or press its key, when the dog settles.';
  return { headline: 'ready', detail: [begin, caution(live)].filter(Boolean).join(' ') };
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
  const before = last.calls.some(asksForVeterinarian) ? [] : [`${outcome}.`];
  return { headline: callWords(loudest.kind), detail: [...before, ...sentences].join(' ') };
}

const asksForVeterinarian = (call: Call): boolean =>
  call.reasons.some((reason) => reason.kind === 'area-alarm' && reason.level === 'veterinarian');

/** Floor, not round: 0.96 s held is not yet 1 s. */
function sayShort({ heldForS, step }: Rep): string {
  return `Paid at ${(Math.floor(10 * heldForS + 1e-6) / 10).toFixed(1)} of ${criterionS(step)} s: not counted.`;
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
