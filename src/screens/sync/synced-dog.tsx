/** One dog that is kept in step: since when, what waits, what stands in the way, and what does not agree. */
import { type FormEvent, useState } from 'react';
import { t } from '../../core/language.ts';
import type { DogShown, Syncing } from '../../session/app-state.ts';
import { useApp } from '../app-context.tsx';
import { sayWhen } from '../parts/when.ts';
import css from './sync.module.css';
import { sayRefusal, sayRefused, sayUnlike } from './trouble-words.ts';

export function SyncedDog({ dog, syncing }: { dog: DogShown; syncing: Syncing }) {
  const { database, dogId, lastAt, waiting, trouble, conflicts, refused, hasPassphrase } = dog;
  const name = useApp((state) => state.library.dogs.find(({ id }) => id === dogId)?.name) ?? t('A dog of another device');
  return (
    <li className={css.dog}>
      <h2>{name}</h2>
      <p className="soft">{t('Database: {database}', { database })}</p>
      <p>
        {lastAt ? t('In step: {when}.', { when: sayWhen(lastAt) }) : t('Not in step yet.')} {sayWaiting(waiting)}
      </p>
      {trouble ? <p role="status">{sayRefusal(trouble)}</p> : null}
      {hasPassphrase ? null : <Unlock database={database} name={name} syncing={syncing} />}
      <Told title={t('Here and on the server unlike')} lines={conflicts.map(sayUnlike)} />
      <Told title={t('On the server, and not taken over')} lines={refused.map(sayRefused)} />
      <button type="button" className="plain" onClick={() => void syncing.removeDog(database)}>
        {t('Stop for {name}', { name })}
      </button>
    </li>
  );
}

function sayWaiting(waiting: number | null): string {
  if (waiting === null) return '';
  if (waiting === 0) return t('Nothing waits to be sent.');
  return waiting === 1 ? t('1 entry waits to be sent.') : t('{n} entries wait to be sent.', { n: waiting });
}

/** As many as a person reads; the rest is counted. */
const SHOWN = 20;

function Told({ title, lines }: { title: string; lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <details className={css.told}>
      <summary>
        {title}: {lines.length}
      </summary>
      <ul>
        {lines.slice(0, SHOWN).map((line) => (
          <li key={line}>{line}</li>
        ))}
        {lines.length > SHOWN ? <li>{t('and {n} more', { n: lines.length - SHOWN })}</li> : null}
      </ul>
    </details>
  );
}

function Unlock({ database, name, syncing }: { database: string; name: string; syncing: Syncing }) {
  const [said, setSaid] = useState('');
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const passphrase = String(new FormData(event.currentTarget).get('passphrase') ?? '');
    setSaid(t('One moment…'));
    const refusal = await syncing.unlock(database, passphrase);
    setSaid(refusal ? sayRefusal(refusal) : '');
  };
  return (
    <form className={css.fields} onSubmit={(event) => void send(event)}>
      <label>
        {t('Passphrase of {name}', { name })}
        <input name="passphrase" required autoCapitalize="none" spellCheck={false} autoComplete="off" />
      </label>
      <button type="submit">{t('Unlock')}</button>
      <p role="status">{said}</p>
    </form>
  );
}
