/** The card itself, for one screen and one printed page: how to stop first, then what the dog keeps, what not yet, and what is worth knowing. */
import type { ReactNode } from 'react';
import type { Card } from '../../core/card/card.ts';
import { forPaper, type Listed, type PaperSize, sizeFor } from '../../core/card/condense.ts';
import { t } from '../../core/language.ts';
import type { SpokenWord } from '../../core/word.ts';
import { Hatching } from '../picture/ink.tsx';
import { StandingShape, TrialBars } from './bars.tsx';
import css from './card.module.css';
import { listed, sayArea, sayAreas, sayCounts, sayDate, sayExam, sayPlaces, sayPractised, sum } from './words.ts';

export function Sheet({ card }: { card: Card }) {
  return (
    <article
      className={css.sheet}
      data-size={sizeOf(card)}
      data-wraps={linesOf(card) <= MOST_WRAPPED}
      aria-label={t('Card for the examiner')}
    >
      <svg className={css.patterns} width="0" height="0" aria-hidden="true">
        <Hatching />
      </svg>
      <Head card={card} />
      <Stop card={card} />
      <div className={css.columns}>
        <div className={css.main}>
          <Words card={card} />
          <Kept card={card} />
          <NotYet card={card} />
          <Never card={card} />
        </div>
        <div className={css.side}>
          <Knowing card={card} />
        </div>
      </div>
      <Cautions />
      <footer className={css.foot}>
        {t(
          'Kept for good: 9 in 10 in three sessions running, on two days at least, in two places. Counted are the latest three sessions of each step; half steps and warm-ups are left out. Of every place of the body the hardest steps are named first. This card tells what was practised and promises nothing of today.',
        )}
      </footer>
    </article>
  );
}

const linesOf = ({ kept, notYet }: Card): number => kept.lines.length + notYet.lines.length;

/** So few lines may run on: with more, what is too long ends in dots, or the page would be two (tests/e2e/card.e2e.test.ts). */
const MOST_WRAPPED = 2;

function sizeOf(card: Card): PaperSize {
  const { dog } = card;
  const texts = [dog.signs, dog.pain, dog.advice, dog.food, dog.scares].map((text) => forPaper(text ?? '').text.length);
  return sizeFor(
    linesOf(card),
    texts.reduce((all, letters) => all + letters, 0),
  );
}

function Head({ card }: { card: Card }) {
  const { dog, today, positions } = card;
  return (
    <header className={css.head}>
      <h1>{dog.name}</h1>
      <p>
        {t('Card for the examiner')} · {t('as of {day}', { day: sayDate(today) })} · {sayPractised(card)}
      </p>
      {positions.length > 0 ? (
        <p className={css.position}>
          <strong>{t('Position')}:</strong>{' '}
          {positions
            .slice(0, 2)
            .map((position) => forPaper(position, 70).text)
            .join(' · ')}
          {positions.length > 2 ? ` · ${t('{n} more', { n: positions.length - 2 })}` : ''}
        </p>
      ) : null}
    </header>
  );
}

/** Read first, and from farthest. */
function Stop({ card: { words, dog } }: { card: Card }) {
  return (
    <section className={css.stop}>
      <h2>{t('A head that comes up is a no: everybody stops')}</h2>
      <p>
        {t('Hands off at once, whoever is touching, whatever is half done. Nobody ever holds the head down.')}{' '}
        {words.lifted.length > 0 ? t('You hear {word}: it means the same.', { word: quoted(words.lifted) }) : ''}{' '}
        {t('Go on when the head lies down again by itself. Twice no to one thing: leave that thing for today.')}
      </p>
      <p className={css.call}>
        <strong>{t('Whom to call')}:</strong> {dog.callWhom ? forPaper(dog.callWhom, 120).text : <Blank />}
      </p>
    </section>
  );
}

/** To be filled in by hand. */
function Blank() {
  return (
    <span className={css.blank}>
      <span className={css.screenOnly}>{t('not filled in yet')}</span>
    </span>
  );
}

const quoted = (words: readonly string[]): string =>
  listed(words.slice(0, 2).map((word) => t('“{word}”', { word: forPaper(word, 24).text })));

const WORDS: readonly SpokenWord[] = ['hold', 'mark', 'lifted'];

function Words({ card: { words, handler } }: { card: Card }) {
  const who = handler ?? t('the handler');
  return (
    <section>
      <h2>{t('Words that {who} says', { who })}</h2>
      {WORDS.every((word) => words[word].length === 0) ? (
        <p>{t('None was taught yet: {who} taps on the phone instead.', { who })}</p>
      ) : (
        <dl className={css.words}>
          {WORDS.map((word) => (
            <div key={word}>
              <dt>{words[word].length > 0 ? quoted(words[word]) : <em>{t('no word, a tap')}</em>}</dt>
              <dd>{meaning(word)}</dd>
            </div>
          ))}
        </dl>
      )}
    </section>
  );
}

