/** Homework and the desk on the first screen: what is asked of this handler, and how many dogs of owners there are. */
import { useEffect } from 'react';
import { Link } from 'wouter';
import { deskDogs } from '../../core/desk/dogs.ts';
import { homeworkHere } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import { useApp, useIntents } from '../app-context.tsx';
import css from './handover.module.css';
import { useToReturn } from './use-to-return.ts';

export function OnHome() {
  const library = useApp((state) => state.library);
  const mine = homeworkHere(library.homework);
  const due = useToReturn(mine).length;
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
        {due > 0 ? ` · ${sayToReturn(due)}` : null}
      </Link>
      <Link href="/desk">{onDesk === 0 ? t('For trainers: the desk') : sayDesk(onDesk)}</Link>
    </p>
  );
}

const sayDesk = (n: number): string => (n === 1 ? t('The desk: 1 dog') : t('The desk: {n} dogs', { n }));

const sayToReturn = (n: number): string => (n === 1 ? t('1 session not sent back') : t('{n} sessions not sent back', { n }));
