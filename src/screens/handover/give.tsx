/** Gives a plan as homework: for which dog, how often, with which words; then hands it out as a file, a code and a sheet. */
import { type FormEvent, useState } from 'react';
import { Link } from 'wouter';
import { deskDogs } from '../../core/desk/dogs.ts';
import { HOMEWORK_BOUNDS, HOMEWORK_WORDS, type Homework, latestSent } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import type { Library } from '../../core/library.ts';
import { nameOf } from '../../core/named.ts';
import type { Plan } from '../../core/plan.ts';
import { settingsOf, USUAL_SETTINGS } from '../../core/settings.ts';
import type { HomeworkDraft } from '../../session/app-state.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { HandOut } from './hand-out.tsx';
import css from './handover.module.css';
import { sayASessionsAWeek, wordMeaning } from './words.ts';

export function GiveScreen({ planId }: { planId: string }) {
  const library = useApp((state) => state.library);
  const plan = library.plans.find(({ id }) => id === planId);
  const [made, setMade] = useState<Homework | null>(null);
  if (!plan)
    return (
      <div className="stack">
        <h1>{t('There is no such plan on this device')}</h1>
        <Link href="/desk">{t('The desk')}</Link>
      </div>
    );
  const before = library.homework.given.filter((given) => given.planId === planId);
  const last = before[0] ? latestSent(before, before[0].homework.id)?.homework : undefined;
  const isAnswer = made ? made.revision > 1 : last !== undefined;
  return (
    <div className="stack wide">
      <header className="stack">
        <h1>{isAnswer ? t('Answer with an adjusted plan') : t('Give as homework')}</h1>
        <p>
          {plan.title} · {plan.steps.length === 1 ? t('1 step') : t('{n} steps', { n: plan.steps.length })}
          {made ? null : (
            <>
              {' '}
              · <Link href={`/plan/${encodeURIComponent(plan.id)}`}>{t('change the plan')}</Link>
            </>
          )}
        </p>
      </header>
      {made ? null : <GiveForm key={plan.id} plan={plan} last={last ?? null} onMade={setMade} />}
      {made ? <HandOut homework={made} isNew /> : null}
      {last && !made ? <OnceMore key={last.revision} homework={last} /> : null}
    </div>
  );
}

/** What was typed, held by the app: the way to the plan and back must not lose it. */
function useDraft(planId: string) {
  const draft = useApp((state) => state.homeworkDrafts[planId]) ?? NOTHING_TYPED;
  const { draftHomework } = useIntents();
  const keepField = ({ target }: FormEvent<HTMLFormElement>) => {
    const { name, value } = target as HTMLInputElement;
    // Another dog has another owner.
    const { ownerName: _, ...others } = draft;
    draftHomework(planId, { ...(name === 'dogId' ? others : draft), [name]: value });
  };
  return { draft, keepField, dropDraft: () => draftHomework(planId, NOTHING_TYPED) };
}

const NOTHING_TYPED: HomeworkDraft = {};

/** Folded away: under an answer that is not made yet, the file of the version before is easily taken for it. */
function OnceMore({ homework }: { homework: Homework }) {
  return (
    <details className={css.before}>
      <summary>{t('Hand out version {n} once more', { n: homework.revision })}</summary>
      <HandOut homework={homework} isNew={false} />
    </details>
  );
}

interface GiveFormProps {
  readonly plan: Plan;
  /** What was given on this plan last; an answer begins from it. */
  readonly last: Homework | null;
  readonly onMade: (homework: Homework) => void;
}

/** No dog is called this: names are trimmed. */
const ANOTHER = ' ';

