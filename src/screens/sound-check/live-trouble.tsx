/** Says while something is being taught what no take will tell of: clipping, and a sound that was too short to be one. */
import { useApp } from '../app-context.tsx';
import css from './sound-check.module.css';
import { sayTrouble } from './take-words.ts';

export function LiveTrouble() {
  const trouble = useApp((state) => state.level?.trouble ?? null);
  return (
    <p role="status" className={css.live}>
      {trouble ? sayTrouble(trouble) : ''}
    </p>
  );
}
