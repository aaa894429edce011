/** What the ear is doing, always visible, in words and shape. */
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { Level } from '../parts/level.tsx';
import css from './ear.module.css';
import { type EarShape, sayEar } from './ear-words.ts';
import { useUnsure } from './use-clock.ts';

export function Ear({ live }: { live: SessionState }) {
  const ear = useApp((state) => state.ear);
  const taught = useApp((state) => state.taught?.enrolled.ok ?? false);
  const paused = live.phase.phase === 'paused';
  const unsure = useUnsure(live);
  const { listenAgain } = useIntents();
  const saying = sayEar(ear, taught);
  const short = paused ? t('Paused') : unsure && saying.shape === 'hears' ? t('Unsure') : saying.short;
  return (
    <>
      <div className={css.ear} role="status">
        <EarMark shape={paused ? 'waits' : saying.shape} />
        <strong className={css.short}>{short}</strong>
        {saying.shape === 'hears' && !paused ? <Voice /> : null}
      </div>
      {saying.help && !paused ? (
        <p className={css.help}>
          {saying.help}{' '}
          {saying.shape === 'deaf' ? (
            <button type="button" className={css.again} onClick={() => void listenAgain()}>
              {t('Listen again')}
            </button>
          ) : null}
        </p>
      ) : null}
    </>
  );
}

/** That sound comes in at all: a bar that moves with it. */
function Voice() {
  return (
    <span className={css.voice}>
      <Level />
    </span>
  );
}

/** Hears: a filled disc. Waits: a ring. Deaf: a ring struck through. */
export function EarMark({ shape }: { shape: EarShape }) {
  return (
    <svg className={css.mark} data-shape={shape} viewBox="0 0 24 24" aria-hidden="true">
      <circle cx="12" cy="12" r="9" />
      {shape === 'deaf' ? <path d="M3 21 L21 3" /> : null}
    </svg>
  );
}
