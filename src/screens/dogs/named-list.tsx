/** A list of handlers or places: add, rename, put away, bring back. */
import { type FormEvent, useState } from 'react';
import type { Named } from '../../core/event.ts';
import { t } from '../../core/language.ts';
import { namedAs } from '../../core/named.ts';
import { useIntents } from '../app-context.tsx';
import css from './dogs.module.css';

interface NamedListProps {
  readonly what: 'handler' | 'place';
  readonly title: string;
  readonly says: string;
  readonly all: readonly Named[];
  /** Chosen for the next session. */
  readonly currentId: string;
}

export function NamedList({ what, title, says, all, currentId }: NamedListProps) {
  const { saveNamed, newId } = useIntents();
  const away = all.filter(({ archived }) => archived);
  const line = (named: Named) => (
    <NamedLine
      key={named.id}
      {...{ named, isCurrent: named.id === currentId }}
      taken={all.filter(({ id }) => id !== named.id).map(({ name }) => name)}
      onSave={(changed) => void saveNamed(what, changed)}
    />
  );
  return (
    <section className="stack">
      <h2>{title}</h2>
      <p className="soft">{says}</p>
      <ul className={css.list}>{all.filter(({ archived }) => !archived).map(line)}</ul>
      <NameForm
        label={what === 'handler' ? t('Another handler') : t('Another place')}
        button={t('Add')}
        onName={(name) => void saveNamed(what, namedAs(all, name, newId))}
      />
      {away.length === 0 ? null : (
        <details className={css.away}>
          <summary>{t('Put away: {n}', { n: away.length })}</summary>
          <ul className={css.list}>{away.map(line)}</ul>
        </details>
      )}
    </section>
  );
}

interface NamedLineProps {
  readonly named: Named;
  readonly isCurrent: boolean;
  /** Names of the others: two of one name could not be told apart. */
  readonly taken: readonly string[];
  readonly onSave: (named: Named) => void;
}

function NamedLine({ named, isCurrent, taken, onSave }: NamedLineProps) {
  const [renaming, setRenaming] = useState(false);
  if (renaming)
    return (
      <li className={css.line}>
        <NameForm
          label={t('New name for {name}', { name: named.name })}
          button={t('Rename')}
          {...{ taken, first: named.name }}
          onName={(name) => {
            setRenaming(false);
            if (name !== named.name) onSave({ ...named, name });
          }}
          onCancel={() => setRenaming(false)}
        />
      </li>
    );
  return (
    <li className={css.line}>
      <span>
        {named.name}
        {isCurrent ? <span className="soft"> · {t('for the next session')}</span> : null}
      </span>
      <span className="row">
        <button type="button" aria-label={t('Rename {name}', { name: named.name })} onClick={() => setRenaming(true)}>
          {t('Rename')}
        </button>
        {isCurrent ? null : (
          <button
            type="button"
            aria-label={
              named.archived ? t('Bring back {name}', { name: named.name }) : t('Put away {name}', { name: named.name })
            }
            onClick={() => onSave({ ...named, archived: !named.archived })}
          >
            {named.archived ? t('Bring back') : t('Put away')}
          </button>
        )}
      </span>
    </li>
  );
}

interface NameFormProps {
  readonly label: string;
  readonly button: string;
  readonly first?: string;
  readonly taken?: readonly string[];
  readonly onName: (name: string) => void;
  readonly onCancel?: () => void;
}

function NameForm({ label, button, first = '', taken = [], onName, onCancel }: NameFormProps) {
  const [clash, setClash] = useState<string | null>(null);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const name = String(new FormData(form).get('name') ?? '')
      .trim()
      .normalize('NFC');
    setClash(taken.includes(name) ? name : null);
    if (name === '' || taken.includes(name)) return;
    onName(name);
    form.reset();
  };
  return (
    <form className="stack" onSubmit={submit}>
      <label>
        {label}
        <br />
        <input name="name" required maxLength={60} autoComplete="off" defaultValue={first} />
      </label>
      {clash === null ? null : (
        <p role="alert">{t('There is one called {name} already. Choose another name.', { name: clash })}</p>
      )}
      <span className="row">
        <button type="submit">{button}</button>
        {onCancel ? (
          <button type="button" onClick={onCancel}>
            {t('Not now')}
          </button>
        ) : null}
      </span>
    </form>
  );
}
