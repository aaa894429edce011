/** One dog on the desk: why it is here, its homework and the answer to it, its latest sessions. */
import { Link } from 'wouter';
import type { DeskDog } from '../../core/desk/dogs.ts';
import { type HomeworkGiven, plansOf } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import { planAfter } from '../../core/next-start.ts';
import type { Plan } from '../../core/plan.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { fetched } from '../parts/fetched.tsx';
import { sayDay, sayWhen } from '../parts/when.ts';
import css from './desk.module.css';
import { Needs } from './desk.tsx';
import { useDesk } from './use-desk.ts';

const Result = fetched(() => import('../review-list/result.tsx').then(({ Result }) => Result));

export function DeskDogScreen({ dogId }: { dogId: string }) {
  const desk = useDesk();
  if (!desk) return <h1 aria-busy="true">{t('The desk')}</h1>;
  const row = desk.rows.find(({ dog }) => dog.id === dogId);
  if (!row)
    return (
      <div className="stack">
        <h1>{t('This dog is not on the desk')}</h1>
        <Link href="/desk">{t('The desk')}</Link>
      </div>
    );
  const { dog, needs } = row;
  return (
    <div className="stack wide">
      <header className="stack">
        <h1>{dog.owner === '' ? dog.name : t('{dog}, {owner}', { dog: dog.name, owner: dog.owner })}</h1>
        {dog.pain ? <p>{t('Pain: {pain}', { pain: dog.pain })}</p> : null}
        {needs.length > 0 ? <Needs needs={needs} /> : <p>{t('Nothing calls for you.')}</p>}
      </header>
      <HomeworkOf dog={dog} />
      <Sessions dog={dog} />
      <div className="row">
        <Link href={`/progress/${encodeURIComponent(dog.id)}`} className="button">
          {t('Progress')}
        </Link>
        <Link href={`/dogs/${encodeURIComponent(dog.id)}`} className="button">
          {t('About {dog}: notes and treats', { dog: dog.name })}
        </Link>
        <Link href="/desk" className="button">
          {t('The desk')}
        </Link>
      </div>
    </div>
  );
}

function HomeworkOf({ dog }: { dog: DeskDog }) {
  const plans = useApp((state) => state.library.plans);
  const bare = plans.filter(({ id, dogId }) => dogId === dog.id && !dog.homework.some(({ planId }) => planId === id));
  return (
    <section className="stack">
      <h2>{t('Homework')}</h2>
      {dog.homework.length === 0 ? <p>{t('None was given yet.')}</p> : null}
      {dog.homework.map((given, nth) => (
        <Given key={given.homework.id} given={given} isFirst={nth === 0} />
      ))}
      <div className="row">
        {bare.map(({ id, title }) => (
          <Link key={id} href={`/give/${encodeURIComponent(id)}`} className="button">
            {t('Give “{plan}” as homework', { plan: title })}
          </Link>
        ))}
        <Link href="/plan/new">{t('Make another plan')}</Link>
      </div>
    </section>
  );
}

function Given({ given: { homework, planId }, isFirst }: { given: HomeworkGiven; isFirst: boolean }) {
  const { title, revision, givenAt } = homework;
  return (
    <div className="stack">
      <p>{t('“{plan}”, version {n}, given on {day}.', { plan: title, n: revision, day: sayDay(givenAt) })}</p>
      <HalfSteps planId={planId} homeworkId={homework.id} />
      <div className="row">
        <Link href={`/give/${encodeURIComponent(planId)}`} className={isFirst ? 'button primary' : 'button'}>
          {t('Answer with an adjusted plan')}
        </Link>
        <Link href={`/plan/${encodeURIComponent(planId)}`} className="button">
          {t('Change the plan')}
        </Link>
      </div>
    </div>
  );
}

/** Half steps that practice put in on the owner's device are no part of the trainer's plan until they are taken over. */
function HalfSteps({ planId, homeworkId }: { planId: string; homeworkId: string }) {
  const { plans, homework } = useApp((state) => state.library);
  const { savePlan } = useIntents();
  const plan = plans.find(({ id }) => id === planId);
  const theirs = plansOf(homeworkId, homework.received);
  const after =
    plan && plans.filter(({ id }) => theirs.has(id)).reduce<Plan>((merged, { steps }) => planAfter(merged, { steps }), plan);
  const halves = after?.steps.filter(({ id }) => !plan?.steps.some((step) => step.id === id)) ?? [];
  if (!after || halves.length === 0) return null;
  return (
    <div className="stack">
      <p>
        {t('Practice put in: {steps}. An answer without them takes them out again.', {
          steps: halves.map((step) => `“${step.title}”`).join(', '),
        })}
      </p>
      <button type="button" onClick={() => void savePlan(after)}>
        {t('Take them over into the plan')}
      </button>
    </div>
  );
}

/** The latest of them; all others stand in the review and in the progress. */
const SHOWN = 8;

function Sessions({ dog }: { dog: DeskDog }) {
  const heads = useApp((state) => state.heads);
  const own = heads.filter(({ started }) => dog.dogIds.has(started.body.dogId));
  return (
    <section className="stack">
      <h2>{t('Latest sessions')}</h2>
      {own.length === 0 ? <p>{t('None has come back yet.')}</p> : null}
      <ul className={css.sessions}>
        {own.slice(0, SHOWN).map(({ id, started, lastAt }) => (
          <li key={id} className={css.session}>
            <Link href={`/review/${encodeURIComponent(id)}`}>
              {sayWhen(started.at)} · {started.body.planTitle}
            </Link>
            <Result sessionId={id} lastAt={lastAt} />
          </li>
        ))}
      </ul>
    </section>
  );
}
