/** Words what the ear finds in takes: never blaming, always with what would help. */
import { type Message, t } from '../../core/language.ts';
import type { CaughtTake, EarLevel, Enrolled, UnlikeTake } from '../../session/app-state.ts';
import { wordName } from '../parts/word-names.ts';

type Forecast = Extract<Enrolled, { ok: true }>['forecast'][number];
type Advice = Forecast['advice'][number];
type Problem = Enrolled['problems'][number];
type Trouble = NonNullable<EarLevel['trouble']>;
type Fault = CaughtTake['report']['faults'][number];

const FAULTS = {
  'not-finite': 'the recording is broken',
  'bad-rate': 'the recording has an unusual rate',
  'too-short': 'it was too short: say it a little longer',
  'too-long': 'it was long for a word: leave a pause after it',
  'too-quiet': 'it was too quiet: come closer or speak up',
  'too-noisy': 'the room is loud: switch off what hums, or come closer',
  clipped: 'it was too loud for the microphone: move the phone away a little',
  'cut-off-start': 'its beginning is cut off: wait a moment before you speak',
  'cut-off-end': 'its end is cut off: wait a moment after you spoke',
} as const satisfies Readonly<Record<Fault, Message>>;

const UNLIKE = {
  long: 'Kept, but long for one word. If it was more than the word, or something else, tap its number: that forgets it.',
  longer: 'Kept, but much longer than the ones before. If it was something else, tap its number: that forgets it.',
  shorter: 'Kept, but much shorter than the ones before. If it was something else, tap its number: that forgets it.',
} as const satisfies Readonly<Record<UnlikeTake, Message>>;

/** @param isEnough as many takes as are wanted are kept. */
export function sayReport({ caught, report }: CaughtTake, isEnough: boolean, unlike: UnlikeTake | null): string {
  if (caught.cut) return t('That was long for a word: leave a pause after it.');
  const [fault] = report.faults;
  if (fault) return t('Heard, but {fault}.', { fault: t(FAULTS[fault]) });
  if (report.isClick) return t('Kept: a click. If that was only the table, forget it.');
  if (unlike) return t(UNLIKE[unlike]);
  return isEnough ? t('Kept, and that is enough: tap Done.') : t('Kept. Again, the same way.');
}

/** A rehearsal on so few takes promises little: half a miss in one more is added to each share (as a Jeffreys prior does). */
export function sayForecast({ heardAs, takes, expectedMissShare, expectedFalseShare }: Forecast, talkTakes: number): string {
  const of20 = (share: number, n: number) => Math.round((20 * (share * n + 0.5)) / (n + 1));
  const misses = t('{n} of 20 may need saying again', { n: of20(expectedMissShare, takes) });
  const wrong = t('{n} of 20 other words may be taken for it', { n: of20(expectedFalseShare, talkTakes) });
  const rested = t('(rehearsed on {takes} and {pieces} of talk)', {
    takes: takes === 1 ? t('1 take#rehearsed on') : t('{n} takes#rehearsed on', { n: takes }),
    pieces: talkTakes === 1 ? t('1 piece#rehearsed on') : t('{n} pieces#rehearsed on', { n: talkTakes }),
  });
  // What talk says of a click is little: what is mistaken for one is a knock, and nobody teaches knocks.
  if (heardAs === 'click')
    return t(
      'Heard as a click. About {misses} {rested}. A hard knock close by, or another clicker, can pass for it: try it with “Listen”.',
      { misses, rested },
    );
  return t('About {misses}, about {wrong} {rested}.', { misses, wrong, rested });
}

/** Live, under the level: what no take will tell of. */
export function sayTrouble(trouble: Trouble): string {
  switch (trouble) {
    case 'clipped':
      return t('Too loud for the microphone: move the phone away a little.');
    case 'too-short':
      return t('Something short: say the word a little longer, or click harder.');
    case 'loud-room':
      return t('The room is loud: switch off what hums, or put the phone closer.');
  }
}

/** Which takes are unlike the others, from 0. */
export function unlikeTakes(all: readonly Advice[]): readonly number[] {
  return all.flatMap((advice) => (advice.kind === 'takes-unlike' ? advice.take : []));
}

/** @param takes from 0, in order, at least one. All are named in one sentence. */
export function sayUnlike(takes: readonly number[]): string {
  const [last, ...others] = takes.map((take) => take + 1).toReversed() as [number, ...number[]];
  return others.length === 0
    ? t('Take {n} is unlike the others and would be missed: tap its number to forget it, and say it again the usual way.', {
        n: last,
      })
    : t(
        'Takes {list} and {last} are unlike the others and would be missed: tap their numbers to forget them, and say it again the usual way.',
        {
          ...{ list: others.toReversed().join(', '), last },
        },
      );
}

export function sayAdvice(advice: Advice): string {
  switch (advice.kind) {
    case 'too-few-takes':
      return t('Another take or two would help.');
    case 'takes-unlike':
      return sayUnlike([advice.take]);
    case 'too-like':
      return t('About {n} of 20 of your “{word}” would be taken for it: choose one with another vowel or another length.', {
        n: Math.max(1, Math.round(20 * advice.share)),
        word: wordName(advice.other),
      });
    case 'too-little-talk':
      return t('Let it hear more of what else you say: it will be taken for a word less often.');
  }
}

/** About one take, or about what is missing. */
export function sayProblem(problem: Problem): string {
  switch (problem.kind) {
    case 'no-words':
      return t('No word is taught yet.');
    case 'no-takes':
      return t('There is no take of “{word}” that can be used yet.', { word: wordName(problem.word) });
    case 'not-a-click':
      return t('Take {n} of “{word}” is no click as the others are: it is left out.', {
        ...{ n: problem.take + 1, word: wordName(problem.word) },
      });
    default:
      return problem.word
        ? t('Take {n} of “{word}”: {fault}.', {
            ...{ n: problem.take + 1, word: wordName(problem.word), fault: t(FAULTS[problem.kind]) },
          })
        : t('Take {n} of your talk: {fault}.', { n: problem.take + 1, fault: t(FAULTS[problem.kind]) });
  }
}
