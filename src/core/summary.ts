/** Sums a session up in sentences, each number with its n. What stands in the review, the list of sessions and the report. */
import type { Call } from './call.ts';
import type { EarState } from './event.ts';
import type { Rep, SessionState } from './fold.ts';
import { fixed, t } from './language.ts';
import { callsInOrder, isOverruled } from './placed-calls.ts';
import { indexOfStep, type Step } from './plan.ts';
import type { VoidReason } from './rep.ts';
import { sayOutcome } from './sentences.ts';
import { standingEvents, undoneIds } from './standing.ts';
import { FEWEST_FOR_INTERVAL } from './statistics/interval.ts';
import { wilson } from './statistics/share.ts';
import type { Seconds } from './units.ts';
import type { Heard, Unsure } from './word.ts';

/** Every rep in exactly one heap. */
export interface Tally {
  readonly kept: number;
  readonly lifts: readonly Rep[];
  readonly trials: number;
  readonly warmUps: readonly Rep[];
  readonly short: number;
  readonly voids: Readonly<Record<VoidReason, number>>;
}

export interface Summary {
  /** The one sentence to read when only one is read. */
  readonly finding: string;
  /** Where the lifts were, and how the step moved. */
  readonly gist: readonly string[];
  /** What was set apart, how long it took, how sure all this is. */
  readonly grounds: readonly string[];
}

/** What was heard, surely or not, from the end of the rep before to the end of this one. */
export function heardIn(state: SessionState, rep: Rep): readonly (Heard | Unsure)[] {
  const events = standingEvents(state.log);
  const before = state.reps[rep.n - 2];
  const from = before ? events.findIndex(({ id }) => id === before.endedBy) + 1 : 0;
  const to = events.findIndex(({ id }) => id === rep.endedBy) + 1;
  return events
    .slice(from, to)
    .flatMap((event) => (event.type === 'word-heard' || event.type === 'word-unsure' ? [event.body] : []));
}

export function tally(reps: readonly Rep[]): Tally {
  const tried = reps.filter((rep) => rep.outcome !== 'void');
  const counted = tried.filter((rep) => !rep.isWarmUp);
  const kept = counted.filter((rep) => rep.outcome === 'kept').length;
  const lifts = counted.filter((rep) => rep.outcome === 'lifted');
  const voids = { 'not-offered': 0, 'handler-says': 0, paused: 0, finished: 0 };
  for (const { voidReason } of reps) if (voidReason) voids[voidReason]++;
  return {
    ...{ kept, lifts, voids },
    trials: kept + lifts.length,
    warmUps: tried.filter((rep) => rep.isWarmUp),
    short: counted.length - kept - lifts.length,
  };
}

/** The whole session, the finding first. */
export function summarize(state: SessionState): Summary {
  const heaps = tally(state.reps);
  const gist = [sayLifts(heaps), sayMoves(state)];
  const grounds = [sayOthers(heaps), sayTime(state), ...sayHearing(state), sayTakenBack(state), sayRange(heaps)];
  const said = (sentences: readonly (string | null)[]) => sentences.filter((sentence) => sentence !== null);
  return { finding: sayTrials(heaps), gist: said(gist), grounds: said(grounds) };
}

/** "9 of 12 trials kept." */
export function sayTrials({ kept, trials }: Tally): string {
  if (trials === 0) return t('No trials yet.');
  return t(trials === 1 ? '{kept} of 1 trial kept.' : '{kept} of {n} trials kept.', { kept, n: trials });
}

/** "2 lifts, both on the 5 s step." · "3 lifts: 2 on the 5 s step, 1 on the 3 s step." */
export function sayLifts({ lifts, trials }: Tally): string | null {
  if (trials === 0) return null;
  if (lifts.length === 0) return t(trials === 1 ? 'No lift in 1 trial.' : 'No lift in {n} trials.', { n: trials });
  const places = countBy(lifts.map(({ step }) => shortStep(step)));
  const [first] = places;
  if (places.length === 1 && first) return sayOnePlace(first.n, onStep(first.name));
  return t('{n} lifts: {where}.', { n: lifts.length, where: sayPlaces(places) });
}

function sayOnePlace(n: number, where: string): string {
  if (n === 1) return t('1 lift, {where}.', { where });
  return n === 2 ? t('2 lifts, both {where}.', { where }) : t('{n} lifts, all {where}.', { n, where });
}

/** The three places with most lifts; more would be a list, and the picture shows it better. */
function sayPlaces(places: readonly { readonly name: string; readonly n: number }[]): string {
  const said = places.slice(0, places.length === 4 ? 4 : 3);
  const others = places.slice(said.length);
  const rest = others.reduce((sum, { n }) => sum + n, 0);
  return [
    ...said.map(({ name, n }) => `${n} ${onStep(name)}`),
    ...(rest ? [t('{n} on {steps} other steps', { n: rest, steps: others.length })] : []),
  ].join(', ');
}

