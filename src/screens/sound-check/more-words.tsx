/** The words that may be taught besides the three: what the buttons of practice do, by voice. Folded until one is wanted. */
import { type Message, t } from '../../core/language.ts';
import type { OptionalWord } from '../../core/word.ts';
import { wordName } from '../parts/word-names.ts';
import css from './sound-check.module.css';
import { TakeRow } from './take-row.tsx';
import { useTakes } from './use-takes.ts';

/** What each does, and one thing that might be said. */
const MORE = {
  undo: ['the last word did not happen', 'scratch that'],
  pause: ['nothing counts until you go on; teach “resume” with it', 'break time'],
  resume: ['goes on after a pause; in a pause it is the only word that counts', 'here we go'],
  finish: ['the session ends', 'all done'],
  easier: ['one step down, between reps', 'lower'],
  harder: ['one step up, between reps', 'higher'],
  stay: ['the call just made is not followed', 'same again'],
  void: ['not a trial, or not offered', 'does not count'],
} as const satisfies Readonly<Record<OptionalWord, readonly [meaning: Message, example: Message]>>;

/** A word that is never spoken in a session still costs: each is one more that talk can be taken for. */
export function MoreWords({ wanted }: { wanted: number }) {
  const takes = useTakes();
  const names = Object.keys(MORE) as OptionalWord[];
  const taught = names.filter((word) => takes.has(word));
  return (
    <details className={css.more}>
      <summary>
        {t('More words (optional)')}
        {taught.length > 0 ? (
          <span className="soft"> · {t('taught: {words}', { words: taught.map(wordName).join(', ') })}</span>
        ) : null}
      </summary>
      <p className="soft">
        {t(
          'Every one of these has a button and a key. Teach only what you will say: each word more is one more that talk can be taken for. Long ones are safest.',
        )}
      </p>
      <ul className={css.rows}>
        {names.map((word) => (
          <TakeRow
            key={word}
            {...{ word, title: wordName(word), meaning: t(MORE[word][0]), example: t(MORE[word][1]) }}
            {...{ takes: takes.get(word) ?? [], wanted, isNext: false }}
          />
        ))}
      </ul>
    </details>
  );
}
