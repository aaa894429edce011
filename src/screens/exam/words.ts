/** Says how ready a dog is for what is to be done, and what the way there looks like. */
import type { Pace } from '../../core/exam/pace.ts';
import type { Lack, Readiness } from '../../core/exam/readiness.ts';
import type { Ask, Stretch, Verdict } from '../../core/exam/rehearsal.ts';
import { fixed, t } from '../../core/language.ts';
import { sayDay } from '../../core/progress/day.ts';
import { sayCounts, sayPlaces } from '../card/words.ts';

/** One or two words, before everything else. */
export function readinessWord(kind: Readiness['kind']): string {
  switch (kind) {
    case 'ready':
      return t('Ready');
    case 'nearly':
      return t('Nearly');
    case 'begun':
      return t('Begun');
    case 'never':
      return t('Never practised');
  }
}

/** The counts and places, then what is lacking. */
export function sayReadiness(readiness: Readiness, today: number): string {
  if (readiness.kind === 'never')
    return readiness.at
      ? t('A step of “{plan}”, not tried yet.', { plan: readiness.at.plan.title })
      : t('On no plan of this dog.');
  const { evidence } = readiness;
  const known = `${sayCounts(evidence, today)} · ${sayPlaces(evidence)}.`;
  if (readiness.kind === 'ready') return known;
  return `${known} ${t('Lacking: {what}.', { what: readiness.lacks.map(sayLack).join('; ') })}`;
}

function sayLack(lack: Lack): string {
  switch (lack.kind) {
    case 'seconds':
      return t('practised for {practised} s, asked for {asked} s', { practised: lack.practisedS, asked: lack.askedS });
    case 'not-lately':
      return t('not practised for {days} days', { days: lack.days });
    case 'not-for-good':
      return sayRunning(lack.running, lack.places);
  }
}

function sayRunning(running: number, places: number): string {
  if (running === 0) return t('a session at 9 in 10');
  const n = Math.min(running, 3);
  return places === 1
    ? t('{n} of 3 sessions running at 9 in 10, in one place of two', { n })
    : t('{n} of 3 sessions running at 9 in 10', { n });
}

export function sayVerdict(verdict: Verdict): string {
  switch (verdict.kind) {
    case 'ready':
      return t('Everything on the list is kept for good. Rehearse it in this order, and keep it easy.');
    case 'past':
      return t('This day is over.');
    case 'empty':
      return t('Nothing is on the list yet: ask the practice what will be done, and for how long.');
    case 'reached':
      return t('Every step on the list is reached. What is lacking is keeping it: lately, long enough, and in two places.');
    case 'pace-unknown':
      return t(
        'Steps missing: {missing}. From so few sessions no pace can be told: tell the practice what is not practised yet.',
        {
          missing: verdict.missing,
        },
      );
    default:
      return `${sayForecast(verdict)} ${sayOutlook(verdict.kind)}`;
  }
}

type Forecast = Extract<Verdict, { readonly steps: unknown }>;

function sayForecast({ steps: { lower, upper }, missing }: Forecast): string {
  if (upper === 0) return t('No step more before the day; missing: {missing}.', { missing });
  return t('At this dog’s pace, {low} to {high} steps by the day; missing: {missing}.', { low: lower, high: upper, missing });
}

function sayOutlook(kind: Forecast['kind']): string {
  switch (kind) {
    case 'likely':
      return t('They are likely to be reached; keeping them takes three good sessions more.');
    case 'perhaps':
      return t('It may not be ready. Tell the practice now, so that both of you can plan.');
    case 'not-ready':
      return t('It will not be ready: tell the practice, ask for a shorter list or another way.');
  }
}

export function sayPace(pace: Pace): string {
  if (pace.kind === 'too-few')
    return t('{n} sessions in the last 12 weeks: a pace is told from {need} on.', { n: pace.sessions, need: pace.need });
  const { steps, sessions, stepsAWeek, interval, sessionsAWeek } = pace;
  return t(
    'In the last 12 weeks: {steps} steps first reached in {sessions} sessions, {rate} sessions a week; {pace} steps a week ({low} to {high}).',
    {
      ...{ steps, sessions, rate: fixed(sessionsAWeek, 1), pace: fixed(stepsAWeek, 1) },
      ...{ low: fixed(interval.lower, 1), high: fixed(interval.upper, 1) },
    },
  );
}

/** "1 to 7 March". */
export function saySpan({ fromDay, toDay }: Stretch): string {
  return fromDay === toDay ? sayDay(fromDay) : t('{from} to {to}', { from: sayDay(fromDay), to: sayDay(toDay) });
}

export function sayStretch(stretch: Stretch): string {
  switch (stretch.kind) {
    case 'raise':
      return sayRaise(stretch);
    case 'elsewhere':
      return t('What is reached, in other places: another room, the car, another person’s hands. Nothing new.');
    case 'easy':
      return t('Short and easy, then rest. Nothing new.');
  }
}

function sayRaise({ steps, sessions }: Stretch): string {
  if (!steps) return t('Practise as you do, one step after the other, as the calls say.');
  const { lower: low, upper: high } = steps;
  return sessions === 1
    ? t('About 1 session, as until now. By then {low} to {high} steps.', { low, high })
    : t('About {n} sessions, as until now. By then {low} to {high} steps.', { n: sessions, low, high });
}

export function sayAsk(ask: Ask, place: string): string {
  switch (ask) {
    case 'shorter-list':
      return t('A shorter list: what is ready, and the rest on another day.');
    case 'two-visits':
      return t('Two visits: first what is ready, so that it ends well.');
    case 'another-way':
      return t('Another way to the same answer: less touch, half of the place, another position.');
    case 'sedation':
      return t('Whether what cannot wait is kinder under sedation. The veterinarian decides.');
    case 'pain':
      return t('Whether something hurts: pain comes before practice, and the veterinarian looks first.');
    case 'visit-first':
      return t('A visit without an examination, to rehearse there: your dog never practised in this place ({place}).', { place });
  }
}

/** "today", "in 12 days". */
export function sayDaysLeft(days: number): string {
  if (days === 0) return t('today');
  if (days === 1) return t('tomorrow');
  if (days > 0) return t('in {n} days', { n: days });
  return days === -1 ? t('yesterday') : t('{n} days ago', { n: -days });
}