/** "on the 5 s step": the step's seconds, not the seconds held. */
function onStep(name: string): string {
  return name.endsWith(' s') ? t('on the {seconds} step', { seconds: name }) : t('on {step}', { step: name });
}

/** What so few trials can tell of the next ones. Below five only the counts are said (CRITERION). */
export function sayRange({ kept, trials }: Tally): string | null {
  if (trials < FEWEST_FOR_INTERVAL) return null;
  const { lower, upper } = wilson(kept, trials);
  const [low, high] = [Math.round(100 * lower), Math.round(100 * upper)];
  return t('{n} trials fit a dog that keeps anything from {low} to {high} of 100 on these steps.', { n: trials, low, high });
}

/** Warm-ups, short and void reps, named apart. */
export function sayOthers({ warmUps, short, voids }: Tally): string | null {
  const lifted = warmUps.filter(({ outcome }) => outcome === 'lifted').length;
  const parts = [
    warmUps.length && sayWarmUps(warmUps.length, lifted),
    short && t('{n} short', { n: short }),
    voids['not-offered'] && t('{n} not offered', { n: voids['not-offered'] }),
    voids['handler-says'] && saySlips(voids['handler-says']),
    voids.paused + voids.finished && t('{n} broken off', { n: voids.paused + voids.finished }),
  ].filter((part) => part !== 0);
  return parts.length === 0 ? null : t('Not counted as trials: {parts}.', { parts: parts.join(', ') });
}

function sayWarmUps(n: number, lifted: number): string {
  const warmUps = t(n === 1 ? '1 warm-up' : '{n} warm-ups', { n });
  return lifted ? t('{warmUps} ({n} lifted)', { warmUps, n: lifted }) : warmUps;
}

const saySlips = (n: number): string => t(n === 1 ? '1 slip or distraction' : '{n} slips or distractions', { n });

/** "From 2 s to 3 s: 2 raises, 1 half step." */
export function sayMoves(state: SessionState): string | null {
  const { reps, start, standing } = state;
  if (reps.length === 0) return null;
  const from = stepNamed(standing.steps, start.startStepId);
  const to = stepNamed(standing.steps, standing.warmUp?.toStepId ?? standing.stepId);
  if (standing.warmUp) return t('The warm-up for {to} was not over.', { to });
  const moves = sayMoveCounts(callsInOrder(state).map(({ call }) => call));
  if (moves === '') return t('All at {step}.', { step: from });
  return from === to
    ? t('From {from} and back to it: {moves}.', { from, moves })
    : t('From {from} to {to}: {moves}.', { from, to, moves });
}

function sayMoveCounts(calls: readonly Call[]): string {
  const declined = calls.filter(({ kind }) => kind === 'remain').length;
  const byHand = calls.filter(isOverruled).length - declined;
  const of = (kind: Call['kind']) => calls.filter((call) => call.kind === kind && !isOverruled(call)).length;
  const [raises, halves, returns] = [of('raise'), of('split'), of('return')];
  return [
    raises && t(raises === 1 ? '1 raise' : '{n} raises', { n: raises }),
    halves && t(halves === 1 ? '1 half step' : '{n} half steps', { n: halves }),
    returns && t(returns === 1 ? '1 return' : '{n} returns', { n: returns }),
    byHand && t(byHand === 1 ? '1 step at your word' : '{n} steps at your word', { n: byHand }),
    declined && t(declined === 1 ? '1 call not followed' : '{n} calls not followed', { n: declined }),
  ]
    .filter((part) => part !== 0)
    .join(', ');
}

/** "24 reps in 6 min 20 s, 15 treats." */
export function sayTime({ reps, latestS, pausedS, standing }: SessionState): string | null {
  if (reps.length === 0) return null;
  const said = { reps: sayReps(reps.length), length: sayLength(latestS - pausedS), treats: sayTreats(standing.today.treats) };
  if (pausedS < 1) return t('{reps} in {length}, {treats}.', said);
  return t('{reps} in {length}, {paused} paused, {treats}.', { ...said, paused: sayLength(pausedS) });
}

const sayReps = (n: number): string => t(n === 1 ? '1 rep' : '{n} reps', { n });

const sayTreats = (n: number): string => t(n === 1 ? '1 treat' : '{n} treats', { n });

/** How sure the ear was, and how long it could not hear. */
export function sayHearing(state: SessionState): readonly string[] {
  const events = standingEvents(state.log);
  const unsure = events.filter(({ type }) => type === 'word-unsure').length;
  const hasEar = events.some((event) => event.type === 'ear-changed' && event.body.state !== 'off');
  const deafS = deafForS(state);
  const said: string[] = [];
  if (unsure > 0) said.push(sayUnsure(unsure));
  if (deafS >= 1) said.push(sayDeaf(deafS, state.latestS - state.pausedS));
  if (said.length === 0 && hasEar) said.push(t('The ear heard all the time, and no stretch was unsure.'));
  return said;
}

