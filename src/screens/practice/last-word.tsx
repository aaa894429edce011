/** The last word heard, for two seconds, with its undo; after a call that moved, the way to decline it. */
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import type { Word } from '../../core/word.ts';
import { useIntents } from '../app-context.tsx';
import css from './last-word.module.css';
import { sayWord } from './says.ts';
import { useWithin } from './use-clock.ts';

/** How long a heard word stays on the screen, s (DESIGN). The undo stays while it can still be meant. */
const SHOWN_S = 2;

export function LastWord({ live }: { live: SessionState }) {
  const { say } = useIntents();
  const { lastHeard } = live;
  const fresh = useWithin(SHOWN_S, lastHeard?.decidedAtS ?? null);
  const takenBack = wordTakenBack(live);
  return (
    <div className={css.last}>
      <span className={css.word} data-fresh={fresh || takenBack !== null}>
        {saysLast(takenBack, fresh ? (lastHeard?.word ?? null) : null)}
      </span>
      {live.openMove && live.phase.phase === 'waiting' ? (
        <button type="button" className={css.undo} onClick={() => say('stay')}>
          {t('Stay')}
        </button>
      ) : null}
      <button type="button" className={css.undo} disabled={!lastHeard} onClick={() => say('undo')}>
        {t('Undo#in practice')}
      </button>
    </div>
  );
}

function saysLast(takenBack: Word | null, heard: Word | null): string {
  if (takenBack) return t('“{word}” taken back', { word: sayWord(takenBack) });
  return heard ? t('“{word}”', { word: sayWord(heard) }) : '';
}

/** The word that was just taken back: said until something else happens. Null: nothing was, or it was no word. */
function wordTakenBack({ log }: SessionState): Word | null {
  const last = log.at(-1);
  if (last?.type !== 'undone') return null;
  const taken = log.find(({ id }) => id === last.body.of);
  return taken?.type === 'word-heard' ? taken.body.word : null;
}
