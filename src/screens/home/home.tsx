/** The first screen: for a newcomer what this is, for a returning handler one tap to practise. */
import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { dogsOfOwners } from '../../core/desk/dogs.ts';
import type { Dog } from '../../core/event.ts';
import { t } from '../../core/language.ts';
import type { NextStart } from '../../core/next-start.ts';
import { indexOfStep, type Plan } from '../../core/plan.ts';
import { sayStart } from '../../core/start-words.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { fetched } from '../parts/fetched.tsx';
import { HandlerSwitch } from '../parts/handler-switch.tsx';
import css from './home.module.css';
import { INTRODUCTION, TITLE } from './introduction.ts';
import { PlaceSwitch } from './place-switch.tsx';

/** In one piece: parts that came one by one would push each other down under a finger. */
const Below = fetched(() => import('./below.tsx').then(({ Below }) => Below));
const LessonPicture = fetched(() => import('./lesson-picture.tsx').then(({ LessonPicture }) => LessonPicture));

export function Home() {
  const all = useApp((state) => state.library.dogs);
  const library = useApp((state) => state.library);
  const ofOwners = dogsOfOwners(library);
  const here = all.filter(({ archived, id }) => !archived && !ofOwners.has(id));
  // The invented dog is there to try things out: one's own come first.
  const dogs = here.toSorted((a, b) => Number(a.invented) - Number(b.invented));
  const fresh = useApp((state) => state.heads.length === 0);
  return (
    <div className="stack wide">
      {fresh ? <Lesson /> : <h1 className="hidden-but-read">{t('Dogs')}</h1>}
      <Running />
      <GoOn />
      <div className={css.who}>
        <HandlerSwitch />
        <PlaceSwitch />
      </div>
      {dogs.map((dog) => (
        <DogPlans key={dog.id} dog={dog} />
      ))}
      <Below fresh={fresh} />
    </div>
  );
}

/** What this is, in three sentences, for somebody who opens it for the first time, with the one picture to learn. */
function Lesson() {
  return (
    <section className="stack">
      <h1>{t(TITLE)}</h1>
      <p>{t(INTRODUCTION)}</p>
      <figure className={css.picture}>
        <div className={css.strip}>
          <LessonPicture />
        </div>
        <figcaption className="small soft">
          {t(
            'A session as bars on stairs (invented): a flat bar was kept, a bar that tips up was a lift, each stair is a step of the plan.',
          )}
        </figcaption>
      </figure>
    </section>
  );
}

/** A session goes on while other screens are looked at. */
function Running() {
  const live = useApp((state) => state.live);
  if (!live || live.phase.phase === 'ended') return null;
  return (
    <section className="stack">
      <h2>{t('A session with {dog} is running', { dog: live.start.dogName })}</h2>
      <Link href="/practice" className="button primary">
        {t('Back to practice')}
      </Link>
    </section>
  );
}

function GoOn() {
  const unfinished = useApp((state) => state.unfinished);
  const practise = usePractise();
  if (!unfinished) return null;
  const { dogName, planTitle, planId } = unfinished.started.body;
  return (
    <section className="stack">
      <h2>{t('A session with {dog} was closed in the middle', { dog: dogName })}</h2>
      <p>{t('Everything up to your last word is kept.')}</p>
      <div className="row">
        <button type="button" className="primary" onClick={() => practise(planId, unfinished.id)}>
          {t('Go on: {plan}', { plan: planTitle })}
        </button>
        <Link href={`/review/${encodeURIComponent(unfinished.id)}`} className="button">
          {t('Review it instead')}
        </Link>
      </div>
    </section>
  );
}

/** From a tap: opens sound and microphone, then the practice screen. */
function usePractise(): (planId: string, sessionId?: string) => void {
  const { practise } = useIntents();
  const [, go] = useLocation();
  return (planId, sessionId) => void practise(planId, sessionId).then((begun) => begun && go('/practice'));
}

function DogPlans({ dog }: { dog: Dog }) {
  const all = useApp((state) => state.library.plans);
  const plans = all.filter(({ dogId }) => dogId === dog.id);
  return (
    <section className="stack">
      <h2>
        {dog.name}
        {dog.invented ? <span className="soft"> · {t('an invented dog, to try things out')}</span> : null}
      </h2>
      {dog.pain ? <p>{t('Pain: {what}', { what: dog.pain })}</p> : null}
      {plans.map((plan) => (
        <PlanLine key={plan.id} plan={plan} />
      ))}
      {plans.length === 0 ? (
        <Link href="/plan/new" className="button primary">
          {t('Choose a plan for {dog}', { dog: dog.name })}
        </Link>
      ) : null}
      <div className={css.links}>
        <Link href={`/dogs/${encodeURIComponent(dog.id)}`} className={css.about}>
          {t('About {dog}: notes and treats', { dog: dog.name })}
        </Link>
        <Link href={`/card/${encodeURIComponent(dog.id)}`} className={css.about}>
          {t('Card for the examiner')}
        </Link>
        <Link href={`/exam/${encodeURIComponent(dog.id)}`} className={css.about}>
          {t('Plan an examination')}
        </Link>
      </div>
    </section>
  );
}

function PlanLine({ plan }: { plan: Plan }) {
  const next = useStart(plan);
  const waits = useApp((state) => state.unfinished?.started.body.planId === plan.id);
  const practise = usePractise();
  const step = next?.steps[indexOfStep(next.steps, next.startStepId)];
  return (
    <div className={css.plan}>
      <div>
        <h3>{plan.title}</h3>
        <p className="soft">{plan.position}</p>
        <p className={css.next}>
          {step && next ? (
            <>
              {t('Next: {step}.', { step: step.title })} <span className="soft">{sayStart(next.why)}</span>
            </>
          ) : null}
        </p>
      </div>
      <div className="row">
        <button type="button" className={waits ? undefined : 'primary'} onClick={() => practise(plan.id)}>
          {t('Practise')}
        </button>
        <Link href={`/plan/${encodeURIComponent(plan.id)}`} className="button">
          {t('The plan')}
        </Link>
      </div>
    </div>
  );
}

/** Where a session on this plan would start; asked again after every session. */
function useStart(plan: Plan): NextStart | null {
  const { startOf } = useIntents();
  const heads = useApp((state) => state.heads);
  const [next, setNext] = useState<NextStart | null>(null);
  useEffect(() => {
    let wanted = heads.length >= 0;
    void startOf(plan.id).then((start) => wanted && setNext(start));
    return () => {
      wanted = false;
    };
  }, [plan, heads, startOf]);
  return next;
}