function sayUnsure(n: number): string {
  return t(n === 1 ? '1 stretch was unsure and did not count.' : '{n} stretches were unsure and did not count.', { n });
}

function sayDeaf(deafS: Seconds, allS: Seconds): string {
  return t('The ear could not hear for {deaf} of {all}.', { deaf: sayLength(deafS), all: sayLength(allS) });
}

function sayTakenBack({ log }: SessionState): string | null {
  const n = undoneIds(log).size;
  return n === 0 ? null : t(n === 1 ? '1 word was taken back.' : '{n} words were taken back.', { n });
}

const DEAF: readonly EarState[] = ['restarting', 'degraded', 'blocked', 'suspended'];

/** Time outside of pauses in which an ear was meant to hear and none could, s. */
export function deafForS(state: SessionState): Seconds {
  const ears = new Map<string, EarState>();
  let [paused, sinceS, deafS] = [false, 0, 0];
  const passTo = (atS: Seconds) => {
    if (!paused && isDeaf([...ears.values()])) deafS += Math.max(0, atS - sinceS);
    sinceS = Math.max(sinceS, atS);
  };
  for (const event of standingEvents(state.log)) {
    if (event.type === 'ear-changed' || event.type === 'paused' || event.type === 'resumed') passTo(event.body.atS);
    if (event.type === 'ear-changed') ears.set(event.body.ear, event.body.state);
    if (event.type === 'paused' || event.type === 'resumed') paused = event.type === 'paused';
  }
  passTo(state.latestS);
  return deafS;
}

function isDeaf(ears: readonly EarState[]): boolean {
  return ears.some((ear) => DEAF.includes(ear)) && !ears.includes('listening');
}

/** The picture in one sentence, for whoever hears it. */
export function sayPicture(reps: readonly Rep[]): string {
  if (reps.length === 0) return t('Bars on stairs: no reps yet.');
  const n = countBy(reps.map(({ step }) => step.id)).length;
  const steps = t(n === 1 ? '1 step' : '{n} steps', { n });
  return `${t('Bars on stairs: {reps} on {steps}.', { reps: sayReps(reps.length), steps })} ${sayTrials(tally(reps))}`;
}

/** "Rep 7, Lie flat 5 s. Lifted after 2.5 s." */
export function sayRep(rep: Rep): string {
  const said = { n: rep.n, step: rep.step.title, outcome: sayHeldAfter(rep, capital(sayOutcome(rep.outcome, rep.voidReason))) };
  return rep.isWarmUp ? t('Rep {n}, warm-up, {step}. {outcome}.', said) : t('Rep {n}, {step}. {outcome}.', said);
}

export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function sayHeldAfter({ outcome, voidReason, heldForS }: Rep, words: string): string {
  if (voidReason === 'not-offered') return words;
  const said = { outcome: words, held: sayHeld(heldForS) };
  return outcome === 'kept' ? t('{outcome}, held {held}#after the word kept', said) : t('{outcome} after {held}', said);
}

/** Floor, not round: 4.96 s held is not yet 5.0 s. */
export function sayHeld(heldForS: Seconds): string {
  return t('{n} s', { n: fixed(Math.floor(10 * heldForS + 1e-6) / 10, 1) });
}

/** "6 min 20 s". */
export function sayLength(lengthS: Seconds): string {
  const wholeS = Math.round(Math.max(0, lengthS));
  const [minutes, seconds] = [Math.floor(wholeS / 60), wholeS % 60];
  if (minutes === 0) return t('{n} s', { n: seconds });
  return seconds === 0 ? t('{n} min', { n: minutes }) : t('{n} min {seconds} s', { n: minutes, seconds });
}

/** A moment on the session clock: "1:05". */
export function sayMoment(atS: Seconds): string {
  const wholeS = Math.floor(Math.max(0, atS));
  return `${Math.floor(wholeS / 60)}:${String(wholeS % 60).padStart(2, '0')}`;
}

/** "5 s", or the name of a handling. */
export function shortStep(step: Step): string {
  return step.kind === 'duration' && step.holdForS > 0 ? t('{n} s', { n: step.holdForS }) : t('“{title}”', { title: step.title });
}

function stepNamed(steps: readonly Step[], id: string): string {
  const step = steps[indexOfStep(steps, id)];
  return step ? shortStep(step) : id;
}

function countBy(names: readonly string[]): readonly { readonly name: string; readonly n: number }[] {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].map(([name, n]) => ({ name, n })).sort((a, b) => b.n - a.n);
}
