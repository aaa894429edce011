/** The examination itself, read from two metres: one thing at a time, its seconds, and only hold, lifted and pause. Nothing is called. */
import { type ExamSeen, type ItemSeen, seenIn } from '../../core/exam/during.ts';
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { useIntents } from '../app-context.tsx';
import { OutcomeShape } from '../picture/key.tsx';
import { Ear } from '../practice/ear.tsx';
import { Flash } from '../practice/flash.tsx';
import { LastWord } from '../practice/last-word.tsx';
import { useUnsure, useWhole } from '../practice/use-clock.ts';
import css from './during.module.css';

export function Examining({ live }: { live: SessionState }) {
  const seen = seenIn(live);
  const item = seen.items[seen.at];
  return (
    <div className={css.exam}>
      <Flash />
      <header className={css.head}>
        <Ear live={live} />
        <strong>{t('{n} of {of}', { n: seen.at + 1, of: seen.items.length })}</strong>
      </header>
      {item ? <Thing item={item} /> : null}
      <Count live={live} />
      <Says live={live} seen={seen} />
      <div className={css.word}>
        <LastWord live={live} />
      </div>
      <Hand live={live} />
      <Through live={live} seen={seen} />
      <Marks seen={seen} />
    </div>
  );
}

function Thing({ item: { step, state, lifts } }: { item: ItemSeen }) {
  const isNew = state === 'open' && lifts === 0;
  return (
    <div>
      <h1 className={css.thing}>{step.title}</h1>
      {isNew && step.caution ? <p className={css.caution}>{step.caution}</p> : null}
    </div>
  );
}

function Count({ live }: { live: SessionState }) {
  const { phase, reps, standing } = live;
  const sinceS = phase.phase === 'holding' ? phase.sinceS : null;
  const last = reps.findLast(({ step }) => step.id === standing.stepId);
  const shown = useWhole(sinceS, 1) ?? Math.floor(last?.heldForS ?? 0);
  const step = standing.steps.find(({ id }) => id === standing.stepId);
  const wantedS = step?.kind === 'duration' ? step.holdForS : (step?.forS ?? 0);
  return (
    <section
      className={css.count}
      data-state={sinceS === null ? (last?.outcome ?? 'ready') : 'holding'}
      aria-label={t('Seconds held')}
    >
      <output className={css.number} aria-live="off">
        {shown}
      </output>
      <p>{t('takes {s} s', { s: wantedS })}</p>
    </section>
  );
}

function Says({ live, seen }: { live: SessionState; seen: ExamSeen }) {
  const unsure = useUnsure(live);
  return (
    <p className={css.says} role="status">
      {whatToSay(live, seen, unsure)}
    </p>
  );
}

/** One thing at a time, the most urgent first. */
function whatToSay({ phase, reps, standing }: SessionState, { items, at, done, isEnough }: ExamSeen, unsure: boolean): string {
  if (phase.phase === 'paused') return t('Everybody stops. Go on when you are ready.');
  if (unsure) return t('Unsure: say it again.');
  if (phase.phase === 'holding') return '';
  if (isEnough) return t('Twice no: leave this one, and ask the veterinarian for another way.');
  const last = reps.at(-1);
  if (last?.outcome === 'lifted' && last.step.id === standing.stepId)
    return t('Lifted: hands off. Wait until the head lies down by itself.');
  if (done === items.length) return t('All of it is done.');
  return items[at]?.state === 'done'
    ? t('Done. Next when the dog is ready.')
    : t('Say hold when the head is down, then it may begin.');
}

/** The three that there are, large enough for an elbow. */
function Hand({ live }: { live: SessionState }) {
  const { say } = useIntents();
  const { phase } = live.phase;
  const paused = phase === 'paused';
  return (
    <div className={css.hand}>
      <button type="button" disabled={paused} onClick={() => say('hold')}>
        {t('Hold')}
      </button>
      <button type="button" className={css.stop} disabled={phase !== 'holding'} onClick={() => say('lifted')}>
        {t('Lifted')}
      </button>
      <button type="button" className={paused ? 'primary' : undefined} onClick={() => say(paused ? 'resume' : 'pause')}>
        {paused ? t('Go on') : t('Pause')}
      </button>
    </div>
  );
}

/** Through the list, and out of it. A hold that is left ended well. */
function Through({ live, seen: { at, items } }: { live: SessionState; seen: ExamSeen }) {
  const { say, finish } = useIntents();
  const { phase } = live.phase;
  const holding = phase === 'holding';
  const isLast = at === items.length - 1;
  const next = () => {
    if (holding) say('mark');
    if (!isLast) say('harder');
  };
  return (
    <div className={css.through}>
      <button type="button" disabled={holding || at === 0 || phase === 'paused'} onClick={() => say('easier')}>
        {t('Back')}
      </button>
      <button type="button" disabled={phase === 'paused' || (isLast && !holding)} onClick={next}>
        {nextWords(holding, isLast)}
      </button>
      <button type="button" onClick={() => void finish()}>
        {t('Finish')}
      </button>
    </div>
  );
}

function nextWords(holding: boolean, isLast: boolean): string {
  if (isLast) return t('Done');
  return holding ? t('Done: next') : t('Next');
}

const OUTCOMES = { done: 'kept', lifted: 'lifted', open: 'void' } as const;

/** What was done so far, in the shapes of the picture. */
function Marks({ seen: { items, at } }: { seen: ExamSeen }) {
  return (
    <ol className={css.marks} aria-label={t('The list')}>
      {items.map(({ step, state }, nth) => (
        <li key={step.id} aria-current={nth === at ? 'step' : undefined}>
          <OutcomeShape outcome={OUTCOMES[state]} />
          <span className="hidden-but-read">
            {step.title}: {itemWord(state)}
          </span>
        </li>
      ))}
    </ol>
  );
}

export function itemWord(state: ItemSeen['state']): string {
  switch (state) {
    case 'done':
      return t('done');
    case 'lifted':
      return t('head up');
    case 'open':
      return t('not begun');
  }
}
