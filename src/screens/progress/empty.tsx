/** Before the first session: shows with invented data what progress will look like, and the one next thing to do. */
import { useState } from 'react';
import { Link } from 'wouter';
import { ANY } from '../../core/progress/choice.ts';
import { Folds } from './folds.tsx';
import { INVENTED_LADDER, INVENTED_TODAY, inventedDigests } from './invented.ts';
import css from './progress.module.css';

export function EmptyProgress() {
  const [digests] = useState(inventedDigests);
  return (
    <>
      <section className={css.next}>
        <p className={css.first}>No sessions yet.</p>
        <p>After your first session this page shows what your dog keeps, where and with whom, and the next thing to try.</p>
        <Link href="/" className="button primary">
          Practise a first session
        </Link>
      </section>
      <section className={css.invented} aria-label="Invented, to show how it is read">
        <p className="soft">
          <strong>Invented, to show how it is read:</strong> twelve sessions of a dog that learns to lie flat.
        </p>
        <Folds
          digests={digests}
          choice={{ ...ANY, planId: 'invented' }}
          ladder={INVENTED_LADDER}
          today={INVENTED_TODAY}
          dogName="invented"
        />
      </section>
    </>
  );
}
