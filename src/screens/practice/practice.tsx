/** The practice screen, read from two metres: the seconds, the tread, what was heard, what the engine says. */
import { useCallback, useEffect } from 'react';
import { Link, useLocation } from 'wouter';
import { stepOf } from '../../core/criterion.ts';
import type { Rep, SessionState } from '../../core/fold.ts';
import type { Step } from '../../core/plan.ts';
import { sayCall, sayOutcome, sayQuestion } from '../../core/sentences.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { Stairs } from '../picture/stairs.tsx';
import { Ear } from './ear.tsx';
import { Flash } from './flash.tsx';
import { LastWord } from './last-word.tsx';
import css from './practice.module.css';
import { Tally } from './tally.tsx';
import { Tread } from './tread.tsx';
import { useClock } from './use-clock.ts';

export function Practice() {
  const live = useApp((state) => state.live);
  const [, go] = useLocation();
  const session = live?.log[0]?.session ?? '';
  const ended = live?.phase.phase === 'ended';
  useEffect(() => {
    if (ended) go(`/review/${encodeURIComponent(session)}`);
  }, [ended, session, go]);
  if (!live) return <NothingLive />;
  return (
    <div className={css.practice}>
      <Flash />
      <Head live={live} />
      <StepLine live={live} />
      <Count live={live} />
      <Says live={live} />
      <LastWord live={live} />
      <Strip live={live} />
      <Hand live={live} />
      <Tally live={live} />
    </div>
  );
}

function NothingLive() {
  return (
    <div className={css.nothing}>
      <h1>No session is running</h1>
      <p>A session begins with a tap: browsers open the microphone for nothing less.</p>
      <Link href="/" className="button primary">
        Choose a dog
      </Link>
    </div>
  );
}

function Head({ live }: { live: SessionState }) {
  const { say, finish } = useIntents();
  const paused = live.phase.phase === 'paused';
  return (
    <header className={css.head}>
      <Ear live={live} />
      <button type="button" className={paused ? 'primary' : undefined} onClick={() => say(paused ? 'resume' : 'pause')}>
        {paused ? 'Go on' : 'Pause'}
      </button>
      <button type="button" onClick={() => void finish()}>
        Finish
      </button>
    </header>
  );
}

function StepLine({ live }: { live: SessionState }) {
  const step = stepOf(live.standing);
  const { warmUp } = live.standing;
  return (
    <div className={css.step}>
      <h1>{step.title}</h1>
      {warmUp ? <p className="soft">Warm-up, not counted: {warmUp.left} to go</p> : <Extent step={step} />}
    </div>
  );
}

function Extent({ step }: { step: Step }) {
  return step.kind === 'handling' ? <p className="soft">{step.extent}</p> : null;
}

function Count({ live }: { live: SessionState }) {
  const { phase } = live;
  const sinceS = phase.phase === 'holding' ? phase.sinceS : null;
  const last = live.reps.at(-1) ?? null;
  const heldS = useClock(useCallback((nowS) => (sinceS === null ? -1 : Math.max(0, Math.floor(nowS - sinceS))), [sinceS]));
  const shown = sinceS === null ? (last ? Math.floor(last.heldForS) : null) : heldS;
  const state = phase.phase === 'holding' ? 'holding' : (last?.outcome ?? 'ready');
  return (
    <section className={css.count} data-state={state} aria-label="Seconds held">
      <div className={css.room}>
        <output className={css.number} aria-live="off">
          {shown ?? 0}
        </output>
      </div>
      <Tread step={stepOf(live.standing)} sinceS={sinceS} last={sinceS === null ? last : null} />
    </section>
  );
}

/** One thing at a time, the most urgent first: a question, the engine's call, what to do next. */
function Says({ live }: { live: SessionState }) {
  return (
    <p className={css.saying} role="status">
      {whatToSay(live)}
    </p>
  );
}

function whatToSay(live: SessionState): string {
  const { phase, question, lastUnsure, reps, standing } = live;
  if (phase.phase === 'paused') return 'Paused. Nothing you say counts now. Tap “Go on” when you are ready.';
  if (question) return sayQuestion(question);
  if (lastUnsure) return `Unsure: ${lastUnsure.nearest.map(({ word }) => word).join(' or ')}? Say it again.`;
  if (phase.phase === 'holding') return caution(live) ?? '';
  const last = reps.at(-1);
  if (!last) return caution(live) ?? 'Say your hold word when the dog settles.';
  return [sayOutcome(last.outcome, last.voidReason), ...last.calls.map((call) => sayCall(call, standing.steps))].join(' · ');
}

/** Before the first rep on a step that has one. */
function caution({ standing, reps }: SessionState): string | undefined {
  const step = stepOf(standing);
  return reps.some((rep: Rep) => rep.step.id === step.id) ? undefined : step.caution;
}

function Strip({ live }: { live: SessionState }) {
  return (
    <div className={css.strip}>
      <Stairs variant="strip" reps={live.reps} steps={live.standing.steps} />
    </div>
  );
}

/** The same words by hand: the ear may be deaf, and a bystander may help. */
function Hand({ live }: { live: SessionState }) {
  const { say } = useIntents();
  const holding = live.phase.phase === 'holding';
  const paused = live.phase.phase === 'paused';
  return (
    <div className={css.hand}>
      <button type="button" disabled={paused} onClick={() => say('hold')}>
        Hold
      </button>
      <button type="button" disabled={!holding} onClick={() => say('mark')}>
        Mark
      </button>
      <button type="button" disabled={!holding} onClick={() => say('lifted')}>
        Lifted
      </button>
      <button type="button" disabled={paused} onClick={() => say('void')}>
        {holding ? 'Not a trial' : 'Not offered'}
      </button>
    </div>
  );
}
