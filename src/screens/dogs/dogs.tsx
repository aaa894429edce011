/** Everybody and everywhere: dogs, handlers and places in their lists, and those put away. */
import { Link } from 'wouter';
import type { Dog } from '../../core/event.ts';
import { t } from '../../core/language.ts';
import { handlersIn, placesIn } from '../../core/named.ts';
import { settingsOf } from '../../core/settings.ts';
import { useApp } from '../app-context.tsx';
import { AddDog } from './add-dog.tsx';
import css from './dogs.module.css';
import { NamedList } from './named-list.tsx';

export function DogsScreen() {
  const library = useApp((state) => state.library);
  const heads = useApp((state) => state.heads);
  const { handler, place } = settingsOf(library);
  const practised = heads.map(({ started }) => started.body);
  const handlers = handlersIn(
    library,
    handler,
    practised.map((start) => start.handler),
  );
  const places = placesIn(
    library,
    place,
    practised.map((start) => start.place),
  );
  return (
    <div className="stack wide">
      <h1>{t('Dogs, handlers, places')}</h1>
      <p>{t('A new name shows on old sessions too. What is put away is kept whole, and comes back with one tap.')}</p>
      <Dogs dogs={library.dogs} />
      <NamedList
        {...{ what: 'handler', title: t('Handlers'), all: handlers, currentId: handler }}
        says={t('Each has taught words of their own. Who practises is chosen on the first screen.')}
      />
      <NamedList
        {...{ what: 'place', title: t('Places'), all: places, currentId: place }}
        says={t('A step that is kept at home is not yet kept elsewhere: note where you practise.')}
      />
      <Link href="/" className="button primary">
        {t('To practice')}
      </Link>
    </div>
  );
}

function Dogs({ dogs }: { dogs: readonly Dog[] }) {
  const away = dogs.filter(({ archived }) => archived);
  return (
    <section className="stack">
      <h2>{t('Dogs')}</h2>
      <DogLines dogs={dogs.filter(({ archived }) => !archived)} />
      <AddDog />
      {away.length === 0 ? null : (
        <details className={css.away} open>
          <summary>{t('Put away: {n}', { n: away.length })}</summary>
          <DogLines dogs={away} />
        </details>
      )}
    </section>
  );
}

function DogLines({ dogs }: { dogs: readonly Dog[] }) {
  return (
    <ul className={css.list}>
      {dogs.map(({ id, name, invented, owner }) => (
        <li key={id} className={css.line}>
          <span>
            {name}
            {owner ? <span className="soft"> · {owner}</span> : null}
            {invented ? <span className="soft"> · {t('invented')}</span> : null}
          </span>
          <Link href={`/dogs/${encodeURIComponent(id)}`} className="button" aria-label={t('About {dog}', { dog: name })}>
            {t('About')}
          </Link>
        </li>
      ))}
    </ul>
  );
}
