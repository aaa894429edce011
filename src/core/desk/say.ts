/** Says why a dog needs help: a few words for the eye that runs down the list, and a sentence with its counts. */
import { t } from '../language.ts';
import { areaWords } from '../sentences.ts';
import { MOST_REPS, type Need } from './needs.ts';

/** Two or three words. */
export function needWords({ kind }: Need): string {
  switch (kind) {
    case 'veterinarian':
      return t('Could it hurt?');
    case 'lifts-rising':
      return t('Lifts rise');
    case 'stuck':
      return t('Stuck');
    case 'too-many-reps':
      return t('Too many reps');
    case 'too-many-a-day':
    case 'too-many-a-week':
      return t('Too many sessions');
    case 'not-practised':
      return t('Nothing came back');
  }
}

export function sayNeed(need: Need): string {
  switch (need.kind) {
    case 'veterinarian':
      return sayVeterinarian(need);
    case 'lifts-rising':
      return t(
        'Lifted in {lifted} of {of} trials of the latest {sessions} sessions; in {liftedBefore} of {ofBefore} in the {sessionsBefore} before.',
        {
          ...need.now,
          ...{ liftedBefore: need.before.lifted, ofBefore: need.before.of, sessionsBefore: need.before.sessions },
        },
      );
    case 'stuck':
      return t('{sessions} sessions and no step higher: mostly “{title}”, {kept} of {of} kept in the latest 5.', need);
    case 'too-many-reps':
      return t('More than {bound} reps in {sessions} of the latest {of} sessions, up to {most}; 20 are enough.', {
        ...{ bound: MOST_REPS, sessions: need.sessions, of: need.of, most: need.most },
      });
    case 'too-many-a-day':
      return need.days === 1
        ? t('{most} sessions on one day of the latest 7; one a day teaches more.', { most: need.most })
        : t('Up to {most} sessions a day, on {days} of the latest 7 days; one a day teaches more.', {
            ...{ most: need.most, days: need.days },
          });
    case 'too-many-a-week':
      return sayWeek(need);
    case 'not-practised':
      return sayWaiting(need);
  }
}

function sayVeterinarian({ area, sessions, of }: Extract<Need, { kind: 'veterinarian' }>): string {
  const named =
    of === 1
      ? t('Lifts gathered at {place} in the latest session, so that the veterinarian was named.', { place: areaWords(area) })
      : t('Lifts gathered at {place} in {sessions} of the latest {of} sessions, so that the veterinarian was named.', {
          ...{ place: areaWords(area), sessions, of },
        });
  return `${named} ${t('Stop handling there until one has looked.')}`;
}

function sayWeek({ sessions, asked }: Extract<Need, { kind: 'too-many-a-week' }>): string {
  if (asked === null) return t('{sessions} sessions in the latest 7 days; rest days teach, too.', { sessions });
  return t('{sessions} sessions in the latest 7 days, asked for: {asked}.', { sessions, asked });
}

function sayWaiting({ days, asked, hasBegun }: Extract<Need, { kind: 'not-practised' }>): string {
  if (asked === null) return t('No session for {days} days.', { days });
  if (!hasBegun) return t('Given {days} days ago, asked for: {asked} a week; no session has come back.', { days, asked });
  return t('No session for {days} days, asked for: {asked} a week.', { days, asked });
}
