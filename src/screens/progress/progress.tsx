/** Progress over many sessions of a dog: the next thing to try, then the charts. */
import { useEffect, useMemo, useState } from 'react';
import { Link } from 'wouter';
import { t } from '../../core/language.ts';
import type { SessionDigest } from '../../core/progress/digest.ts';
import type { Progress } from '../../session/progress.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { EmptyProgress } from './empty.tsx';
import { Folds } from './folds.tsx';
import { withNamesNow } from './named-digests.ts';
import css from './progress.module.css';
import { Choices, dogsIn, useScope } from './scope.tsx';

/** @param dogId the dog to begin with. */
export function ProgressScreen({ dogId }: { dogId?: string }) {
  const progress = useProgress();
  if (!progress) return <h1 aria-busy="true">{t('Progress')}</h1>;
  return (
    <article className={css.progress}>
      <h1>{t('Progress')}</h1>
      {progress.unread > 0 ? <p>{sayUnread(progress.unread)}</p> : null}
      {progress.digests.length === 0 ? <EmptyProgress /> : <OfDog progress={progress} startWith={dogId ?? null} />}
    </article>
  );
}

function sayUnread(n: number): string {
  return n === 1
    ? t('1 session cannot be read and is not counted here. Nothing of it was deleted.')
    : t('{n} sessions cannot be read and are not counted here. Nothing of them was deleted.', { n });
}

/** Asked for anew whenever the list of sessions changes. */
function useProgress(): Progress | null {
  const { readProgress } = useIntents();
  const heads = useApp((state) => state.heads);
  const [progress, setProgress] = useState<Progress | null>(null);
  useEffect(() => {
    let wanted = heads.length >= 0;
    void readProgress().then((read) => wanted && read && setProgress(read));
    return () => {
      wanted = false;
    };
  }, [heads, readProgress]);
  return progress;
}

function OfDog({ progress, startWith }: { progress: Progress; startWith: string | null }) {
  const library = useApp((state) => state.library);
  const { digests, today } = progress;
  const named = useMemo(() => withNamesNow(digests, library), [digests, library]);
  const dogs = dogsIn(named, library.dogs);
  const [dogId, setDogId] = useState<string | null>(startWith);
  const dog = dogs.find(({ id }) => id === dogId) ?? dogs[0];
  const own = useMemo(() => named.filter((digest) => digest.dogId === dog?.id), [named, dog?.id]);
  if (!dog) return null;
  return (
    <>
      {dogs.length > 1 ? (
        <label>
          {t('Dog')}{' '}
          <select value={dog.id} onChange={(event) => setDogId(event.target.value)}>
            {dogs.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      <Scoped key={dog.id} digests={own} today={today} dogName={dog.name} />
    </>
  );
}

function Scoped({ digests, today, dogName }: { digests: readonly SessionDigest[]; today: number; dogName: string }) {
  const plans = useApp((state) => state.library.plans);
  const scope = useScope(digests);
  const ladder = plans.find(({ id }) => id === scope.planId)?.steps ?? [];
  return (
    <>
      <Choices digests={digests} ladder={ladder} scope={scope} />
      <Folds key={JSON.stringify(scope.choice)} {...{ digests, today, ladder, dogName }} choice={scope.choice}>
        <div className="row">
          <Link href="/" className="button primary">
            {t('To practise')}
          </Link>
          <Link href="/compare" className="button">
            {t('Compare two')}
          </Link>
        </div>
      </Folds>
    </>
  );
}
