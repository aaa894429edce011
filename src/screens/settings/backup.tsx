/** A copy of everything, out and in: the handler's own file, nobody else's server. */
import { type ChangeEvent, useState } from 'react';
import { useApp, useIntents } from '../app-context.tsx';

const KEPT = {
  kept: 'This browser has promised to keep it.',
  'may-be-cleared': 'This browser may clear it when room is short, or after weeks unused: keep a copy.',
  'not-told': 'Keep a copy: a browser may clear what it keeps.',
} as const;

export function Backup() {
  const persistence = useApp((state) => state.persistence);
  const { exportAll, importAll, after } = useIntents();
  const [said, setSaid] = useState('');
  const save = async () => {
    const file = await exportAll();
    if (file) after(RELEASE_MS, download(file.name, file.text));
  };
  const add = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    if (!file) return;
    setSaid('Reading…');
    const result = await importAll(await file.text());
    setSaid(
      result.ok
        ? [
            `${result.added} new records added, ${result.known} were here already.`,
            ...result.refused.map((why) => `Refused: ${why}`),
          ].join('\n')
        : `Nothing was changed. ${result.why}`,
    );
  };
  return (
    <section className="stack">
      <h2>Your data</h2>
      <p>Everything is on this device, and only here. {KEPT[persistence]}</p>
      <div className="row">
        <button type="button" onClick={() => void save()}>
          Save a copy
        </button>
        <label className="stack">
          Add from a copy
          <input type="file" accept="application/json,.json" onChange={(event) => void add(event)} />
        </label>
      </div>
      {said ? (
        <p role="status" className="pre">
          {said}
        </p>
      ) : null}
    </section>
  );
}

/** Some browsers begin to read only after the click is over; by then the address must still stand, ms. */
const RELEASE_MS = 60_000;

/** Returns the way to let go of the file. */
function download(name: string, text: string): () => void {
  const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  return () => URL.revokeObjectURL(url);
}
