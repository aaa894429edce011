/** Homework that was opened, before anything is kept: refused with the reason, or told and accepted for a dog. */
import { type FormEvent, useState } from 'react';
import { dogsOfOwners } from '../../core/desk/dogs.ts';
import { HOMEWORK_BOUNDS, type Homework } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import type { Intents } from '../../session/app.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { sayDay } from '../parts/when.ts';
import css from './handover.module.css';
import { Told } from './told.tsx';
import { sayChange, sayFrom, sayRefusal } from './words.ts';

type Opened = Awaited<ReturnType<Intents['openHomework']>>;
type ToldHomework = Extract<Opened, { kind: 'told' }>;

interface ArrivedProps {
  readonly opened: Opened;
  readonly onAccepted: (planId: string) => void;
  readonly onLeave: () => void;
}

export function Arrived({ opened, onAccepted, onLeave }: ArrivedProps) {
  switch (opened.kind) {
    case 'not-open':
      return (
        <Message title={t('The app is not open')} says={t('Load the page again, then open it once more.')} onLeave={onLeave} />
      );
    case 'refused':
      return (
        <Message
          title={t('This homework was not taken')}
          says={`${sayRefusal(opened.refusal)} ${t('Nothing was kept or changed.')}`}
          onLeave={onLeave}
        />
      );
    case 'own':
      return (
        <Message title={t('You gave this homework')} says={t('It is for the owner’s phone: open it there.')} onLeave={onLeave} />
      );
    case 'told':
      return <ToldFirst opened={opened} onAccepted={onAccepted} onLeave={onLeave} />;
  }
}

function Message({ title, says, onLeave }: { title: string; says: string; onLeave: () => void }) {
  return (
    <div className="stack">
      <h1>{title}</h1>
      <p role="status">{says}</p>
      <button type="button" className="primary" onClick={onLeave}>
        {t('All homework')}
      </button>
    </div>
  );
}

function ToldFirst({ opened, onAccepted, onLeave }: { opened: ToldHomework } & Pick<ArrivedProps, 'onAccepted' | 'onLeave'>) {
  const { homework, arrival } = opened;
  const { dogName, title, ownerName, givenAt } = homework;
  return (
    <div className="stack wide">
      <header className="stack">
        <h1>{title}</h1>
        <p>
          {sayFrom(homework)} · {sayDay(givenAt)} ·{' '}
          {ownerName === '' ? t('for {dog}', { dog: dogName }) : t('for {dog} and {owner}', { dog: dogName, owner: ownerName })}
        </p>
      </header>
      {arrival.kind === 'new' ? <Accept homework={homework} onAccepted={onAccepted} /> : null}
      {arrival.kind === 'newer' ? <TakeAnswer opened={opened} onAccepted={onAccepted} /> : null}
      {arrival.kind === 'new' || arrival.kind === 'newer' ? null : <Known arrival={arrival} onLeave={onLeave} />}
      <Told homework={homework} />
    </div>
  );
}

type KnownAlready = Exclude<ToldHomework['arrival'], { kind: 'new' | 'newer' }>;

function Known({ arrival, onLeave }: { arrival: KnownAlready; onLeave: () => void }) {
  return (
    <div className="stack">
      <p role="status">{sayKnown(arrival)}</p>
      <button type="button" className="primary" onClick={onLeave}>
        {t('All homework')}
      </button>
    </div>
  );
}

function sayKnown({ kind, before }: KnownAlready): string {
  const n = before.homework.revision;
  switch (kind) {
    case 'same':
      return t('It is here already. Nothing was changed.');
    case 'older':
      return t('You practise version {n} already, which is newer. Nothing was changed.', { n });
    case 'at-odds':
      return t(
        'Version {n} is here already and says something else. Both cannot be right: ask your trainer for a new version. Nothing was changed.',
        { n },
      );
  }
}

/** An answer: what it changes, then it takes the place of the version before. */
function TakeAnswer({
  opened: { homework, arrival, changes },
  onAccepted,
}: { opened: ToldHomework } & Pick<ArrivedProps, 'onAccepted'>) {
  const { acceptHomework } = useIntents();
  if (arrival.kind !== 'newer') return null;
  const take = () =>
    void acceptHomework(homework, { kind: 'known', id: arrival.before.dogId }).then((planId) => planId && onAccepted(planId));
  return (
    <section className="stack">
      <h2>{t('What is new since version {n}', { n: arrival.before.homework.revision })}</h2>
      {changes.length === 0 ? (
        <p>{t('Nothing: the same plan again.')}</p>
      ) : (
        <ul className={css.changes}>
          {changes.map((change, nth) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the list is made once and never changes its order.
            <li key={nth}>{sayChange(change)}</li>
          ))}
        </ul>
      )}
      <p className="soft">{t('Your sessions so far stay with it, and the next one begins where you stand.')}</p>
      <button type="button" className="primary" onClick={take}>
        {t('Go on with version {n}', { n: homework.revision })}
      </button>
    </section>
  );
}

/** No dog is called this: names are trimmed. */
const ANOTHER = ' ';

function Accept({ homework, onAccepted }: { homework: Homework } & Pick<ArrivedProps, 'onAccepted'>) {
  const library = useApp((state) => state.library);
  const { acceptHomework } = useIntents();
  const others = dogsOfOwners(library);
  // The invented dog is everybody's: no homework is for it.
  const dogs = library.dogs.filter(({ id, archived, invented }) => !archived && !invented && !others.has(id));
  const named = dogs.find(({ name }) => name.toLowerCase() === homework.dogName.toLowerCase());
  const [dogId, setDogId] = useState(named?.id ?? ANOTHER);
  const accept = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const name = String(new FormData(event.currentTarget).get('name') ?? '')
      .trim()
      .normalize('NFC');
    const planId = await acceptHomework(homework, dogId === ANOTHER ? { kind: 'new', name } : { kind: 'known', id: dogId });
    if (planId) onAccepted(planId);
  };
  return (
    <form className="stack" onSubmit={(event) => void accept(event)}>
      <div className={css.fields}>
        {dogs.length > 0 ? (
          <label>
            {t('Which of your dogs is it for?')}
            <select value={dogId} onChange={(event) => setDogId(event.target.value)}>
              {dogs.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
              <option value={ANOTHER}>{t('Another dog…')}</option>
            </select>
          </label>
        ) : null}
        {dogId === ANOTHER ? (
          <label>
            {t('Your dog’s name')}
            <input name="name" required maxLength={HOMEWORK_BOUNDS.name} autoComplete="off" defaultValue={homework.dogName} />
          </label>
        ) : null}
      </div>
      <button type="submit" className="primary">
        {t('Accept it')}
      </button>
      <p className="soft">
        {t(
          'It becomes a plan of yours. A dog that has begun to refuse a touch, or flinches, may be in pain: ask your veterinarian before you practise there.',
        )}
      </p>
    </form>
  );
}
