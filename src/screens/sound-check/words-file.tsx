/** One handler's words as a file: saved for another device, and added from one after a look at what it holds. */
import { type ChangeEvent, useState } from 'react';
import { useIntents } from '../app-context.tsx';
import { saveFile } from '../parts/save-file.ts';
import css from './sound-check.module.css';

type Looked = Awaited<ReturnType<ReturnType<typeof useIntents>['lookAtWords']>>;
type Offer = Extract<Looked, { ok: true }>['offer'];

export function WordsFile({ any }: { any: boolean }) {
  const { exportWords, lookAtWords, after } = useIntents();
  const [said, setSaid] = useState('');
  const [offer, setOffer] = useState<Offer | null>(null);
  const save = async () => {
    const file = await exportWords();
    if (file) await saveFile({ name: file.name, content: file.text, type: 'application/json' }, after);
    else setSaid('They cannot be read right now. Nothing was changed.');
  };
  const look = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const [file] = input.files ?? [];
    if (!file) return;
    setOffer(null);
    setSaid('Reading…');
    const looked = await lookAtWords(await file.text());
    input.value = '';
    setSaid(looked.ok ? '' : `Nothing was changed. ${looked.why}`);
    setOffer(looked.ok ? looked.offer : null);
  };
  const add = async (wanted: Offer, withSettings: boolean) => {
    const result = await wanted.add(withSettings);
    setOffer(null);
    setSaid(result.ok ? `Added. The ear listens to ${wanted.name} now.` : `Nothing was changed. ${result.why}`);
  };
  return (
    <section className="stack">
      <h2>5 · On another device</h2>
      <p>Your takes, your talk, what corrections taught and your keys go into one file. It holds recordings of your voice.</p>
      <div className="row">
        <button type="button" disabled={!any} onClick={() => void save()}>
          Save my words
        </button>
        <label className="stack">
          Add words from a file
          <input type="file" accept="application/json,.json" onChange={(event) => void look(event)} />
        </label>
      </div>
      {offer ? (
        <Preview offer={offer} onAdd={(withSettings) => void add(offer, withSettings)} onLeave={() => setOffer(null)} />
      ) : null}
      {said ? (
        <p role="status" className="pre">
          {said}
        </p>
      ) : null}
    </section>
  );
}

/** As many as a person reads; the rest is counted. */
const SHOWN = 10;

interface PreviewProps {
  readonly offer: Offer;
  readonly onAdd: (withSettings: boolean) => void;
  readonly onLeave: () => void;
}

function Preview({ offer, onAdd, onLeave }: PreviewProps) {
  const { name, exportedAt, fresh, freshTakes, known, forgotten, refused, others } = offer;
  const [withSettings, setWithSettings] = useState(false);
  return (
    <div className={css.preview} role="status">
      <h3>
        Words of {name}, saved {exportedAt.slice(0, 10)}
      </h3>
      <ul>
        <li>New: {fresh.length > 0 ? fresh.map(sayWord).join(', ') : 'nothing'}</li>
        <li>
          Here already: {known}
          {forgotten > 0 ? `, of which ${forgotten} ${forgotten === 1 ? 'was' : 'were'} forgotten here and stay so` : ''}
        </li>
        <li>Refused: {refused.length}</li>
      </ul>
      {refused.length > 0 ? (
        <ul className={css.refused}>
          {refused.slice(0, SHOWN).map((why) => (
            <li key={why}>{why}</li>
          ))}
          {refused.length > SHOWN ? <li>and {refused.length - SHOWN} more</li> : null}
        </ul>
      ) : null}
      {others > 0 && freshTakes > 0 ? (
        <p className={css.trouble}>
          {name} has {others} other {others === 1 ? 'take' : 'takes'} here, and these would join them. If this is somebody else,
          leave it.
        </p>
      ) : null}
      <label className={css.echo}>
        <input type="checkbox" checked={withSettings} onChange={(event) => setWithSettings(event.target.checked)} />
        Use its keys, cues and volume here too
      </label>
      <div className="row">
        <button type="button" className="primary" onClick={() => onAdd(withSettings)}>
          {freshTakes > 0 ? 'Add what is new' : `Listen to ${name}`}
        </button>
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
      </div>
    </div>
  );
}

function sayWord({ word, takes, learned }: Offer['fresh'][number]): string {
  const parts = [takes > 0 ? `${takes}` : '', learned > 0 ? `${learned} learnt` : ''].filter(Boolean);
  return `${word} (${parts.join(', ')})`;
}
