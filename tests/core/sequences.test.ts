/** Odd sequences of words, and what becomes of them: the table is the definition, written down once and kept true. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { feed, open, type Played, say, sessionStart } from '../../demo/typed-session.ts';
import { fold } from '../../src/core/fold.ts';
import type { Input } from '../../src/core/step.ts';
import { type Heard, isWord, type Word } from '../../src/core/word.ts';

/** The demo ladder from the hold of three seconds on: its lowest step, so that no warm-up comes before it. */
const PLAN = { ...DEMO_PLAN, steps: DEMO_PLAN.steps.slice(3) };

/** `hold@1 mark@4.5`: words at seconds; `hidden@`, `back@`, `closed@` and `mute@` are the page and the ear speaking. */
function play(script: string): Played {
  let played = open(sessionStart(PLAN));
  for (const each of script.split(' ')) {
    const [word = '', at] = each.split('@');
    const atS = Number(at);
    played = isWord(word) ? say(played, word, atS) : feed({ ...played, atS }, inputOf(word, atS));
  }
  return played;
}

function inputOf(word: string, atS: number): Input {
  if (word === 'hidden') return { kind: 'pause', atS, why: 'hidden' };
  if (word === 'back') return { kind: 'resume', atS };
  if (word === 'closed') return { kind: 'end', atS, why: 'abandoned' };
  if (word === 'mute') return { kind: 'ear', atS, ear: 'own-words', state: 'suspended' };
  throw new Error(`no such word: ${word}`);
}

/** What is left of it, in one line: reps with the seconds held, the phase, a question, and the step when it moved. */
function tell({ state }: Played): string {
  const reps = state.reps.map(({ outcome, heldForS, voidReason }) => `${voidReason ?? outcome} ${heldForS.toFixed(1)}`);
  const moved = state.standing.stepId === 'hold-3' ? [] : [`on ${state.standing.stepId}`];
  const asked = state.question ? [`asks: ${state.question.kind}`] : [];
  return [...reps, state.phase.phase, ...asked, ...moved].join(', ');
}

