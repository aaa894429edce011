/** The last word heard, for two seconds, with its undo; after a call that moved, the way to decline it. */
import { useCallback } from 'react';
import type { SessionState } from '../../core/fold.ts';
import type { Word } from '../../core/word.ts';
import { useIntents } from '../app-context.tsx';
import css from './last-word.module.css';
import { sayWord } from './says.ts';
import { useClock } from './use-clock.ts';

/** How long a heard word stays on the screen, s (DESIGN). The undo stays while it can still be meant. */
const SHOWN_S = 2;

export function LastWord({ live }: { live: SessionState }) {
  const { say } = useIntents();
  const { lastHeard } = live;
  const decidedAtS = lastHeard?.decidedAtS ?? Number.NEGATIVE_INFINITY;
  const fresh = useClock(useCallback((nowS) => nowS - decidedAtS < SHOWN_S, [decidedAtS]));
  const takenBack = wordTakenBack(live);
  return (
    <div className={css.last}>
      <span className={css.word} data-fresh={fresh || takenBack !== null}>
        {takenBack ? `“${sayWord(takenBack)}” taken back` : fresh && lastHeard ? `“${sayWord(lastHeard.word)}”` : ''}
      </span>
      {live.openMove && live.phase.phase === 'waiting' ? (
        <button type="button" className={css.undo} onClick={() => say('stay')}>
          Stay
        </button>
      ) : null}
      <button type="button" className={css.undo} disabled={!lastHeard} onClick={() => say('undo')}>
        Undo
      </button>
    </div>
  );
}

/** The word that was just taken back: said until something else happens. Null: nothing was, or it was no word. */
function wordTakenBack({ log }: SessionState): Word | null {
  const last = log.at(-1);
  if (last?.type !== 'undone') return null;
  const taken = log.find(({ id }) => id === last.body.of);
  return taken?.type === 'word-heard' ? taken.body.word : null;
}
