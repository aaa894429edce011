/** Takes a recording from the device and plays it here; nothing of it is copied or sent. */
import { type DragEvent, type RefObject, useEffect, useState } from 'react';
import { t } from '../../core/language.ts';
import css from './observe.module.css';

export function ChooseFile({ wanted, onFile }: { wanted: string | null; onFile: (file: File) => void }) {
  const [over, setOver] = useState(false);
  const take = (file: File | null | undefined) => file && onFile(file);
  const drag = (event: DragEvent, isOver: boolean) => {
    event.preventDefault();
    setOver(isOver);
  };
  return (
    <section
      className={css.drop}
      aria-label={t('The recording')}
      data-over={over}
      onDragOver={(event) => drag(event, true)}
      onDragLeave={(event) => drag(event, false)}
      onDrop={(event) => {
        drag(event, false);
        take(event.dataTransfer.files[0]);
      }}
    >
      <label>
        {wanted === null
          ? t('A video or a sound recording of this session')
          : t('To look at the places again: {file}', { file: wanted })}
        <br />
        <input type="file" accept="video/*,audio/*" onChange={(event) => take(event.target.files?.[0])} />
      </label>
      <p className="small soft">{t('Or drop it here. It plays on this device and goes nowhere.')}</p>
    </section>
  );
}

interface PlayerProps {
  readonly file: File;
  readonly video: RefObject<HTMLVideoElement | null>;
  readonly onLength: (lengthS: number) => void;
}

export function Player({ file, video, onLength }: PlayerProps) {
  const [url, setUrl] = useState<string>();
  const [broken, setBroken] = useState(false);
  useEffect(() => {
    const made = URL.createObjectURL(file);
    setUrl(made);
    setBroken(false);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  if (broken)
    return (
      <p role="alert">
        {t('This browser cannot play {file}. Save it as MP4, WebM, WAV or MP3, then choose it again.', { file: file.name })}
      </p>
    );
  return (
    // biome-ignore lint/a11y/useMediaCaption: the person who watches writes down what is said; there are no captions to show
    <video
      ref={video}
      src={url}
      controls
      playsInline
      preload="metadata"
      aria-label={file.name}
      onDurationChange={({ currentTarget }) => Number.isFinite(currentTarget.duration) && onLength(currentTarget.duration)}
      onError={() => setBroken(url !== undefined)}
    />
  );
}