const TABLE: readonly (readonly [title: string, script: string, told: string])[] = [
  ['a marker before any hold is asked about and is no rep', 'mark@1', 'waiting, asks: mark-without-hold'],
  ['the question goes away with the next hold', 'mark@1 hold@3', 'holding'],
  ['a lift before any hold is nothing', 'lifted@1', 'waiting'],
  ['hold said twice counts from the second', 'hold@1 hold@3 mark@6', 'kept 3.0, waiting'],
  ['hold said five times is one rep', 'hold@1 hold@2 hold@3 hold@4 hold@5 lifted@6', 'lifted 1.0, waiting'],
  ['a head that lifts after the marker still counts', 'hold@1 mark@4.2 lifted@4.9', 'kept 3.2, waiting'],
  [
    'a second marker pays again, and is asked about instead of counted',
    'hold@1 mark@4.2 mark@5',
    'kept 3.2, waiting, asks: mark-without-hold',
  ],
  [
    'a lift and then a marker is a lift; the marker is asked about',
    'hold@1 lifted@2 mark@2.8',
    'lifted 1.0, waiting, asks: mark-without-hold',
  ],
  ['lifted said twice is one lift', 'hold@1 lifted@2 lifted@3', 'lifted 1.0, waiting'],
  ['a marker a quarter second early is kept', 'hold@1 mark@3.75', 'kept 2.8, waiting'],
  ['a marker a third of a second early is short', 'hold@1 mark@3.67', 'short 2.7, waiting'],
  ['a marker in the same moment as the hold is short', 'hold@1 mark@1', 'short 0.0, waiting'],
  ['forty seconds of silence in a hold are still one hold', 'hold@1 mark@41', 'kept 40.0, waiting'],
  ['forty seconds of silence before a hold are nothing', 'hold@41 mark@44', 'kept 3.0, waiting'],
  ['a hold that nobody ends waits for its end', 'hold@1 mute@20', 'holding'],
  ['a hold that is open when practice ends is no trial', 'hold@1 finish@9', 'finished 8.0, ended'],
  ['a hold that is open when the app is closed is no trial', 'hold@1 closed@9', 'finished 8.0, ended'],
  ['a pause in a hold breaks it off', 'hold@1 pause@3', 'paused 2.0, paused'],
  ['what is said in a pause is talk', 'pause@1 hold@2 mark@6 lifted@7', 'paused'],
  ['after a pause a fresh hold is needed', 'hold@1 pause@3 resume@9 mark@12', 'paused 2.0, waiting, asks: mark-without-hold'],
  ['pause said twice is one pause', 'pause@1 pause@3 resume@5 hold@6', 'holding'],
  ['resume without a pause is nothing', 'hold@1 resume@2 mark@4', 'kept 3.0, waiting'],
  ['a page that is hidden in a hold breaks it off, and coming back waits', 'hold@1 hidden@2 back@60', 'paused 1.0, waiting'],
  ['void in a hold takes the rep out of the count', 'hold@1 void@3', 'handler-says 2.0, waiting'],
  ['void with no hold says that it was never offered', 'void@1', 'not-offered 0.0, waiting'],
  [
    'void after the marker is a refusal of its own, the marker stands',
    'hold@1 mark@4 void@6',
    'kept 3.0, not-offered 0.0, waiting',
  ],
  ['easier in a hold waits until the hold is over', 'hold@1 easier@2', 'holding, asks: not-during-a-hold'],
  ['harder between reps goes one up', 'harder@1', 'waiting, on hold-4'],
  ['a key pressed twice as fast as can be is pressed twice', 'harder@1 harder@1', 'waiting, on hold-5'],
  ['harder and easier are back where they were', 'harder@1 easier@2', 'waiting'],
  ['easier on the lowest step is nothing', 'easier@1 easier@2', 'waiting'],
  [
    'harder past the top stays at the top',
    Array.from({ length: 12 }, (_, i) => `harder@${i + 1}`).join(' '),
    'waiting, on claw-file',
  ],
  ['undo with nothing said is nothing', 'undo@1', 'waiting'],
  ['undo in a hold takes the hold back', 'hold@1 undo@2', 'waiting'],
  [
    'undo after the marker goes on with the hold, and the seconds go on counting',
    'hold@1 mark@2 undo@2.5 mark@4.5',
    'kept 3.5, waiting',
  ],
  ['undo twice takes the hold back as well', 'hold@1 mark@4 undo@5 undo@6', 'waiting'],
  ['three undos after two words are two', 'hold@1 mark@4 undo@5 undo@6 undo@7', 'waiting'],
  ['undo after a pause takes the pause back', 'pause@1 undo@2', 'waiting'],
  [
    'undo after a pause in a hold goes on with the hold, while the pause lasts',
    'hold@1 pause@3 undo@4 mark@5',
    'kept 4.0, waiting',
  ],
  [
    'undo after the pause is over does not bring back the hold that it broke off',
    'hold@1 pause@3 resume@60 undo@61 mark@62',
    'paused 2.0, waiting, asks: mark-without-hold',
  ],
  ['however often it is said', 'hold@1 mark@4.2 hold@6 pause@8 resume@60 undo@61 undo@62', 'kept 3.2, paused 2.0, waiting'],
  ['nor the hold that a hidden page broke off', 'hold@1 hidden@3 back@60 undo@61', 'paused 2.0, waiting'],
  [
    'undo after a pause between reps takes back the word before it',
    'hold@1 mark@4 pause@5 resume@9 undo@10',
    'paused 4.0, waiting',
  ],
  ['undo after a hold that followed a pause takes back that hold', 'pause@1 resume@3 hold@5 undo@7', 'waiting'],
  ['undo in a second pause takes back that one alone', 'pause@1 resume@3 pause@5 undo@6 undo@7', 'waiting'],
  ['undo after the end opens the session again', 'hold@1 mark@4 finish@6 undo@7', 'kept 3.0, waiting'],
  ['nothing but undo is heard after the end', 'finish@1 hold@2 mark@6', 'ended'],
  ['finish said twice ends once', 'finish@1 finish@2', 'ended'],
  ['undo of a step asked for brings the step back', 'harder@1 undo@2', 'waiting'],
  [
    'two lifts go back by half a step',
    'harder@1 hold@2 lifted@3 hold@5 lifted@6',
    'lifted 1.0, lifted 1.0, waiting, on hold-3~hold-4',
  ],
  [
    'and undo of the lift and its hold is on the whole step again',
    'harder@1 hold@2 lifted@3 hold@5 lifted@6 undo@7 undo@8',
    'lifted 1.0, waiting, on hold-4',
  ],
];