function GiveForm({ plan, last, onMade }: GiveFormProps) {
  const library = useApp((state) => state.library);
  const { giveHomework } = useIntents();
  const { draft, keepField, dropDraft } = useDraft(plan.id);
  const [dogId, setDogId] = useState(() => dogAtFirst(library, plan, draft));
  const give = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const text = (field: string) =>
      String(form.get(field) ?? '')
        .trim()
        .normalize('NFC');
    const given = await giveHomework({
      planId: plan.id,
      forDog: dogId === ANOTHER ? { kind: 'new', name: text('dogName') } : { kind: 'known', id: dogId },
      ...{ ownerName: text('ownerName'), trainer: text('trainer'), caution: text('caution'), note: text('note') },
      words: { hold: text('hold'), mark: text('mark'), lifted: text('lifted') },
      sessionsAWeek: Number(form.get('sessionsAWeek')),
    });
    if (!given) return;
    dropDraft();
    onMade(given);
  };
  return (
    <form className="stack wide" onSubmit={(event) => void give(event)} onChange={keepField}>
      <div className={css.fields}>
        {last ? null : <WhichDog plan={plan} dogId={dogId} name={draft.dogName ?? ''} onChoose={setDogId} />}
        <label>
          {t('Owner')}
          <input
            name="ownerName"
            maxLength={HOMEWORK_BOUNDS.name}
            autoComplete="off"
            defaultValue={draft.ownerName ?? last?.ownerName ?? ownerOf(library, dogId)}
            key={dogId}
          />
        </label>
        <label>
          {t('Your name, as the owner knows you')}
          <input
            name="trainer"
            maxLength={HOMEWORK_BOUNDS.name}
            autoComplete="off"
            defaultValue={draft.trainer ?? last?.trainer ?? myName(library)}
          />
        </label>
        <label>
          {t('Sessions a week')}
          <input
            type="number"
            name="sessionsAWeek"
            required
            min={1}
            max={HOMEWORK_BOUNDS.sessionsAWeek}
            step={1}
            inputMode="numeric"
            defaultValue={draft.sessionsAWeek ?? last?.sessionsAWeek ?? 3}
          />
        </label>
        <fieldset>
          <legend>{t('Words to use; left empty, the owner chooses')}</legend>
          {HOMEWORK_WORDS.map((word) => (
            <label key={word}>
              <span className="soft small">{wordMeaning(word)}</span>
              <input
                name={word}
                maxLength={HOMEWORK_BOUNDS.name}
                autoComplete="off"
                defaultValue={draft[word] ?? last?.words[word] ?? ''}
              />
            </label>
          ))}
        </fieldset>
        <label>
          {t('What to mind, beside the cautions of the steps')}
          <textarea
            name="caution"
            rows={2}
            maxLength={HOMEWORK_BOUNDS.text}
            defaultValue={draft.caution ?? last?.caution ?? ''}
          />
        </label>
        <label>
          {t('A note')}
          <textarea name="note" rows={3} maxLength={HOMEWORK_BOUNDS.text} defaultValue={draft.note ?? last?.note ?? ''} />
        </label>
      </div>
      <div className="row">
        <button type="submit" className="primary">
          {last ? t('Make version {n}', { n: last.revision + 1 }) : t('Make the homework')}
        </button>
      </div>
      {last ? null : (
        <p className="soft">
          {t(
            'One session a day teaches more than three in a row, and rest days teach, too: {often} is a good beginning. Where a dog has begun to refuse a touch, its veterinarian comes before any homework.',
            { often: sayASessionsAWeek(3) },
          )}
        </p>
      )}
    </form>
  );
}

interface WhichDogProps {
  readonly plan: Plan;
  readonly dogId: string;
  /** Of a dog that is new here, as typed so far. */
  readonly name: string;
  readonly onChoose: (dogId: string) => void;
}

/** The plan's own dog, a dog of the desk, or one that is new here: it gets its own copy of the plan. */
function WhichDog({ plan, dogId, name, onChoose }: WhichDogProps) {
  const library = useApp((state) => state.library);
  const own = library.dogs.find(({ id }) => id === plan.dogId);
  const others = deskDogs(library).filter(({ id }) => id !== plan.dogId);
  return (
    <>
      <label>
        {t('For which dog')}
        <select name="dogId" value={dogId} onChange={(event) => onChoose(event.target.value)}>
          {own ? <option value={own.id}>{own.name}</option> : null}
          {others.map(({ id, name, owner }) => (
            <option key={id} value={id}>
              {owner === '' ? name : t('{dog}, {owner}', { dog: name, owner })}
            </option>
          ))}
          <option value={ANOTHER}>{t('Another dog…')}</option>
        </select>
      </label>
      {dogId === ANOTHER ? (
        <label>
          {t('The dog’s name')}
          <input name="dogName" required maxLength={HOMEWORK_BOUNDS.name} autoComplete="off" defaultValue={name} />
        </label>
      ) : null}
    </>
  );
}

const ownerOf = ({ dogs }: Library, dogId: string): string => dogs.find(({ id }) => id === dogId)?.owner ?? '';

/** Which was chosen before, or the plan's own; another, where that one is everybody's. */
function dogAtFirst({ dogs }: Library, { dogId }: Plan, draft: HomeworkDraft): string {
  if (draft.dogId === ANOTHER || dogs.some(({ id }) => id === draft.dogId)) return draft.dogId ?? ANOTHER;
  return dogs.find(({ id }) => id === dogId)?.invented ? ANOTHER : dogId;
}

/** Nobody is called by the name that the app gives to whom it does not know. */
function myName(library: Library): string {
  const { handler } = settingsOf(library);
  const name = nameOf(library.handlers, handler);
  return name === USUAL_SETTINGS.handler ? '' : name;
}
