/** A copy of everything, out and in: the handler's own file, nobody else's server. */
import { type ChangeEvent, useEffect, useState } from 'react';
import { type Message, t } from '../../core/language.ts';
import type { Intents } from '../../session/app.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { saveCopy } from '../parts/save-copy.ts';
import { sayDay } from '../parts/when.ts';
import css from './settings.module.css';
import { Storage } from './storage.tsx';

type Looked = Awaited<ReturnType<Intents['lookAtImport']>>;
type Offer = Extract<Looked, { ok: true }>['offer'];

export function Backup() {
  const intents = useIntents();
  const [said, setSaid] = useState('');
  const [offer, setOffer] = useState<Offer | null>(null);
  // What was looked at is no longer true once something was deleted.
  const heads = useApp((state) => state.heads);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of the list is what is waited for.
  useEffect(() => setOffer(null), [heads]);
  const save = async () => {
    const copy = await saveCopy(intents);
    setSaid(
      copy.kind === 'handed-out'
        ? t('{file} is handed out. It holds the recordings of your words too: give it only to whom you trust.', {
            file: copy.name,
          })
        : '',
    );
  };
  const look = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const [file] = input.files ?? [];
    if (!file) return;
    setOffer(null);
    setSaid(t('Reading…'));
    const looked = await intents.lookAtImport(await file.text());
    // The same file can be chosen again after it was changed.
    input.value = '';
    setSaid(looked.ok ? '' : t('Nothing was changed. {why}', { why: looked.why }));
    setOffer(looked.ok ? looked.offer : null);
  };
  const add = async ({ add: addNow }: Offer) => {
    setOffer(null);
    setSaid(t('Adding…'));
    const result = await addNow();
    setSaid(
      result.ok
        ? t('Added: {records}.', { records: records(result.added) })
        : t('Nothing was changed. {why}', { why: result.why }),
    );
  };
  return (
    <section className="stack">
      <h2>{t('Your data')}</h2>
      <p>{t('Everything is on this device, and only here.')}</p>
      <Storage />
      <div className="row">
        <button type="button" onClick={() => void save()}>
          {t('Save a copy')}
        </button>
        <label className="stack">
          {t('Add from a copy')}
          <input type="file" accept="application/json,.json" onChange={(event) => void look(event)} />
        </label>
      </div>
      {offer ? <Preview offer={offer} onAdd={() => void add(offer)} onLeave={() => setOffer(null)} /> : null}
      {said ? (
        <p role="status" className="pre">
          {said}
        </p>
      ) : null}
    </section>
  );
}

const records = (count: number): string => (count === 1 ? t('1 record') : t('{n} records', { n: count }));

const NAMES = {
  dog: ['1 dog', '{n} dogs'],
  plan: ['1 plan', '{n} plans'],
  session: ['1 session', '{n} sessions'],
  take: ['1 take of a word', '{n} takes of words'],
  other: ['1 other entry', '{n} other entries'],
} as const satisfies Readonly<Record<Offer['fresh'][number]['what'], readonly [one: Message, many: Message]>>;

function sayFresh({ what, count }: Offer['fresh'][number]): string {
  const [one, many] = NAMES[what];
  return count === 1 ? t(one) : t(many, { n: count });
}

/** As many as a person reads; the rest is counted. */
const SHOWN = 20;

function Preview({ offer, onAdd, onLeave }: { offer: Offer; onAdd: () => void; onLeave: () => void }) {
  const { fresh, freshRecords, known, refused, exportedAt } = offer;
  return (
    <div className={css.preview} role="status">
      <h3>{t('In this copy of {day}', { day: sayDay(exportedAt) })}</h3>
      <ul>
        <li>
          {t('New: {what}', { what: fresh.length > 0 ? fresh.map(sayFresh).join(', ') : t('nothing#new') })}
          {freshRecords > 0 ? ` (${records(freshRecords)})` : ''}
        </li>
        <li>{t('Here already: {what}', { what: records(known) })}</li>
        <li>{t('Refused: {what}', { what: records(refused.length) })}</li>
      </ul>
      {refused.length > 0 ? (
        <ul className={css.refused}>
          {refused.slice(0, SHOWN).map((why) => (
            <li key={why}>{why}</li>
          ))}
          {refused.length > SHOWN ? <li>{t('and {n} more', { n: refused.length - SHOWN })}</li> : null}
        </ul>
      ) : null}
      <div className="row">
        {freshRecords > 0 ? (
          <button type="button" className="primary" onClick={onAdd}>
            {t('Add what is new')}
          </button>
        ) : null}
        <button type="button" onClick={onLeave}>
          {t('Leave it')}
        </button>
      </div>
    </div>
  );
}
