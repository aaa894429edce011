/** One dog: its name, what is worth knowing before it is touched, its treats, and putting it away. */
import { type FormEvent, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { Dog } from '../../core/event.ts';
import { t } from '../../core/language.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { CardFields, CareFields } from './care-fields.tsx';
import css from './dogs.module.css';
import { readDog } from './read-dog.ts';
import { Estimate, TreatFields } from './treats.tsx';

export function DogScreen({ dogId }: { dogId: string }) {
  const dog = useApp((state) => state.library.dogs.find(({ id }) => id === dogId));
  if (!dog)
    return (
      <div className="stack">
        <h1>{t('This dog is not on this device')}</h1>
        <Link href="/">{t('All dogs')}</Link>
      </div>
    );
  return (
    <div className="stack wide">
      <h1>{dog.name}</h1>
      <ForExaminer dog={dog} />
      <DogForm key={dog.id} dog={dog} />
      <PutAway dog={dog} />
    </div>
  );
}

/** What the dog's page leads to, for the veterinarian or the groomer. */
function ForExaminer({ dog }: { dog: Dog }) {
  const id = encodeURIComponent(dog.id);
  return (
    <nav className="row" aria-label={t('For an examination')}>
      <Link href={`/card/${id}`} className="button">
        {t('Card for the examiner')}
      </Link>
      <Link href={`/exam/${id}`} className="button">
        {t('Plan an examination')}
      </Link>
    </nav>
  );
}

function DogForm({ dog }: { dog: Dog }) {
  const { saveDog } = useIntents();
  const [typed, setTyped] = useState(dog);
  const [said, setSaid] = useState('');
  const read = (form: HTMLFormElement) => readDog(new FormData(form), dog);
  const save = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const changed = read(event.currentTarget);
    if (!changed) return;
    await saveDog(changed);
    setSaid(t('Saved.'));
  };
  const follow = (event: FormEvent<HTMLFormElement>) => {
    setSaid('');
    setTyped(read(event.currentTarget) ?? dog);
  };
  return (
    <form className="stack wide" onSubmit={(event) => void save(event)} onChange={follow}>
      <section className={css.fields}>
        <label>
          {t('Name')}
          <input name="name" required maxLength={60} autoComplete="off" defaultValue={dog.name} />
        </label>
        <label>
          {t('Owner, where the dog is not your own')}
          <input name="owner" maxLength={60} autoComplete="off" defaultValue={dog.owner ?? ''} />
        </label>
      </section>
      <section className="stack">
        <h2>{t('Worth knowing')}</h2>
        <div className={css.fields}>
          <CareFields dog={dog} />
          <CardFields dog={dog} />
          <label>
            {t('Anything else')}
            <textarea name="notes" rows={2} maxLength={2000} defaultValue={dog.notes} />
          </label>
        </div>
        <p className="soft">
          {t(
            'A dog that has begun to refuse a touch, or flinches, may be in pain: ask your veterinarian before you practise there.',
          )}
        </p>
      </section>
      <section className="stack">
        <h2>{t('Treats')}</h2>
        <div className={css.fields}>
          <TreatFields dog={dog} />
        </div>
        <Estimate dog={typed} />
      </section>
      <div className="row">
        <button type="submit" className="primary">
          {t('Save')}
        </button>
        <span role="status">{said}</span>
      </div>
    </form>
  );
}

function PutAway({ dog }: { dog: Dog }) {
  const { saveDog } = useIntents();
  const [, go] = useLocation();
  const away = dog.archived ?? false;
  const turn = () => void saveDog({ ...dog, archived: !away }).then(() => go(away ? '/' : '/dogs'));
  return (
    <section className="stack">
      <h2>{away ? t('Put away#is') : t('Not practising any more?')}</h2>
      <p>
        {away
          ? t('{dog} is not shown on the first screen. Everything is kept.', { dog: dog.name })
          : t('Put away, {dog} leaves the first screen. Its plans, sessions and notes are kept, and it can come back.', {
              dog: dog.name,
            })}
      </p>
      <button type="button" onClick={turn}>
        {away ? t('Bring back') : t('Put away')}
      </button>
    </section>
  );
}
