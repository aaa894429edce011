/** What lies behind one bar or one flag: the words heard, how long it was held, what the engine made of it. */
import type { CallsBeside } from '../../core/correct.ts';
import type { Rep, SessionState } from '../../core/fold.ts';
import { fixed, t } from '../../core/language.ts';
import type { PlacedCall } from '../../core/placed-calls.ts';
import { criterionS } from '../../core/plan.ts';
import { sayCall, sayOutcome } from '../../core/sentences.ts';
import { capital, heardIn, sayHeld, sayMoment } from '../../core/summary.ts';
import type { Heard, Unsure } from '../../core/word.ts';
import { sayNearest, wordName } from '../parts/word-names.ts';
import { type Picked, sayFlag } from '../picture/stairs.tsx';
import { unbroken } from '../picture/unbroken.ts';
import { sayAsHeard, sayBeside } from './beside-words.ts';
import css from './review.module.css';

export interface DetailProps {
  readonly state: SessionState;
  readonly calls: readonly PlacedCall[];
  readonly picked: Picked | null;
  /** What the rule made of each rep. */
  readonly beside?: readonly CallsBeside[] | undefined;
  /** The session as it was heard, for the reps that were put right. */
  readonly heard?: { readonly original: SessionState; readonly putRight: ReadonlySet<number> } | undefined;
}

/** Says itself when something is picked; until then it says that something can be. */
export function Detail(props: DetailProps) {
  return (
    <div className={css.detail} role="status">
      <Chosen {...props} />
    </div>
  );
}

function Chosen({ state, calls, picked, beside, heard }: DetailProps) {
  if (!picked) return <p className="soft">{t('Pick a bar to see what was heard and to put it right, a flag to see why.')}</p>;
  if (picked.kind === 'rep') {
    const rep = state.reps[picked.n - 1];
    return rep ? <RepDetail {...{ state, calls, rep, heard }} thought={beside?.[rep.n - 1]} /> : null;
  }
  const placed = calls.filter(({ afterRep }) => afterRep === picked.afterRep)[picked.index];
  return placed ? <CallDetail state={state} placed={placed} /> : null;
}

function CallDetail({ state, placed }: { state: SessionState; placed: PlacedCall }) {
  return (
    <>
      <h2>{sayFlag(placed)}</h2>
      <p>{unbroken(sayCall(placed.call, state.standing.steps))}</p>
    </>
  );
}

interface RepDetailProps extends Pick<DetailProps, 'state' | 'calls' | 'heard'> {
  readonly rep: Rep;
  readonly thought: CallsBeside | undefined;
}

function RepDetail({ state, calls, rep, thought, heard }: RepDetailProps) {
  const called = calls.filter(({ afterRep }) => afterRep === rep.n);
  const instead = thought && sayBeside(thought);
  return (
    <>
      <h2>{rep.isWarmUp ? t('Rep {n}, warm-up', { n: rep.n }) : t('Rep {n}', { n: rep.n })}</h2>
      <p>
        {capital(sayOutcome(rep.outcome, rep.voidReason))}. {unbroken(sayHold(rep))}
      </p>
      {heard?.putRight.has(rep.n) ? (
        <p className={css.putRight}>{t('Put right. {heard}', { heard: sayAsHeard(heard.original, state, rep) })}</p>
      ) : null}
      {sayLatency(state, rep)}
      {thought && thought.trials.count > 0 ? (
        <p>{t('Kept on this step so far: {kept} of {of}.', { kept: thought.trials.kept, of: thought.trials.count })}</p>
      ) : null}
      {/* Where words can be put right, they are listed there. */}
      {thought ? null : (
        <ul className={css.heard}>
          {heardIn(state, rep).map((heard) => (
            <li key={heard.startedAtS}>
              <span className={css.when}>{sayMoment(heard.startedAtS)}</span>
              <span>{'word' in heard ? sayHeardWord(heard) : sayUnsureStretch(heard)}</span>
            </li>
          ))}
        </ul>
      )}
      {called.length === 0 ? <p className="soft">{sayNoCall(rep)}</p> : null}
      {called.map(({ call }) => (
        <p key={call.kind}>{unbroken(sayCall(call, state.standing.steps))}</p>
      ))}
      {instead ? (
        <p className={css.putRight}>{t('Put right, it would have called {calls}.', { calls: instead.wouldCall })}</p>
      ) : null}
    </>
  );
}

function sayHold({ step, outcome, voidReason, heldForS, restarts }: Rep): string {
  if (voidReason === 'not-offered') return t('The step was {title}.', { title: step.title });
  const asked = criterionS(step);
  const held = sayHeld(heldForS);
  return [`${step.title}: ${sayOfAsked(held, asked, outcome === 'kept')}.`, sayRestarts(restarts)].filter(Boolean).join(' ');
}

/** Paid at once is what such a step asks for; it was paid only if the rep was kept. */
function sayOfAsked(held: string, asked: number, isPaid: boolean): string {
  if (asked > 0) return t('held {held} of {asked} s', { held, asked });
  return isPaid ? t('held {held}, paid at once', { held }) : t('held {held}, not paid', { held });
}

function sayRestarts(n: number): string {
  if (n === 0) return '';
  return n === 1
    ? t('Hold was said again once; the last one counts.')
    : t('Hold was said again {n} times; the last one counts.', { n });
}

/** No cue is heard here: the time runs from the end of the rep before, the eating of the treat included. */
function sayLatency({ reps, log }: SessionState, rep: Rep) {
  const before = reps[rep.n - 2];
  if (!before || rep.voidReason === 'not-offered') return null;
  const isPaused = log.some(({ type, body }) => type === 'paused' && body.atS >= before.endAtS && body.atS <= rep.holdAtS);
  if (isPaused) return <p>{t('Offered again after a pause.')}</p>;
  const latency = sayHeld(Math.max(0, rep.holdAtS - before.endAtS));
  return <p>{t('Latency: offered again {latency} after the end of the rep before.', { latency })}</p>;
}

function sayHeardWord({ word, by, confidence }: Heard): string {
  const name = wordName(word);
  if (by === 'key') return t('{word}, by key', { word: name });
  if (by === 'button') return t('{word}, by button', { word: name });
  return t('{word}, confidence {sure}', { word: name, sure: fixed(confidence, 2) });
}

function sayUnsureStretch({ nearest }: Unsure): string {
  const near = sayNearest(nearest);
  return near ? t('unsure: {near}. It did not count.', { near }) : t('unsure. It did not count.');
}

function sayNoCall({ outcome, isWarmUp }: Rep): string {
  if (outcome === 'short' || outcome === 'void') return t('It is no trial, so the rule does not count it.');
  return isWarmUp ? t('A warm-up: the rule does not count it.') : t('Nothing was called: the step stayed.');
}