function meaning(word: SpokenWord): string {
  switch (word) {
    case 'hold':
      return t('the head is down: you may begin');
    case 'mark':
      return t('done and paid: hands off');
    case 'lifted':
      return t('the head came up: everybody stops');
  }
}

function Kept({ card: { kept, today } }: { card: Card }) {
  return (
    <section>
      <h2>
        <StandingShape kind="kept" /> {t('Kept for good')}
      </h2>
      {kept.lines.length === 0 ? <p>{t('Nothing yet.')}</p> : <Lines listed={kept} today={today} />}
    </section>
  );
}

function NotYet({ card: { notYet, today } }: { card: Card }) {
  if (notYet.lines.length === 0) return null;
  return (
    <section>
      <h2>
        <StandingShape kind="not-yet" /> {t('Practised, not kept for good yet')}
      </h2>
      <Lines listed={notYet} today={today} />
    </section>
  );
}

function Lines({ listed: { lines, more }, today }: { listed: Listed; today: number }) {
  return (
    <>
      <ul className={css.lines}>
        {lines.map(({ planId, stepId, title, area, evidence }) => (
          <li key={`${planId} ${stepId}`}>
            <TrialBars evidence={evidence} />
            <span className={css.line}>
              <span>
                <span className={css.area}>{sayArea(area)} ·</span> <strong>{title}</strong>
              </span>
              <span>
                {sayCounts(evidence, today)} · {sayPlaces(evidence)}
              </span>
            </span>
          </li>
        ))}
      </ul>
      {more.length > 0 ? (
        <p className={css.more}>{t('And {n} more: {areas}.', { n: sum(more), areas: sayAreas(more) })}</p>
      ) : null}
    </>
  );
}

function Never({ card: { never, unplanned } }: { card: Card }) {
  if (never.length === 0 && unplanned.length === 0) return null;
  return (
    <section>
      <h2>
        <StandingShape kind="never" /> {t('Never practised')}
      </h2>
      {never.length > 0 ? <p>{t('Steps of its plans: {areas}.', { areas: sayAreas(never) })}</p> : null}
      {unplanned.length > 0 ? <p>{t('Not practised at all: {areas}.', { areas: unplanned.map(sayArea).join(', ') })}</p> : null}
    </section>
  );
}

function Knowing({ card }: { card: Card }) {
  const { dog, exam, today } = card;
  return (
    <>
      <Told title={t('When it is too much')} text={dog.signs}>
        {t(
          'Not noted for this dog. In general: licks its lips, yawns, turns away, lowers itself, goes stiff; then growls, snaps, bites.',
        )}
      </Told>
      {dog.pain ? <Told title={t('Pain, or a sore place')} text={dog.pain} /> : null}
      {dog.advice ? <Told title={t('Veterinary advice so far')} text={dog.advice} /> : null}
      {dog.scares ? <Told title={t('What scares it')} text={dog.scares} /> : null}
      <Told title={t('Treats')} text={dog.food}>
        {t('Ask before you give any.')}
      </Told>
      {card.treatsADay === null ? null : (
        <p>{t('About {n} of its treats a day at most, all together.', { n: card.treatsADay })}</p>
      )}
      {exam ? <Told title={t('Last time')} text={sayExam(exam, today)} /> : null}
    </>
  );
}

function Told({ title, text, children }: { title: string; text?: string | undefined; children?: ReactNode }) {
  return (
    <section>
      <h2>{title}</h2>
      <p>{text ? <Text text={text} /> : children}</p>
    </section>
  );
}

/** On paper as much as there is room for, on the screen all of it. */
function Text({ text }: { text: string }) {
  const paper = forPaper(text);
  if (!paper.isCut) return <span className="pre">{text}</span>;
  return (
    <>
      <span className={css.paperOnly}>
        {paper.text} {t('(more in the app)')}
      </span>
      <span className={`${css.screenOnly} pre`}>{text}</span>
    </>
  );
}

function Cautions() {
  return (
    <section className={css.cautions}>
      <h2>{t('With care')}</h2>
      <ul>
        <li>{t('Keep your face away from the dog’s face, and do not bend over it.')}</li>
        <li>{t('A flinch, or a no to what was given before, can be pain: stop there.')}</li>
        <li>{t('What has to be done in spite of a no, and how, the veterinarian decides.')}</li>
      </ul>
    </section>
  );
}
