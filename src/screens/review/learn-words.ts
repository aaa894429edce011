/** Words what corrections can teach the ear, and what they changed: with their n, and never more than was judged. */
import type { Intents } from '../../session/app.ts';

type Lesson = NonNullable<Awaited<ReturnType<Intents['lookAtLesson']>>>;
type Change = NonNullable<Awaited<ReturnType<Intents['learn']>>>;

export function sayToLearn({ toLearn, learned, without, ofAnother }: Lesson): string {
  if (ofAnother !== null && toLearn > 0)
    return `These are words of ${ofAnother}. Choose ${ofAnother} in the sound check, and what you put right can teach that ear.`;
  const can = `${count(toLearn, 'correction')} can teach the ear to hear you better.`;
  const has = `The ear learnt ${count(learned, 'thing')} from this session.`;
  const cannot = `${count(without, 'correction')} cannot teach it: by key or click, or heard more than a month ago.`;
  return [toLearn > 0 ? can : '', learned > 0 ? has : '', without > 0 ? cannot : ''].filter(Boolean).join(' ');
}

/** "2 false triggers fewer (3 before), no word lost." */
export function sayChange(change: Change | null): string {
  if (!change) return 'Kept. What it changes cannot be told here; it counts from the next session on.';
  const { words, others, lost, won, falseBefore, falseAfter } = change;
  const rested = `Each sound of this session was judged as if it were new: ${count(words, 'word')}, ${count(others, 'other sound')}.`;
  if (lost + won === 0 && falseBefore === falseAfter)
    return `Kept. On this session it makes no difference yet; it counts when the same comes again. ${rested}`;
  const parts = [sayFalse(falseBefore, falseAfter), lost === 0 ? 'no word lost' : `${count(lost, 'word')} lost`];
  if (won > 0) parts.push(`${count(won, 'word')} more heard`);
  const sentence = parts.join(', ');
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}. ${rested}`;
}

function sayFalse(before: number, after: number): string {
  if (before === after) return before === 0 ? 'no false trigger' : `${count(before, 'false trigger')} as before`;
  const difference = Math.abs(before - after);
  return `${count(difference, 'false trigger')} ${after < before ? 'fewer' : 'more'} (${before} before)`;
}

const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
