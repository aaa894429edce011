/** Words what corrections can teach the ear, and what they changed: with their n, and never more than was judged. */
import { t } from '../../core/language.ts';
import { capital } from '../../core/summary.ts';
import type { Intents } from '../../session/app.ts';

type Lesson = NonNullable<Awaited<ReturnType<Intents['lookAtLesson']>>>;
type Change = NonNullable<Awaited<ReturnType<Intents['learn']>>>;

export function sayToLearn({ toLearn, learned, without, ofAnother: handler }: Lesson): string {
  if (handler !== null && toLearn > 0)
    return t('These are words of {handler}. Choose {handler} in the sound check, and what you put right can teach that ear.', {
      handler,
    });
  return [sayCan(toLearn), sayHas(learned), sayCannot(without)].filter(Boolean).join(' ');
}

function sayCan(n: number): string {
  if (n === 0) return '';
  return n === 1
    ? t('1 correction can teach the ear to hear you better.')
    : t('{n} corrections can teach the ear to hear you better.', { n });
}

function sayHas(n: number): string {
  if (n === 0) return '';
  return n === 1 ? t('The ear learnt 1 thing from this session.') : t('The ear learnt {n} things from this session.', { n });
}

function sayCannot(n: number): string {
  if (n === 0) return '';
  return n === 1
    ? t('1 correction cannot teach it: by key or click, in too much noise, or heard more than a month ago.')
    : t('{n} corrections cannot teach it: by key or click, in too much noise, or heard more than a month ago.', { n });
}

/** "2 false triggers fewer (3 before), no word lost." */
export function sayChange(change: Change | null): string {
  if (!change) return t('Kept. What it changes cannot be told here; it counts from the next session on.');
  const { lost, won, falseBefore, falseAfter } = change;
  if (lost + won === 0 && falseBefore === falseAfter)
    return `${t('Kept. On this session it makes no difference yet; it counts when the same comes again.')} ${sayJudged(change)}`;
  const sentence = [sayFalse(falseBefore, falseAfter), sayLost(lost), sayWon(won)].filter(Boolean).join(', ');
  const worse =
    lost > won || falseAfter > falseBefore ? [t('Where that is worse than before, forget what this session taught.')] : [];
  return [`${capital(sentence)}.`, ...worse, sayJudged(change)].join(' ');
}

function sayJudged({ words, others }: Change): string {
  return t('Each sound of this session was judged as if it were new: {words}, {others}.', {
    words: words === 1 ? t('1 word') : t('{n} words', { n: words }),
    others: others === 1 ? t('1 other sound') : t('{n} other sounds', { n: others }),
  });
}

function sayLost(n: number): string {
  if (n === 0) return t('no word lost');
  return n === 1 ? t('1 word lost') : t('{n} words lost', { n });
}

function sayWon(n: number): string {
  if (n === 0) return '';
  return n === 1 ? t('1 word more heard') : t('{n} words more heard', { n });
}

function sayFalse(before: number, after: number): string {
  if (before === 0 && after === 0) return t('no false trigger');
  if (before === after) return before === 1 ? t('1 false trigger as before') : t('{n} false triggers as before', { n: before });
  return after < before ? sayFewer(before - after, before) : sayMore(after - before, before);
}

function sayFewer(n: number, before: number): string {
  return n === 1
    ? t('1 false trigger fewer ({before} before)', { before })
    : t('{n} false triggers fewer ({before} before)', { n, before });
}

function sayMore(n: number, before: number): string {
  return n === 1
    ? t('1 false trigger more ({before} before)', { before })
    : t('{n} false triggers more ({before} before)', { n, before });
}
