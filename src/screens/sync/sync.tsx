/** Keeps dogs in step over the handler's own server: off until switched on, and everything that can stand in the way in plain words. */
import { useEffect, useState } from 'react';
import { t } from '../../core/language.ts';
import type { Syncing } from '../../session/app-state.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { AddDog } from './add-dog.tsx';
import { Leaves } from './leaves.tsx';
import { SignIn } from './sign-in.tsx';
import css from './sync.module.css';
import { SyncedDog } from './synced-dog.tsx';

export function SyncScreen() {
  const syncing = useSyncing();
  const sync = useApp((state) => state.sync);
  const [signsInAnew, setSignsInAnew] = useState(false);
  if (!syncing) return <h1>{t('More than one device')}</h1>;
  const isSignedIn = sync?.hasPassword && !signsInAnew;
  return (
    <div className="stack wide">
      <section className="stack">
        <h1>{t('More than one device')}</h1>
        <p>
          {t(
            'Your dogs stay in step between your devices, or between you and the people you coach, over a server of your own. It is off until you switch it on.',
          )}
        </p>
        <Leaves />
      </section>
      {isSignedIn ? (
        <>
          <SignedIn syncing={syncing} onAnew={() => setSignsInAnew(true)} />
          <AddDog syncing={syncing} />
          <Stop syncing={syncing} />
        </>
      ) : (
        <SignIn syncing={syncing} onDone={() => setSignsInAnew(false)} />
      )}
    </div>
  );
}

/** Null while it is opened. */
function useSyncing(): Syncing | null {
  const { syncing } = useIntents();
  const [open, setOpen] = useState<Syncing | null>(null);
  useEffect(() => {
    void syncing().then((opened) => {
      setOpen(opened);
      void opened?.count();
    });
  }, [syncing]);
  return open;
}

function SignedIn({ syncing, onAnew }: { syncing: Syncing; onAnew: () => void }) {
  const sync = useApp((state) => state.sync);
  if (!sync) return null;
  const { user, dogs, isBusy } = sync;
  return (
    <section className="stack">
      <div className="row">
        <p>{t('Signed in as {user}.', { user })}</p>
        <button type="button" className="plain" onClick={onAnew}>
          {t('Sign in otherwise')}
        </button>
      </div>
      {dogs.length > 0 ? (
        <>
          <ul className={css.dogs}>
            {dogs.map((dog) => (
              <SyncedDog key={dog.database} dog={dog} syncing={syncing} />
            ))}
          </ul>
          <div className="row">
            <button type="button" className="primary" disabled={isBusy} onClick={() => void syncing.syncNow()}>
              {t('Sync now')}
            </button>
            <span role="status">{isBusy ? t('Syncing…') : ''}</span>
          </div>
        </>
      ) : null}
    </section>
  );
}

function Stop({ syncing }: { syncing: Syncing }) {
  return (
    <section className="stack">
      <h2>{t('Stop syncing')}</h2>
      <p className="soft">
        {t(
          'This device forgets the server, the password and the passphrases. Your dogs stay here, and what was sent stays on the server until whoever runs it deletes it.',
        )}
      </p>
      <button type="button" onClick={() => void syncing.stop()}>
        {t('Stop syncing')}
      </button>
    </section>
  );
}
