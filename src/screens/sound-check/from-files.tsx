/** Adds takes of one word, or pieces of talk, from sound files, and names those that are no sound. */
import { type ChangeEvent, useState } from 'react';
import { t } from '../../core/language.ts';
import { useApp, useIntents } from '../app-context.tsx';
import css from './sound-check.module.css';

interface FromFilesProps {
  readonly word: string;
  /** What the takes are kept under. */
  readonly said: string;
  /** What they are called on the screen. */
  readonly names: string;
}

export function FromFiles({ word, said, names }: FromFilesProps) {
  const { addRecordings } = useIntents();
  const busy = useApp(({ teaching }) => teaching.kind !== 'idle');
  const [refused, setRefused] = useState<readonly string[]>([]);
  const add = async (event: ChangeEvent<HTMLInputElement>) => {
    const files = [...(event.target.files ?? [])];
    const read = await Promise.all(files.map(async (file) => ({ name: file.name, bytes: await file.arrayBuffer() })));
    setRefused(await addRecordings(word, said, read));
  };
  return (
    <>
      <label className={css.file}>
        {t('from files')}
        <input
          type="file"
          accept="audio/*"
          multiple
          aria-label={t('Recordings of “{what}” from files', { what: names })}
          disabled={busy}
          onChange={(event) => void add(event)}
        />
      </label>
      {refused.length > 0 ? (
        <p role="alert">{t('No sound in {files}: use WAV, MP3 or M4A.', { files: refused.join(', ') })}</p>
      ) : null}
    </>
  );
}
