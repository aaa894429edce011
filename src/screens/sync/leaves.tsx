/** What leaves the device, what the server learns of it, and what never leaves. */
import { t } from '../../core/language.ts';
import css from './sync.module.css';

export function Leaves() {
  return (
    <details className={css.leaves}>
      <summary>{t('What leaves this device')}</summary>
      <ul>
        <li>
          {t(
            'Of each dog that you choose: the dog, its plans, examinations and sessions, the names of handlers and places in them, and what second observers made of them. Everything is sealed with the dog’s passphrase before it leaves.',
          )}
        </li>
        <li>
          {t(
            'The server learns your name on it, the name of the database, a random name for each device, how many entries each wrote, when they were sent, and how long each is in steps of 256 bytes. It learns nothing of what they say, and not of what kind they are.',
          )}
        </li>
        <li>{t('Never: the sounds you taught, what the ear heard and learnt, your settings, homework.')}</li>
        <li>
          {t(
            'Without the passphrase nobody can read it, and nobody can bring it back: write it down. Whoever has the server can try passphrases for as long as they like: take a long one.',
          )}
        </li>
      </ul>
    </details>
  );
}
