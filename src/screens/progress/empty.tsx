/** Before the first session: shows with invented data what progress will look like, and the one next thing to do. */
import { useState } from 'react';
import { Link } from 'wouter';
import { t } from '../../core/language.ts';
import { ANY } from '../../core/progress/choice.ts';
import { Folds } from './folds.tsx';
import { INVENTED_TODAY, inventedDigests, inventedLadder } from './invented.ts';
import css from './progress.module.css';

export function EmptyProgress() {
  const [digests] = useState(inventedDigests);
  const [ladder] = useState(inventedLadder);
  return (
    <>
      <section className={css.next}>
        <p className={css.first}>{t('No sessions yet.')}</p>
        <p>
          {t('After your first session this page shows what your dog keeps, where and with whom, and the next thing to try.')}
        </p>
        <Link href="/" className="button primary">
          {t('Practise a first session')}
        </Link>
      </section>
      <section className={css.invented} aria-label={t('Invented, to show how it is read')}>
        <p className="soft">
          <strong>{t('Invented, to show how it is read:')}</strong> {t('twelve sessions of a dog that learns to lie flat.')}
        </p>
        <Folds
          digests={digests}
          choice={{ ...ANY, planId: 'invented' }}
          ladder={ladder}
          today={INVENTED_TODAY}
          dogName={t('invented')}
        />
      </section>
    </>
  );
}
