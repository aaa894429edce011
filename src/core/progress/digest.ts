/**
 * Boils one session down to what progress asks of it: counts and hold times a step. Made once when a session ends or is put right;
 * it holds nothing that its events do not, so it can be thrown away and made again.
 */
import { foldCorrected } from '../correct.ts';
import type { SessionEvent } from '../event.ts';
import { fold, type Rep, type SessionState } from '../fold.ts';
import { areaOf, type BodyArea, criterionS, type Step } from '../plan.ts';
import { ruleOf, type SessionRule } from '../rule.ts';
import { standingEvents } from '../standing.ts';
import type { Seconds } from '../units.ts';
import { type Day, dayOf } from './day.ts';

/** One step within one session. Warm-ups and void reps are counted apart: they are no trials. */
export interface StepDigest {
  readonly stepId: string;
  readonly title: string;
  readonly area: BodyArea;
  readonly criterionS: Seconds;
  readonly kept: number;
  readonly lifted: number;
  /** Reps that are no trials: warm-up, short, void. */
  readonly others: number;
  /** Holds that the marker cut short, s: kept and short ones. */
  readonly markedS: readonly Seconds[];
  /** Holds that ended with the head up, s. */
  readonly liftedS: readonly Seconds[];
  /** Time from the end of the rep before to the end of each, pauses taken out, s. */
  readonly spanS: Seconds;
}

export interface SessionDigest {
  readonly id: string;
  readonly dogId: string;
  readonly planId: string;
  readonly planTitle: string;
  readonly handler: string;
  readonly place: string;
  /** Named when it is shown, in the language spoken then. */
  readonly rule: SessionRule;
  /** An examination: told, and never counted as training. Absent: practice. */
  readonly kind?: 'exam';
  readonly startedAt: string;
  readonly atMs: number;
  readonly day: Day;
  /** In the order in which they were first practised. */
  readonly steps: readonly StepDigest[];
  /** Places of the body at which lifts gathered so that the veterinarian was named. */
  readonly veterinarianFor: readonly BodyArea[];
}

/** Digests are kept between visits: a new number when they hold something else, so that those made before are made anew. */
export const DIGEST_VERSION = 1;

/** Null: no session can be made of these events. */
export function digestLog(log: readonly SessionEvent[]): SessionDigest | null {
  // Few sessions are put right, and folding those that were not is ten times quicker.
  if (!log.some(({ type }) => type === 'corrected')) {
    const folded = fold(log);
    return folded.ok ? digestOf(folded.state) : null;
  }
  const corrected = foldCorrected(log);
  return corrected.ok ? digestOf(corrected.session.state) : null;
}

export function digestOf(state: SessionState): SessionDigest {
  const { start, startedAt, log, reps } = state;
  const pauses = pausesOf(state);
  const steps = new Map<string, Growing>();
  let fromS: Seconds = 0;
  for (const rep of reps) {
    const grown = steps.get(rep.step.id) ?? begin(rep.step);
    steps.set(rep.step.id, grown);
    add(grown, rep, spanWithout(pauses, fromS, rep.endAtS));
    fromS = Math.max(fromS, rep.endAtS);
  }
  return {
    id: log[0]?.session ?? '',
    ...(start.kind && { kind: start.kind }),
    ...{ dogId: start.dogId, planId: start.planId, planTitle: start.planTitle, handler: start.handler, place: start.place },
    ...{
      rule: ruleOf(start.rule),
      startedAt,
      atMs: Date.parse(startedAt),
      day: dayOf(startedAt),
      steps: [...steps.values()],
      veterinarianFor: veterinarianFor(reps),
    },
  };
}

function veterinarianFor(reps: readonly Rep[]): readonly BodyArea[] {
  const reasons = reps.flatMap(({ calls }) => calls.flatMap((call) => call.reasons));
  return [...new Set(reasons.flatMap((why) => (why.kind === 'area-alarm' && why.level === 'veterinarian' ? [why.area] : [])))];
}

type Growing = { -readonly [K in keyof StepDigest]: StepDigest[K] } & { markedS: Seconds[]; liftedS: Seconds[] };

function begin(step: Step): Growing {
  return {
    ...{ stepId: step.id, title: step.title, area: areaOf(step), criterionS: criterionS(step) },
    ...{ kept: 0, lifted: 0, others: 0, markedS: [], liftedS: [], spanS: 0 },
  };
}

function add(step: Growing, rep: Rep, spanS: Seconds): void {
  step.spanS += spanS;
  if (rep.isWarmUp || rep.outcome === 'short' || rep.outcome === 'void') step.others += 1;
  else step[rep.outcome] += 1;
  // A warm-up's hold is a hold like any other; only a void one says nothing of the dog.
  if (rep.outcome === 'lifted') step.liftedS.push(milli(rep.heldForS));
  else if (rep.outcome !== 'void') step.markedS.push(milli(rep.heldForS));
}

const milli = (s: Seconds): Seconds => Math.round(1000 * s) / 1000;

type Pause = readonly [fromS: Seconds, toS: Seconds];

function pausesOf({ log, pausedS, latestS }: SessionState): readonly Pause[] {
  if (pausedS === 0) return [];
  const pauses: Pause[] = [];
  let sinceS: Seconds | null = null;
  for (const event of standingEvents(log)) {
    if (event.type === 'paused') sinceS ??= event.body.atS;
    if (event.type !== 'resumed' || sinceS === null) continue;
    pauses.push([sinceS, event.body.atS]);
    sinceS = null;
  }
  return sinceS === null ? pauses : [...pauses, [sinceS, latestS]];
}

function spanWithout(pauses: readonly Pause[], fromS: Seconds, toS: Seconds): Seconds {
  const paused = pauses.reduce((sum, [a, b]) => sum + Math.max(0, Math.min(b, toS) - Math.max(a, fromS)), 0);
  return Math.max(0, toS - fromS - paused);
}
