/** A copy of everything, out and in: the handler's own file, nobody else's server. */
import { type ChangeEvent, useEffect, useState } from 'react';
import type { Intents } from '../../session/app.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { saveCopy } from '../parts/save-copy.ts';
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
        ? `${copy.name} is handed out. It holds the recordings of your words too: give it only to whom you trust.`
        : '',
    );
  };
  const look = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const [file] = input.files ?? [];
    if (!file) return;
    setOffer(null);
    setSaid('Reading…');
    const looked = await intents.lookAtImport(await file.text());
    // The same file can be chosen again after it was changed.
    input.value = '';
    setSaid(looked.ok ? '' : `Nothing was changed. ${looked.why}`);
    setOffer(looked.ok ? looked.offer : null);
  };
  const add = async ({ add: addNow }: Offer) => {
    setOffer(null);
    setSaid('Adding…');
    const result = await addNow();
    setSaid(result.ok ? `Added: ${records(result.added)}.` : `Nothing was changed. ${result.why}`);
  };
  return (
    <section className="stack">
      <h2>Your data</h2>
      <p>Everything is on this device, and only here.</p>
      <Storage />
      <div className="row">
        <button type="button" onClick={() => void save()}>
          Save a copy
        </button>
        <label className="stack">
          Add from a copy
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

const records = (count: number): string => (count === 1 ? '1 record' : `${count} records`);

const NAMES = {
  dog: ['dog', 'dogs'],
  plan: ['plan', 'plans'],
  session: ['session', 'sessions'],
  take: ['take of a word', 'takes of words'],
  other: ['other entry', 'other entries'],
} as const;

/** As many as a person reads; the rest is counted. */
const SHOWN = 20;

function Preview({ offer, onAdd, onLeave }: { offer: Offer; onAdd: () => void; onLeave: () => void }) {
  const { fresh, freshRecords, known, refused, exportedAt } = offer;
  return (
    <div className={css.preview} role="status">
      <h3>In this copy of {exportedAt.slice(0, 10)}</h3>
      <ul>
        <li>
          New:{' '}
          {fresh.length > 0
            ? fresh.map(({ what, count }) => `${count} ${NAMES[what][count === 1 ? 0 : 1]}`).join(', ')
            : 'nothing'}
          {freshRecords > 0 ? ` (${records(freshRecords)})` : ''}
        </li>
        <li>Here already: {records(known)}</li>
        <li>Refused: {records(refused.length)}</li>
      </ul>
      {refused.length > 0 ? (
        <ul className={css.refused}>
          {refused.slice(0, SHOWN).map((why) => (
            <li key={why}>{why}</li>
          ))}
          {refused.length > SHOWN ? <li>and {refused.length - SHOWN} more</li> : null}
        </ul>
      ) : null}
      <div className="row">
        {freshRecords > 0 ? (
          <button type="button" className="primary" onClick={onAdd}>
            Add what is new
          </button>
        ) : null}
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
      </div>
    </div>
  );
}
