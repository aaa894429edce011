/** Homework and the desk on the first screen: what is asked of this handler, and how many dogs of owners there are. */
import { useEffect } from 'react';
import { Link } from 'wouter';
import { deskDogs } from '../../core/desk/dogs.ts';
import { latestOfEach } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import { useApp, useIntents } from '../app-context.tsx';
import css from './handover.module.css';

export function OnHome() {
  const library = useApp((state) => state.library);
  const { given, received } = library.homework;
  const givenHere = new Set(given.map(({ homework }) => homework.id));
  const mine = latestOfEach(received).filter(({ homework }) => !givenHere.has(homework.id));
  const onDesk = deskDogs(library).length;
  const { readDeskAhead } = useIntents();
  const hasDesk = onDesk > 0;
  useEffect(() => {
    if (hasDesk) void readDeskAhead();
  }, [readDeskAhead, hasDesk]);
  return (
    <p className={css.links}>
      <Link href="/homework">
        {mine.length === 0
          ? t('Open homework from a trainer')
          : mine.length === 1
            ? t('Homework: {title}', { title: mine[0]?.homework.title ?? '' })
            : t('Homework: {n} plans', { n: mine.length })}
      </Link>
      <Link href="/desk">{onDesk === 0 ? t('For trainers: the desk') : sayDesk(onDesk)}</Link>
    </p>
  );
}

const sayDesk = (n: number): string => (n === 1 ? t('The desk: 1 dog') : t('The desk: {n} dogs', { n }));
