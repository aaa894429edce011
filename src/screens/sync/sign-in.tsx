/** Where the server is, and as whom this device signs in there. */
import { type FormEvent, useState } from 'react';
import { t } from '../../core/language.ts';
import type { Syncing } from '../../session/app-state.ts';
import { useApp } from '../app-context.tsx';
import css from './sync.module.css';
import { sayRefusal } from './trouble-words.ts';

/** Where `npm start -- --sync` puts it. */
const USUAL_PATH = 'sync';

export function SignIn({ syncing, onDone }: { syncing: Syncing; onDone: () => void }) {
  const sync = useApp((state) => state.sync);
  const [said, setSaid] = useState('');
  const [isBusy, setIsBusy] = useState(false);
  const send = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const typed = new FormData(event.currentTarget);
    const text = (name: string) => String(typed.get(name) ?? '');
    setIsBusy(true);
    setSaid(t('Signing in…'));
    const refusal = await syncing.signIn({
      ...{ path: text('path'), user: text('user'), password: text('password') },
      keeps: typed.get('keeps') !== null,
    });
    setIsBusy(false);
    setSaid(refusal ? sayRefusal(refusal) : '');
    if (!refusal) onDone();
  };
  return (
    <form className="stack" onSubmit={(event) => void send(event)}>
      <h2>{t('Your server')}</h2>
      <div className={css.fields}>
        <label>
          {t('Path of the server')}
          <input name="path" required defaultValue={sync?.path ?? USUAL_PATH} autoCapitalize="none" spellCheck={false} />
          <span className="soft small">
            {t('A path of this page’s own address. Whoever hosts the page leads it to the server; other addresses are refused.')}
          </span>
        </label>
        <label>
          {t('Your name on the server')}
          <input
            name="user"
            required
            defaultValue={sync?.user}
            autoComplete="username"
            autoCapitalize="none"
            spellCheck={false}
          />
        </label>
        <label>
          {t('Password')}
          <input name="password" type="password" required autoComplete="current-password" />
        </label>
        <label className={css.choice}>
          <input type="checkbox" name="keeps" defaultChecked={sync?.keeps ?? false} />
          {t(
            'Keep the password and the keys of the dogs on this device. Otherwise they are asked for in each visit. Whoever opens this browser can sync then; the passphrases themselves cannot be read from it.',
          )}
        </label>
      </div>
      <button type="submit" className="primary" disabled={isBusy}>
        {t('Sign in')}
      </button>
      <p role="status">{said}</p>
    </form>
  );
}
