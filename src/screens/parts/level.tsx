/** The level of the microphone, as a bar: grey room, dark voice. */
import { useApp } from '../app-context.tsx';
import css from './level.module.css';

/** The quietest level drawn, dB re full scale. */
const LOWEST_DB = -70;

export function Level() {
  const level = useApp((state) => state.level);
  const share = level ? Math.min(1, Math.max(0, 1 - level.nowDb / LOWEST_DB)) : 0;
  return (
    <span className={css.level} aria-hidden="true">
      <span className={level?.speaking ? css.voice : css.room} style={{ transform: `scaleX(${share.toFixed(3)})` }} />
    </span>
  );
}
