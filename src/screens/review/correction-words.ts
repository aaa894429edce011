/** Names a correction in a few words, with its rep: so that undo and redo say what they take back and bring again. */
import { type CorrectedSession, hearingsIn } from '../../core/correct.ts';
import type { Correction } from '../../core/correction.ts';
import { t } from '../../core/language.ts';
import { wordName } from '../parts/word-names.ts';

export function sayCorrection(correction: Correction, session: CorrectedSession): string {
  const what = sayWhat(correction);
  const rep = repOf(correction, session);
  return rep === null ? what : t('rep {n}, {what}', { n: rep, what });
}

function sayWhat(correction: Correction): string {
  switch (correction.do) {
    case 'confirm':
      return t('it was heard right');
    case 'relabel':
      return correction.as === null ? t('it was no word') : t('it was {word}', { word: wordName(correction.as) });
    case 'move':
      return t('a word moved');
    case 'insert':
      return t('{word} put in', { word: wordName(correction.word) });
    case 'void':
      return t('it was no trial');
    case 'note':
      return correction.of === null ? t('the note on this session') : t('the note');
  }
}

/** Null: it belongs to none, or the rep is no more. */
function repOf(correction: Correction, session: CorrectedSession): number | null {
  const { reps } = session.state;
  const isAt = (n: number) =>
    correction.do === 'insert'
      ? (reps[n - 1]?.endAtS ?? 0) >= correction.startedAtS
      : reps[n - 1]?.endedBy === correction.of || hearingsIn(session, n).some(({ id }) => id === correction.of);
  return reps.find(({ n }) => isAt(n))?.n ?? null;
}
