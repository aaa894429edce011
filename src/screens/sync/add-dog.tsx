/** Puts a dog of this device on the server, or brings one from there. */
import { type FormEvent, useState } from 'react';
import { t } from '../../core/language.ts';
import type { Syncing } from '../../session/app-state.ts';
import { useApp } from '../app-context.tsx';
import css from './sync.module.css';
import { sayRefusal } from './trouble-words.ts';

export function AddDog({ syncing }: { syncing: Syncing }) {
  const dogs = useApp((state) => state.library.dogs);
  const synced = useApp((state) => state.sync?.dogs);
  const offered = dogs.filter(({ id }) => !synced?.some(({ dogId }) => dogId === id));
  const [dogId, setDogId] = useState<string | null>(null);
  const [passphrase, setPassphrase] = useState('');
  const [said, setSaid] = useState('');
  const [isBusy, setIsBusy] = useState(false);
  // The one chosen may have been added in the meantime.
  const chosen = offered.find(({ id }) => id === dogId)?.id ?? '';
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const database = String(new FormData(form).get('database') ?? '');
    setIsBusy(true);
    setSaid(t('One moment…'));
    const refusal = await syncing.addDog({ database, dogId: chosen || null, passphrase });
    setIsBusy(false);
    setSaid(
      refusal
        ? sayRefusal(refusal)
        : t('Added, and on its way. Every device that has this dog needs the same database and passphrase.'),
    );
    if (refusal) return;
    setPassphrase('');
    form.reset();
  };
  return (
    <form className="stack" onSubmit={(event) => void send(event)}>
      <h2>{t('Add a dog#to sync')}</h2>
      <div className={css.fields}>
        <label>
          {t('Dog')}
          <select value={chosen} onChange={(event) => setDogId(event.target.value)}>
            <option value="">{t('one that is on the server already')}</option>
            {offered.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          {t('Database on the server')}
          <input name="database" required autoCapitalize="none" spellCheck={false} autoComplete="off" />
          <span className="soft small">
            {t('Whoever runs the server makes it and says who is let in: one for each dog, so that an owner sees only theirs.')}
          </span>
        </label>
        <label>
          {t('Passphrase of this dog')}
          <input
            value={passphrase}
            required
            autoCapitalize="none"
            spellCheck={false}
            autoComplete="off"
            onChange={(event) => setPassphrase(event.target.value)}
          />
          <span className="soft small">{t('At least 12 characters. It never leaves this device: write it down.')}</span>
        </label>
        {chosen ? (
          <button type="button" onClick={() => setPassphrase(syncing.newPassphrase())}>
            {t('Make one for me')}
          </button>
        ) : null}
      </div>
      <button type="submit" className={(synced?.length ?? 0) > 0 ? undefined : 'primary'} disabled={isBusy}>
        {t('Keep in step')}
      </button>
      <p role="status">{said}</p>
    </form>
  );
}
