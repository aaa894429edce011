/** The trainer's desk: many dogs and owners, who needs help first, each with its reasons. */
import { Link } from 'wouter';
import type { DeskRow } from '../../core/desk/desk.ts';
import type { Need } from '../../core/desk/needs.ts';
import { needWords, sayNeed } from '../../core/desk/say.ts';
import { t } from '../../core/language.ts';
import { sayDay } from '../../core/progress/day.ts';
import { AddReturn } from './add-return.tsx';
import css from './desk.module.css';
import { useDesk } from './use-desk.ts';

export function DeskScreen() {
  const desk = useDesk();
  if (!desk) return <h1 aria-busy="true">{t('The desk')}</h1>;
  const { rows, unread } = desk;
  const calling = rows.filter(({ needs }) => needs.length > 0);
  const calm = rows.filter(({ needs }) => needs.length === 0);
  return (
    <div className="stack wide">
      <header className="stack">
        <h1>{t('The desk')}</h1>
        {rows.length > 0 ? <p>{sayHowMany(calling.length, rows.length)}</p> : <Empty />}
        {unread > 0 ? (
          <p>{t('{n} sessions cannot be read and are not counted here. Nothing of them was deleted.', { n: unread })}</p>
        ) : null}
      </header>
      {calling.length > 0 ? <Rows rows={calling} title={t('Who needs help first')} /> : null}
      {calm.length > 0 ? <Rows rows={calm} title={t('Nothing calls for you')} /> : null}
      <AddReturn />
      {rows.length > 0 ? (
        <p className="soft small">
          {t(
            'First what may hurt, then what a dog says more and more often, then where only you can help, then what a sentence mends. The bounds are common practice; each reason tells its counts. Only what owners have sent is known here.',
          )}
        </p>
      ) : null}
    </div>
  );
}

function sayHowMany(calling: number, all: number): string {
  if (calling === 0) return all === 1 ? t('1 dog; nothing calls for you.') : t('{n} dogs; nothing calls for you.', { n: all });
  return all === 1 ? t('1 dog; it needs you.') : t('{n} dogs; {calling} need you.', { n: all, calling });
}

function Empty() {
  return (
    <>
      <p>
        {t(
          'Nothing lies on it yet. Open a plan, give it as homework, and what owners send back is sorted here: who needs help first, and why.',
        )}
      </p>
      <div className="row">
        <Link href="/" className="button primary">
          {t('To the plans')}
        </Link>
        <Link href="/plan/new" className="button">
          {t('Make a plan')}
        </Link>
      </div>
    </>
  );
}

function Rows({ rows, title }: { rows: readonly DeskRow[]; title: string }) {
  return (
    <section className="stack">
      <h2>{title}</h2>
      <ul className={css.list}>
        {rows.map((row) => (
          <li key={row.dog.id}>
            <Row row={row} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Row({ row: { dog, needs, lastDay, thisWeek } }: { row: DeskRow }) {
  const asked = dog.homework[0]?.homework.sessionsAWeek;
  return (
    <Link href={`/desk/${encodeURIComponent(dog.id)}`} className={css.row}>
      <span className={css.who}>
        <span>
          <span className={css.name}>{dog.name}</span>
          {dog.owner === '' ? '' : ` · ${dog.owner}`}
        </span>
        <span className="soft small">
          {lastDay === null ? t('no session yet') : t('last on {day}', { day: sayDay(lastDay) })}
        </span>
        <span className="soft small">
          {asked === undefined
            ? t('{n} in seven days', { n: thisWeek })
            : t('{n} in seven days, asked for: {asked}', { n: thisWeek, asked })}
        </span>
        {dog.pain ? <span className="small">{t('Pain: {pain}', { pain: dog.pain })}</span> : null}
      </span>
      <Needs needs={needs} />
    </Link>
  );
}

export function Needs({ needs }: { needs: readonly Need[] }) {
  if (needs.length === 0) return null;
  return (
    <ul className={css.needs}>
      {needs.map((need) => (
        <li key={needWords(need) + sayNeed(need)} className={css.need} data-kind={need.kind}>
          <strong>{needWords(need)}</strong>
          {sayNeed(need)}
        </li>
      ))}
    </ul>
  );
}
