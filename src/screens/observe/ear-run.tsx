/** Lets the app's own ear hear the recording: whose words, how far it is, and what came of it. */
import { useEffect, useRef, useState } from 'react';
import { t } from '../../core/language.ts';
import { handlersIn } from '../../core/named.ts';
import type { Observed } from '../../core/observe/observation.ts';
import { sayLength } from '../../core/summary.ts';
import type { RecordingHeard } from '../../session/app-state.ts';
import { useApp, useIntents } from '../app-context.tsx';
import css from './observe.module.css';

/** Beyond this much is not read into memory: a phone would end the page, MB. */
const LARGEST_MB = 400;

interface EarRunProps {
  readonly file: File;
  /** Whose session it is. */
  readonly handler: string;
  readonly onHeard: (words: readonly Observed[], lengthS: number) => void;
}

type Run =
  | { readonly kind: 'idle' }
  | { readonly kind: 'hearing'; readonly untilS: number; readonly lengthS: number }
  | { readonly kind: 'ended'; readonly says: string };

export function EarRun({ file, handler, onHeard }: EarRunProps) {
  const library = useApp((state) => state.library);
  const { hearFile } = useIntents();
  const [run, setRun] = useState<Run>({ kind: 'idle' });
  const [whose, setWhose] = useState(handler);
  const wanted = useRef(true);
  useEffect(() => {
    wanted.current = true;
    return () => {
      wanted.current = false;
    };
  }, []);
  const taught = new Set(library.sounds.map((take) => take.handler));
  const offered = handlersIn(library, handler).filter(({ id }) => taught.has(id));
  const chosen = offered.some(({ id }) => id === whose) ? whose : offered[0]?.id;
  if (chosen === undefined)
    return <p className="soft">{t('Nobody has taught the ear a word yet, so it cannot score for you.')}</p>;
  const start = async () => {
    if (file.size > LARGEST_MB * 1e6) return setRun({ kind: 'ended', says: sayTooLarge() });
    wanted.current = true;
    setRun({ kind: 'hearing', untilS: 0, lengthS: 0 });
    const heard = await hearFile({
      ...{ bytes: await file.arrayBuffer(), handler: chosen },
      onProgress: (untilS, lengthS) => {
        if (wanted.current) setRun({ kind: 'hearing', untilS, lengthS });
        return wanted.current;
      },
    });
    setRun({ kind: 'ended', says: sayHeard(heard) });
    if (heard.kind === 'heard') onHeard(heard.words, heard.lengthS);
  };
  return (
    <div className="stack">
      <div className="row">
        <label>
          {t('Listens for the words of')}{' '}
          <select value={chosen} disabled={run.kind === 'hearing'} onChange={(event) => setWhose(event.target.value)}>
            {offered.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        {run.kind === 'hearing' ? (
          <button
            type="button"
            onClick={() => {
              wanted.current = false;
            }}
          >
            {t('Stop')}
          </button>
        ) : (
          <button type="button" onClick={() => void start()}>
            {t('Let the ear listen')}
          </button>
        )}
      </div>
      <Progress run={run} />
    </div>
  );
}

const sayTooLarge = (): string => t('The file is larger than {mb} MB. Save its sound alone, or cut it.', { mb: LARGEST_MB });

function Progress({ run }: { run: Run }) {
  if (run.kind === 'idle') return null;
  if (run.kind === 'ended') return <p role="status">{run.says}</p>;
  return (
    <label className={css.details}>
      {run.lengthS === 0
        ? t('Reading the file…')
        : t('Heard {until} of {length}', { until: sayLength(run.untilS), length: sayLength(run.lengthS) })}
      <br />
      <progress max={run.lengthS || 1} value={run.untilS} />
    </label>
  );
}

function sayHeard(heard: RecordingHeard): string {
  switch (heard.kind) {
    case 'heard':
      return t('It heard {n} words; {unsure} stretches were unsure and do not count.', {
        ...{ n: heard.words.length, unsure: heard.unsure },
      });
    case 'no-sound':
      return t('No sound that this browser can read is in this file.');
    case 'not-taught':
      return t('The takes of this handler are not enough to listen by. Teach more in the sound check.');
    case 'stopped':
      return t('Stopped. What was heard so far is not used.');
    case 'failed':
      return t('It could not be heard ({what}).', { what: heard.what });
  }
}