/** What *stay* does, after a call and without one. */
const STAY: readonly (readonly [title: string, script: string, told: string])[] = [
  ['stay with nothing called is nothing', 'stay@1', 'waiting'],
  ['stay in a hold waits until the hold is over', 'hold@1 stay@2', 'holding, asks: not-during-a-hold'],
  [
    'stay after half a step was called goes on with the whole step, and the reps stand',
    'harder@1 hold@2 lifted@3 hold@5 lifted@6 stay@8',
    'lifted 1.0, lifted 1.0, waiting, on hold-4',
  ],
  [
    'undo of stay follows the call after all',
    'harder@1 hold@2 lifted@3 hold@5 lifted@6 stay@8 undo@9',
    'lifted 1.0, lifted 1.0, waiting, on hold-3~hold-4',
  ],
  [
    'stay after five clean reps keeps the step that was passed',
    `${[0, 1, 2, 3, 4].map((i) => `hold@${1 + 5 * i} mark@${4.2 + 5 * i}`).join(' ')} stay@26`,
    'kept 3.2, kept 3.2, kept 3.2, kept 3.2, kept 3.2, waiting',
  ],
  [
    'stay comes too late once a trial has followed the call',
    'harder@1 hold@2 lifted@3 hold@5 lifted@6 hold@8 mark@12 stay@13',
    'lifted 1.0, lifted 1.0, kept 4.0, waiting, on hold-3~hold-4',
  ],
  [
    'a refusal is no trial: stay still declines the call before it',
    'harder@1 hold@2 lifted@3 hold@5 lifted@6 void@8 stay@9',
    'lifted 1.0, lifted 1.0, not-offered 0.0, waiting, on hold-4',
  ],
  ['stay answers calls of the app and not your own word', 'harder@1 stay@2', 'waiting, on hold-4'],
  [
    'stay said twice is stay once',
    'harder@1 hold@2 lifted@3 hold@5 lifted@6 stay@8 stay@9',
    'lifted 1.0, lifted 1.0, waiting, on hold-4',
  ],
];

test.each(STAY)('%s', (_, script, told) => {
  expect(tell(play(script))).toBe(told);
});

test('stay takes the half step out of the ladder, and the return out of the day; both come again when they are called again', () => {
  const split = 'harder@1 hold@2 lifted@3 hold@5 lifted@6';
  const { standing, log } = play(`${split} stay@8`).state;
  expect(standing.steps).toEqual(PLAN.steps);
  expect([standing.returns, standing.today.returns, standing.trials.count, standing.today.reps]).toEqual([{}, 0, 0, 2]);
  expect(log.filter(({ type }) => type === 'called').map(({ body }) => (body as { kind: string }).kind)).toEqual([
    'raise',
    'split',
    'remain',
  ]);
  const again = play(`${split} stay@8 hold@9 lifted@10 hold@12 lifted@13`).state;
  expect(again.standing.stepId).toBe('hold-3~hold-4');
  expect(again.standing.today.returns).toBe(1);
  expect(fold(again.log)).toEqual({ ok: true, state: again });
});

test('a trial that was put in before stay afterwards does not undo it: the step is still the one that was practised', () => {
  const { log } = play('harder@1 hold@2 lifted@3 hold@5 lifted@6 stay@8').state;
  const words = play('hold@1 lifted@2').state.log.slice(1);
  const between = log.findIndex((event) => event.type === 'word-heard' && event.body.word === 'stay');
  const folded = fold([
    ...log.slice(0, between),
    ...words.map((event) => ({ ...event, id: `x:${event.id}` })),
    ...log.slice(between),
  ]);
  expect(folded.ok && folded.state.standing.stepId).toBe('hold-4');
});

test('after stay the count begins afresh, so that the same call does not come again with the next rep', () => {
  const five = [0, 1, 2, 3, 4].map((i) => `hold@${1 + 5 * i} mark@${4.2 + 5 * i}`).join(' ');
  const { standing, reps } = play(`${five} stay@26 hold@28 mark@32`).state;
  expect(reps.map(({ calls }) => calls.length)).toEqual([0, 0, 0, 0, 1, 0]);
  expect(standing).toMatchObject({ stepId: 'hold-3', passed: [], trials: { count: 1, kept: 1 } });
});

