/** The day itself, before it: what is to be done, how ready the dog is for each, the way there at its own pace, and what to ask for. */
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { plansOf } from '../../core/card/plans-of.ts';
import type { Dog } from '../../core/event.ts';
import { type ExamPlan, nearestExam } from '../../core/exam/exam.ts';
import { paceOf } from '../../core/exam/pace.ts';
import { readinessOf } from '../../core/exam/readiness.ts';
import { type Rehearsal as Plan, rehearse } from '../../core/exam/rehearsal.ts';
import { t } from '../../core/language.ts';
import { nameOf } from '../../core/named.ts';
import { dayOf, isoDay } from '../../core/progress/day.ts';
import type { Progress } from '../../session/progress.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { sayDate } from '../card/words.ts';
import { useProgress } from '../compare/use-progress.ts';
import { withNamesNow } from '../progress/named-digests.ts';
import { AddItem } from './add-item.tsx';
import css from './exam.module.css';
import { Items } from './items.tsx';
import { Rehearsal } from './rehearsal.tsx';
import { WhenAndWhere } from './when-and-where.tsx';
import { sayDaysLeft, sayVerdict } from './words.ts';

export function ExamScreen({ dogId }: { dogId: string }) {
  const dog = useApp((state) => state.library.dogs.find(({ id }) => id === dogId));
  const exams = useApp((state) => state.library.exams);
  const progress = useProgress();
  const [chosen, setChosen] = useState<string | null>(null);
  if (!dog)
    return (
      <div className="stack">
        <h1>{t('This dog is not on this device')}</h1>
        <Link href="/">{t('All dogs')}</Link>
      </div>
    );
  if (!progress) return <h1 aria-busy="true">{dog.name}</h1>;
  const own = exams.filter((exam) => exam.dogId === dog.id && !exam.calledOff);
  const exam = own.find(({ id }) => id === chosen) ?? nearestExam(own, dog.id, isoDay(progress.today));
  if (!exam || chosen === NEW) return <NewExam dog={dog} today={progress.today} onSaved={setChosen} />;
  return (
    <div className="stack wide">
      <Planned key={exam.id} {...{ dog, exam, progress }} />
      <Others exams={own.filter(({ id }) => id !== exam.id)} onChoose={setChosen} />
    </div>
  );
}

/** No exam is called this. */
const NEW = '';
/** Two weeks: time to practise, and soon enough to be real. */
const USUAL_DAYS = 14;

function NewExam({ dog, today, onSaved }: { dog: Dog; today: number; onSaved: (examId: string) => void }) {
  const { saveExam, newId } = useIntents();
  const save = (when: Pick<ExamPlan, 'date' | 'place'>) => {
    const exam: ExamPlan = { id: newId(), dogId: dog.id, items: [], ...when };
    void saveExam(exam).then(() => onSaved(exam.id));
  };
  return (
    <div className="stack wide">
      <h1>{t('{dog}: an examination', { dog: dog.name })}</h1>
      <p>
        {t(
          'Ask the practice what will be done, in which order and for how long. Here it is laid beside what your dog has practised; what is not ready is better told to the practice than asked of the dog.',
        )}
      </p>
      <WhenAndWhere date={isoDay(today + USUAL_DAYS)} place="" says={t('Plan it')} isPrimary onSave={save} />
    </div>
  );
}

interface PlannedProps {
  readonly dog: Dog;
  readonly exam: ExamPlan;
  readonly progress: Progress;
}

function Planned({ dog, exam, progress }: PlannedProps) {
  const library = useApp((state) => state.library);
  const { saveExam } = useIntents();
  const { today } = progress;
  const digests = withNamesNow(progress.digests, library).filter(({ dogId }) => dogId === dog.id);
  const plans = plansOf(dog.id, library.plans, digests);
  const judged = exam.items.map((item) => ({ item, readiness: readinessOf(item, plans, digests, today) }));
  const place = exam.place === '' ? '' : nameOf(library.places, exam.place);
  const pace = paceOf(digests, plans, today);
  const rehearsal = rehearse({ judged, plans, digests, pace, today, examDay: dayOf(exam.date), place });
  const save = (change: Partial<ExamPlan>) => void saveExam({ ...exam, ...change });
  return (
    <>
      <header className="stack">
        <h1>{t('{dog}: an examination', { dog: dog.name })}</h1>
        <p>
          {sayDate(dayOf(exam.date))}, {sayDaysLeft(rehearsal.daysLeft)}
          {place ? ` · ${place}` : ''}
        </p>
      </header>
      <p className={css.verdict} role="status">
        {sayVerdict(rehearsal.verdict)}
      </p>
      <TheDay exam={exam} rehearsal={rehearsal} />
      <section className="stack">
        <h2>{t('What is to be done, in this order')}</h2>
        <Items {...{ judged, today }} onChange={(items) => save({ items })} />
        <AddItem {...{ exam, plans }} onAdd={(item) => save({ items: [...exam.items, item] })} />
      </section>
      <Rehearsal {...{ rehearsal, pace, place }} />
      <details className={css.change}>
        <summary>{t('Another day, another place, or called off')}</summary>
        <WhenAndWhere date={exam.date} place={place} says={t('Save')} onSave={save} />
        <button type="button" onClick={() => save({ calledOff: true })}>
          {t('It is called off')}
        </button>
      </details>
    </>
  );
}

/** On the day the one thing to do is to begin; before it, to practise. */
function TheDay({ exam, rehearsal: { daysLeft } }: { exam: ExamPlan; rehearsal: Plan }) {
  const { examine } = useIntents();
  const [, go] = useLocation();
  const begin = () => void examine(exam.id).then((begun) => begun && go('/practice'));
  const isDay = daysLeft <= 0;
  return (
    <div className="row">
      {exam.items.length > 0 ? (
        <button type="button" className={isDay ? 'primary' : undefined} onClick={begin}>
          {isDay ? t('Begin the examination') : t('Rehearse it as on the day')}
        </button>
      ) : null}
      {isDay ? null : (
        <Link href="/" className="button">
          {t('To practice')}
        </Link>
      )}
      <Link href={`/card/${encodeURIComponent(exam.dogId)}`} className="button">
        {t('Card for the examiner')}
      </Link>
    </div>
  );
}

function Others({ exams, onChoose }: { exams: readonly ExamPlan[]; onChoose: (examId: string) => void }) {
  return (
    <section className="stack">
      {exams.length > 0 ? <h2>{t('Other examinations')}</h2> : null}
      <div className="row">
        {exams
          .toSorted((a, b) => (a.date < b.date ? 1 : -1))
          .map(({ id, date }) => (
            <button key={id} type="button" onClick={() => onChoose(id)}>
              {sayDate(dayOf(date))}
            </button>
          ))}
        <button type="button" onClick={() => onChoose(NEW)}>
          {t('Plan another')}
        </button>
      </div>
    </section>
  );
}
