/** One session through everything that the engine can say, told in its own sentences; demo/typed-session.ts types the words. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { open, sessionStart, type } from '../../demo/typed-session.ts';
import { NOTHING_CARRIED } from '../../src/core/next-start.ts';
import { sayCall } from '../../src/core/sentences.ts';

const told = (reps: string): readonly string[] => {
  const passed = ['hold-4', 'hold-5', 'paw-touch', 'paw-rest', 'paw-touch~paw-rest'];
  const start = { steps: DEMO_PLAN.steps, startStepId: 'paw-touch', carried: { ...NOTHING_CARRIED, passed } };
  const played = type(open(sessionStart(DEMO_PLAN, { ...start, why: { kind: 'step-reached' } })), reps);
  const { state } = played;
  return state.reps.flatMap((rep) => rep.calls.map((call) => `${rep.n}: ${sayCall(call, state.standing.steps)}`));
};

test('warm-up, raise, split, re-earn, return, rest, and the two cautions, each with its sentence', () => {
  expect(told('kk kkkkkkkkk ll kkkkkkkkk kll l l')).toEqual([
    '2: Warm-up over: Touch the top of the paw. Two easy reps are done.',
    '11: Next step: Rest a hand on the paw 2 s. 9 of 9 held.',
    '13: Half a step: Rest a hand on the paw 1 s. 2 lifts running: the step was too big. The rise is halved.',
    '22: Next step: Rest a hand on the paw 2 s. 9 of 9 held.',
    '25: One step back: Rest a hand on the paw 1 s. 2 lifts running: the step was too big.',
    '25: Rest now. The second return today: enough for now.',
    '26: Rest now. Many lifts at the paws: leave it for today and look. Is something sore?',
    '27: One step back: Touch the top of the paw. 2 lifts running: the step was too big. No half step is prepared here.',
    '27: Rest now. Lifts keep coming at the paws. A change like this can be pain: stop handling this place and ask your veterinarian. 4 lifts in the last 8.',
  ]);
});

test('three refusals running end a session without blame', () => {
  expect(told('kk n n n')).toEqual([
    '2: Warm-up over: Touch the top of the paw. Two easy reps are done.',
    '5: Rest now. Not offered 3 times running: the dog would rather not, for now.',
  ]);
});