test.each(TABLE)('%s', (_, script, told) => {
  expect(tell(play(script))).toBe(told);
});

test('the half step is gone from the ladder once the lift that caused it is undone', () => {
  const split = play('harder@1 hold@2 lifted@3 hold@5 lifted@6');
  expect(split.state.standing.steps).toHaveLength(PLAN.steps.length + 1);
  expect(say(split, 'undo', 7).state.standing.steps).toEqual(PLAN.steps);
});

test('a word that two ears report for one moment is one word', () => {
  const heard = { word: 'harder', startedAtS: 1, endedAtS: 1.4, decidedAtS: 1.6, confidence: 0.9 } as const;
  const once = feed(open(sessionStart(PLAN)), { kind: 'heard', heard: { ...heard, by: 'own-words' } });
  const twice = feed(once, { kind: 'heard', heard: { ...heard, startedAtS: 1.1, by: 'platform' } });
  expect(tell(twice)).toBe('waiting, on hold-4');
});

test.each([
  [
    'the browser’s recogniser may hear two holds a second apart, and both were said',
    'platform',
    'platform',
    2,
    'holding since 2',
  ],
  ['two ears that tell of one hold a second apart heard one', 'own-words', 'platform', 2, 'holding since 1'],
  ['two ears that tell of a hold two seconds apart heard two', 'own-words', 'platform', 3, 'holding since 3'],
] as const)('%s', (_, first, second, atS, told) => {
  const hold = (by: 'own-words' | 'platform', startedAtS: number): Input => ({
    kind: 'heard',
    heard: { word: 'hold', startedAtS, endedAtS: startedAtS + 0.4, decidedAtS: startedAtS + 0.6, confidence: 0.9, by },
  });
  const { phase } = feed(feed(open(sessionStart(PLAN)), hold(first, 1)), hold(second, atS)).state;
  expect(phase.phase === 'holding' && `holding since ${phase.sinceS}`).toBe(told);
});

test('words that come late count by when they were begun, not by when they were understood', () => {
  const late = feed(play('hold@1'), {
    kind: 'heard',
    heard: { word: 'mark', startedAtS: 4, endedAtS: 4.4, decidedAtS: 9, confidence: 0.9, by: 'own-words' },
  });
  expect(tell(late)).toBe('kept 3.0, waiting');
});

test('a marker that was begun before its hold, as an ear may report it, never holds for less than nothing', () => {
  expect(tell(play('hold@5 mark@4'))).toBe('short 0.0, waiting');
});

test('in a pause an ear is believed one word only, the one that ends it; a hand means every key', () => {
  const say = (word: Word, startedAtS: number, by: Heard['by']): Input => ({
    kind: 'heard',
    heard: { word, startedAtS, endedAtS: startedAtS + 0.4, decidedAtS: startedAtS + 0.6, confidence: 0.9, by },
  });
  const paused = feed(open(sessionStart(PLAN)), say('pause', 1, 'own-words'));
  expect(paused.state.phase.phase).toBe('paused');
  for (const word of ['finish', 'undo', 'hold', 'harder'] as const)
    expect(feed(paused, say(word, 5, 'own-words')).state.log, word).toEqual(paused.state.log);
  expect(feed(paused, say('resume', 5, 'own-words')).state.phase.phase).toBe('waiting');
  expect(feed(paused, say('finish', 5, 'key')).state.phase.phase).toBe('ended');
});

test('an undo, an easier step and an end come into the log by voice as they do by key', () => {
  const log = (by: Heard['by']) =>
    (['hold', 'mark', 'harder', 'undo', 'finish'] as const)
      .reduce(
        (so, word, i) =>
          feed(so, {
            kind: 'heard',
            heard: { word, startedAtS: 1 + 3 * i, endedAtS: 1.4 + 3 * i, decidedAtS: 1.6 + 3 * i, confidence: 1, by },
          }),
        open(sessionStart(PLAN)),
      )
      .state.log.map(({ type }) => type);
  expect(log('own-words')).toEqual(log('key'));
  expect(log('own-words').slice(-2)).toEqual(['undone', 'session-ended']);
});
