/** The practice screen, read from two metres: the seconds, the tread, what was heard, what the engine says. */
import { useEffect } from 'react';
import { Link, useLocation } from 'wouter';
import { stepOf } from '../../core/criterion.ts';
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { callsInOrder } from '../../core/placed-calls.ts';
import type { Step } from '../../core/plan.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { fetched } from '../parts/fetched.tsx';
import { Stairs } from '../picture/stairs.tsx';
import { Ear } from './ear.tsx';
import { Flash } from './flash.tsx';
import { LastWord } from './last-word.tsx';
import css from './practice.module.css';
import { sayStill, whatToSay } from './says.ts';
import { Tally } from './tally.tsx';
import { Tread } from './tread.tsx';
import { useUnsure, useWhole } from './use-clock.ts';

// Seldom needed: fetched when it is.
const Examining = fetched(() => import('../exam/during.tsx').then(({ Examining }) => Examining));

export function Practice() {
  const live = useApp((state) => state.live);
  const [, go] = useLocation();
  const session = live?.log[0]?.session ?? '';
  const ended = live?.phase.phase === 'ended';
  useEffect(() => {
    if (ended) go(`/review/${encodeURIComponent(session)}`);
  }, [ended, session, go]);
  if (!live) return <NothingLive />;
  if (live.start.kind === 'exam') return <Examining live={live} />;
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
      <h1>{t('No session is running')}</h1>
      <p>{t('A session begins with a tap: browsers open the microphone for nothing less.')}</p>
      <Link href="/" className="button primary">
        {t('Choose a dog')}
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
        {paused ? t('Go on') : t('Pause')}
      </button>
      <button type="button" onClick={() => void finish()}>
        {t('Finish')}
      </button>
    </header>
  );
}

function StepLine({ live }: { live: SessionState }) {
  const step = stepOf(live.standing);
  const { warmUp } = live.standing;
  return (
    <div className={css.step}>
      <div>
        <h1>{step.title}</h1>
        {warmUp ? <p className="soft">{t('Warm-up, not counted: {n} to go', { n: warmUp.left })}</p> : <Extent step={step} />}
      </div>
      <Overrule live={live} />
    </div>
  );
}

/** The handler overrules the engine; never during a hold. */
function Overrule({ live }: { live: SessionState }) {
  const { say } = useIntents();
  const waiting = live.phase.phase === 'waiting';
  return (
    <div className={css.overrule}>
      <button type="button" aria-label={t('Easier step')} disabled={!waiting} onClick={() => say('easier')}>
        −
      </button>
      <button type="button" aria-label={t('Harder step')} disabled={!waiting} onClick={() => say('harder')}>
        +
      </button>
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
  const shown = useWhole(sinceS, 1) ?? sayStill(last?.heldForS ?? 0);
  const state = phase.phase === 'holding' ? 'holding' : (last?.outcome ?? 'ready');
  return (
    <section className={css.count} data-state={state} aria-label={t('Seconds held')}>
      <div className={css.room}>
        <output className={css.number} aria-live="off">
          {shown}
        </output>
      </div>
      <Tread
        step={sinceS === null && last ? last.step : stepOf(live.standing)}
        sinceS={sinceS}
        last={sinceS === null ? last : null}
      />
    </section>
  );
}

/** One thing at a time, the most urgent first. */
function Says({ live }: { live: SessionState }) {
  const hears = useApp((state) => state.ear.state === 'listening');
  const unsure = useUnsure(live);
  const { headline, detail } = whatToSay(live, { unsure, hears });
  return (
    <div className={css.says} role="status">
      <p className={css.headline}>{headline}</p>
      <p className={css.detail}>{detail}</p>
    </div>
  );
}

function Strip({ live }: { live: SessionState }) {
  return (
    <div className={css.strip}>
      <Stairs variant="strip" reps={live.reps} steps={live.standing.steps} calls={callsInOrder(live)} />
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
        {t('Hold')}
      </button>
      <button type="button" disabled={!holding} onClick={() => say('mark')}>
        {t('Mark')}
      </button>
      <button type="button" disabled={!holding} onClick={() => say('lifted')}>
        {t('Lifted')}
      </button>
      <button type="button" disabled={paused} onClick={() => say('void')}>
        {holding ? t('Not a trial') : t('Not offered')}
      </button>
    </div>
  );
}
