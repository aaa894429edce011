/** Lists every stretch that the ear was not sure of, in the order of time: each can be said to be a word, or none. */
import { useState } from 'react';
import { t } from '../../core/language.ts';
import type { Correcting } from './correct-rep.tsx';
import { HearingLine } from './hearing-line.tsx';
import css from './review.module.css';

export function UnsureStretches({ correcting }: { correcting: Correcting }) {
  const [refused, setRefused] = useState<string | null>(null);
  const unsure = correcting.session.hearings.filter(({ was }) => was === 'unsure');
  if (unsure.length === 0) return null;
  const answered = unsure.filter(({ judged }) => judged).length;
  return (
    <section className={css.grounds} aria-label={t('What the ear was not sure of')}>
      <h2>{t('What the ear was not sure of')}</h2>
      <p className="soft">{t('{n} of {of} answered.', { n: answered, of: unsure.length })}</p>
      <ul className={css.hearings}>
        {unsure.map((hearing) => (
          <li key={hearing.id}>
            <HearingLine
              hearing={hearing}
              onCorrect={(correction) => void correcting.onCorrect(correction).then(setRefused)}
              sound={correcting.soundOf?.(hearing.id)}
            />
          </li>
        ))}
      </ul>
      {refused ? <p role="alert">{refused}</p> : null}
    </section>
  );
}
