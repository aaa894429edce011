/** A cue as light: the edge of the screen, once. Cues are a second apart, so it stays under three flashes a second. */
import { useApp } from '../app-context.tsx';
import css from './flash.module.css';

export function Flash() {
  const flash = useApp((state) => state.flash);
  return flash ? <div key={flash.n} className={css.flash} data-cue={flash.name} aria-hidden="true" /> : null;
}
