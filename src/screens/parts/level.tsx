/** The level of the microphone, as a bar: grey room, dark voice. */
import { useApp } from '../app-context.tsx';
import css from './level.module.css';

/** The quietest level drawn, dB re full scale. */
const LOWEST_DB = -70;

export function Level() {
  const level = useApp((state) => state.level);
  const share = level ? Math.min(1, Math.max(0, 1 - level.nowDb / LOWEST_DB)) : 0;
  return (
    <svg className={css.level} viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      <rect width="100" height="6" className={css.quiet} />
      <rect width={100 * share} height="6" className={level?.speaking ? css.voice : css.room} />
    </svg>
  );
}
