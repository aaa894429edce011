/** Words what the ear finds in takes: never blaming, always with what would help. */
import type { CaughtTake, EarLevel, Enrolled } from '../../session/app-state.ts';

type Forecast = Extract<Enrolled, { ok: true }>['forecast'][number];
type Advice = Forecast['advice'][number];
type Problem = Enrolled['problems'][number];
type Trouble = NonNullable<EarLevel['trouble']>;
type Fault = CaughtTake['report']['faults'][number];

const FAULTS: Readonly<Record<Fault, string>> = {
  'not-finite': 'the recording is broken',
  'bad-rate': 'the recording has an unusual rate',
  'too-short': 'it was too short: say it a little longer',
  'too-long': 'it was long for a word: leave a pause after it',
  'too-quiet': 'it was too quiet: come closer or speak up',
  'too-noisy': 'the room is loud: switch off what hums, or come closer',
  clipped: 'it was too loud for the microphone: move the phone away a little',
  'cut-off-start': 'its beginning is cut off: wait a moment before you speak',
  'cut-off-end': 'its end is cut off: wait a moment after you spoke',
};

export function sayReport({ caught, report }: CaughtTake): string {
  if (caught.cut) return 'That was long for a word: leave a pause after it.';
  const [fault] = report.faults;
  if (fault) return `Heard, but ${FAULTS[fault]}.`;
  return report.isClick ? 'Kept: a click. If that was only the table, forget it.' : 'Kept. Again, the same way.';
}

/** A rehearsal on so few takes promises little: half a miss in one more is added to each share (as a Jeffreys prior does). */
export function sayForecast({ heardAs, takes, expectedMissShare, expectedFalseShare }: Forecast, talkTakes: number): string {
  const of20 = (share: number, n: number) => Math.round((20 * (share * n + 0.5)) / (n + 1));
  const misses = `${of20(expectedMissShare, takes)} of 20 may need saying again`;
  const wrong = `${of20(expectedFalseShare, talkTakes)} of 20 other words may be taken for it`;
  const rested = `(rehearsed on ${sayCount(takes, 'take')} and ${sayCount(talkTakes, 'piece')} of talk)`;
  // What talk says of a click is little: what is mistaken for one is a knock, and nobody teaches knocks.
  if (heardAs === 'click')
    return `Heard as a click. About ${misses} ${rested}. A hard knock close by, or another clicker, can pass for it: try it with “Listen”.`;
  return `About ${misses}, about ${wrong} ${rested}.`;
}

const sayCount = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

/** Live, under the level: what no take will tell of. */
export function sayTrouble(trouble: Trouble): string {
  switch (trouble) {
    case 'clipped':
      return 'Too loud for the microphone: move the phone away a little.';
    case 'too-short':
      return 'Something short: say the word a little longer, or click harder.';
    case 'loud-room':
      return 'The room is loud: switch off what hums, or put the phone closer.';
  }
}

export function sayAdvice(advice: Advice): string {
  switch (advice.kind) {
    case 'too-few-takes':
      return 'Another take or two would help.';
    case 'takes-unlike':
      return `Take ${advice.take + 1} is unlike the others and would be missed: say it again the usual way, or forget that one.`;
    case 'too-like':
      return `About ${Math.max(1, Math.round(20 * advice.share))} of 20 of your “${advice.other}” would be taken for it: choose one with another vowel or another length.`;
    case 'too-little-talk':
      return 'Let it hear more of what else you say: it will be taken for a word less often.';
  }
}

/** About one take, or about what is missing. */
export function sayProblem(problem: Problem): string {
  switch (problem.kind) {
    case 'no-words':
      return 'No word is taught yet.';
    case 'no-takes':
      return `There is no take of “${problem.word}” that can be used yet.`;
    case 'not-a-click':
      return `Take ${problem.take + 1} of “${problem.word}” is no click as the others are: it is left out.`;
    default:
      return `Take ${problem.take + 1} of ${problem.word ? `“${problem.word}”` : 'your talk'}: ${FAULTS[problem.kind]}.`;
  }
}
