/** Adds what an owner sent back: told first, and only then kept. */
import { type ChangeEvent, useState } from 'react';
import { t } from '../../core/language.ts';
import type { Intents } from '../../session/app.ts';
import { useIntents } from '../app-context.tsx';
import css from './desk.module.css';

type Looked = Extract<Awaited<ReturnType<Intents['lookAtReturn']>>, { ok: true }>;

export function AddReturn() {
  const { lookAtReturn } = useIntents();
  const [said, setSaid] = useState('');
  const [looked, setLooked] = useState<Looked | null>(null);
  const look = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const [file] = input.files ?? [];
    if (!file) return;
    setLooked(null);
    setSaid(t('Reading…'));
    const found = await lookAtReturn(await file.text());
    // The same file can be chosen again after it was changed.
    input.value = '';
    setSaid(found.ok ? '' : `${t('Nothing was changed.')} ${found.why}`);
    setLooked(found.ok ? found : null);
  };
  const add = async ({ offer }: Looked) => {
    setLooked(null);
    setSaid(t('Adding…'));
    const result = await offer.add();
    setSaid(result.ok ? t('Added. The desk is sorted anew.') : `${t('Nothing was changed.')} ${result.why}`);
  };
  return (
    <section className="stack">
      <h2>{t('What an owner sent')}</h2>
      <label className="stack">
        {t('Add sessions from a file')}
        <input type="file" accept="application/json,.json" onChange={(event) => void look(event)} />
      </label>
      {looked ? <Preview looked={looked} onAdd={() => void add(looked)} onLeave={() => setLooked(null)} /> : null}
      <p role="status" className="pre">
        {said}
      </p>
    </section>
  );
}

/** As many as a person reads; the rest is counted. */
const SHOWN = 20;

function Preview({ looked: { offer, dogs }, onAdd, onLeave }: { looked: Looked; onAdd: () => void; onLeave: () => void }) {
  const sessions = offer.fresh.find(({ what }) => what === 'session')?.count ?? 0;
  return (
    <div className={css.preview} role="status">
      <h3>{sayFresh(sessions, dogs, offer.freshRecords)}</h3>
      {offer.refused.length > 0 ? (
        <>
          <p>{t('Refused: {n}', { n: offer.refused.length })}</p>
          <ul className={css.refused}>
            {offer.refused.slice(0, SHOWN).map((why) => (
              <li key={why}>{why}</li>
            ))}
          </ul>
        </>
      ) : null}
      <div className="row">
        {offer.freshRecords > 0 ? (
          <button type="button" className="primary" onClick={onAdd}>
            {t('Add it')}
          </button>
        ) : null}
        <button type="button" onClick={onLeave}>
          {t('Leave it')}
        </button>
      </div>
    </div>
  );
}

function sayFresh(sessions: number, dogs: readonly string[], records: number): string {
  if (records === 0) return t('All of it is here already.');
  const names = dogs.join(', ');
  if (sessions === 0) return t('No new session; something was put right or noted.');
  return sessions === 1
    ? t('1 new session with {dogs}', { dogs: names })
    : t('{n} new sessions with {dogs}', { n: sessions, dogs: names });
}
