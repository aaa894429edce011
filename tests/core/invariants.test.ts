/** What must hold of the live engine on any outcomes, under any rule; the seed is in the titles. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LONG_LADDER } from '../../demo/long-ladder.ts';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { calls, events, open, type Played, sessionStart, type } from '../../demo/typed-session.ts';
import { checkPlan } from '../../src/core/check-plan.ts';
import { editPlan } from '../../src/core/edit-plan.ts';
import { fold } from '../../src/core/fold.ts';
import { firstStart, nextStart, planAfter } from '../../src/core/next-start.ts';
import { criterionS, indexOfStep, type Plan, type Step } from '../../src/core/plan.ts';
import { CHOICES, machineOf, type SessionRule } from '../../src/core/rule.ts';
import { isStoredRule } from '../../src/core/stored-rule.ts';

const SEED = Number(process.env.SEED ?? 20260306);
const RUNS = { seed: SEED, numRuns: 120 };

const anyRule: fc.Arbitrary<SessionRule> = fc.oneof(
  fc.constantFrom(...CHOICES),
  fc
    .tuple(fc.integer({ min: 1, max: 10 }), fc.nat({ max: 9 }), fc.constantFrom('blocks' as const, 'sliding' as const))
    .map(([of, less, window]): SessionRule => ({ kind: 'k-of-m', kept: Math.max(1, of - less), of, window })),
);
/** k kept, l lifted, with lifts frequent enough to go down as well as up. */
const trials = fc.array(fc.constantFrom('k', 'k', 'k', 'l'), { maxLength: 60 });
const reps = fc.array(fc.constantFrom('k', 'k', 'k', 'l', 's', 'v', 'n', 'e', 'h', 't', 'u'), { maxLength: 60 });
const anyStart = fc.nat({ max: LONG_LADDER.steps.length - 1 });

function opened(rule: SessionRule, start: number, plan: Plan = LONG_LADDER): Played {
  const startStepId = (plan.steps[start] as Step).id;
  return open({ ...sessionStart(plan, { ...firstStart(plan.steps), startStepId }), rule });
}

describe(`the engine on any outcomes, under any rule, seed ${SEED}`, () => {
  test('void and never offered reps change no call and no count', () => {
    const extras = fc.array(fc.tuple(fc.nat(), fc.constantFrom('v', 'v', 'n')), { maxLength: 12 });
    fc.assert(
      fc.property(anyRule, trials, extras, (rule, bare, added) => {
        const mixed: string[] = [...bare];
        for (const [at, extra] of added) mixed.splice(at % (mixed.length + 1), 0, extra);
        const moves = (letters: readonly string[]) => {
          // From the lowest step, which has no warm-up: that is measured in reps and not in trials.
          const played = type(opened(rule, 0), letters.join(''));
          return calls(played)
            .filter((call) => !call.startsWith('rest'))
            .concat(played.state.standing.stepId);
        };
        expect(moves(mixed)).toEqual(moves(bare));
      }),
      RUNS,
    );
  });

  test('warm-up reps change neither history nor moves; two that lift start there', () => {
    fc.assert(
      fc.property(anyRule, anyStart, fc.constantFrom('kk', 'kl', 'lk', 'll', 'ss', 'sl'), (rule, start, warm) => {
        const { standing } = type(opened(rule, start + (start === 0 ? 1 : 0)), warm).state;
        expect(standing.trials.count).toBe(0);
        expect(standing.warmUp).toBeNull();
        expect(standing.returns).toEqual({});
        const begun = warm === 'll' ? -1 : 0;
        expect(indexOfStep(standing.steps, standing.stepId)).toBe(Math.max(1, start) + begun);
      }),
      RUNS,
    );
  });

  test('a raise comes only directly after a kept rep, a return or a split only directly after a lift', () => {
    // Four of five, sliding, may raise on a lift (rules.ts): it is left out, being shown to be seen through.
    const rules = anyRule.filter((rule) => rule.kind !== 'k-of-m' || rule.kept === rule.of);
    fc.assert(
      fc.property(rules, anyStart, trials, (rule, start, letters) => {
        for (const { outcome, calls: made } of type(opened(rule, start), letters.join('')).state.reps) {
          const kinds = made.map(({ kind }) => kind);
          if (kinds.includes('raise')) expect(outcome).toBe('kept');
          if (kinds.includes('return') || kinds.includes('split')) expect(outcome).toBe('lifted');
        }
      }),
      RUNS,
    );
  });

  test('whatever is called, the step is on the ladder, and half steps lie strictly between their neighbours', () => {
    fc.assert(
      fc.property(anyRule, anyStart, reps, (rule, start, letters) => {
        const { standing } = type(opened(rule, start), letters.join('')).state;
        const { steps } = standing;
        expect(indexOfStep(steps, standing.stepId)).toBeGreaterThanOrEqual(0);
        expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length);
        expect(steps.filter(({ halfOf }) => !halfOf)).toEqual(LONG_LADDER.steps);
        steps.forEach((step, i) => {
          if (!step.halfOf) return;
          const [below, above] = [steps[i - 1] as Step, steps[i + 1] as Step];
          if (step.kind === 'duration') expect(criterionS(step)).toBeGreaterThan(criterionS(below));
          if (step.kind === 'duration') expect(criterionS(step)).toBeLessThan(criterionS(above));
          expect(indexOfStep(steps, step.halfOf.belowId)).toBeLessThan(i);
          expect(indexOfStep(steps, step.halfOf.aboveId)).toBeGreaterThan(i);
        });
      }),
      RUNS,
    );
  });

  test('after every move the count begins afresh', () => {
    fc.assert(
      fc.property(anyRule, anyStart, trials, (rule, start, letters) => {
        let played = opened(rule, start);
        for (const letter of letters) {
          const before = played.state.standing.stepId;
          played = type(played, letter);
          if (played.state.standing.stepId !== before) expect(played.state.standing.trials.count).toBe(0);
        }
      }),
      RUNS,
    );
  });

  test('renaming steps and areas changes nothing but the names', () => {
    fc.assert(
      fc.property(anyRule, anyStart, reps, (rule, start, letters) => {
        const renamed = { ...LONG_LADDER, steps: LONG_LADDER.steps.map(renamedStep) };
        const moves = (plan: Plan) => {
          const played = type(opened(rule, start, plan), letters.join(''));
          return played.state.reps.map(({ outcome, calls: made }) => [
            outcome,
            made.map(({ kind, reasons }) => [kind, reasons.map((each) => each.kind)]),
          ]);
        };
        expect(moves(renamed)).toEqual(moves(LONG_LADDER));
      }),
      RUNS,
    );
  });

  test('the log of any session folds back to what was seen, whatever the rule', () => {
    fc.assert(
      fc.property(anyRule, anyStart, reps, (rule, start, letters) => {
        const played = type(opened(rule, start), letters.join(''));
        const again = fold(JSON.parse(JSON.stringify(events(played))));
        expect(again.ok && again.state).toEqual(played.state);
      }),
      RUNS,
    );
  });

  test('what the handler is offered, and any k of m within bounds, is a rule that can be stored', () => {
    fc.assert(
      fc.property(anyRule, (rule) => {
        expect(isStoredRule(JSON.parse(JSON.stringify(rule)))).toBe(true);
        expect(machineOf(rule, 'handling').next(machineOf(rule, 'handling').start, true).verdict).not.toBe('return');
      }),
      RUNS,
    );
  });

  test('lifts at one place never raise the alarm of another, in whatever order they come', () => {
    const steps = DEMO_PLAN.steps.map(
      (step, i): Step => (step.kind === 'handling' && i % 2 === 0 ? { ...step, area: 'mouth' } : step),
    );
    const plan = { ...DEMO_PLAN, steps };
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.constantFrom(7, 8), fc.boolean()), { maxLength: 30 }), (order) => {
        const scores = (each: readonly (readonly [number, boolean])[]) => {
          let { alarms, ...played } = {
            ...opened({ kind: 'cautious' }, 7, plan),
            alarms: {} as Readonly<Record<string, number>>,
          };
          for (const [at, kept] of each) {
            const standing = { ...played.state.standing, stepId: (steps[at] as Step).id, warmUp: null, steps, alarms };
            played = type({ ...played, state: { ...played.state, standing } }, kept ? 'k' : 'l');
            alarms = played.state.standing.alarms as Readonly<Record<string, number>>;
          }
          return alarms;
        };
        const apart = { ...scores(order.filter(([at]) => at === 7)), ...scores(order.filter(([at]) => at === 8)) };
        expect(scores(order)).toEqual(apart);
      }),
      RUNS,
    );
  });
});

function renamedStep(step: Step, i: number): Step {
  const title = `Step number ${i}`;
  return step.kind === 'handling'
    ? { ...step, title, area: 'mouth', halfway: { title: `Half ${i}`, extent: 'x', forS: 1 } }
    : { ...step, title };
}

describe('a step taken out of the plan while a session runs', () => {
  const without = (...gone: string[]) => ({ ...DEMO_PLAN, steps: DEMO_PLAN.steps.filter(({ id }) => !gone.includes(id)) });
  const standingOn = (stepId: string) => ({ ...type(open(sessionStart(DEMO_PLAN)), 'kk').state.standing, stepId });

  test('does not touch the session: it keeps the ladder that it began with', () => {
    const played = type(open(sessionStart(DEMO_PLAN)), 'kkkkk kkkkk');
    expect(played.state.standing.stepId).toBe('hold-2');
    expect(played.state.standing.steps).toEqual(DEMO_PLAN.steps);
  });

  test('sends the next session to the nearest easier step that is left, with a fresh count', () => {
    const next = nextStart(standingOn('hold-3'), false, 1, without('hold-3', 'hold-2'));
    expect(next.startStepId).toBe('hold-1');
    expect(next.carried.trials.count).toBe(0);
    expect(next.steps).toEqual(without('hold-3', 'hold-2').steps);
  });

  test('sends it to the first step when nothing easier is left', () => {
    expect(nextStart(standingOn('hold-0'), false, 1, without('hold-0')).startStepId).toBe('hold-1');
  });

  test('changes nothing for a session that stood elsewhere: its count goes on', () => {
    const next = nextStart(standingOn('hold-3'), false, 1, without('claw-file'));
    expect(next.startStepId).toBe('hold-3');
    expect(next.carried.trials.count).toBe(2);
  });

  test('a step that now asks for other seconds, or another rule, begins its count afresh', () => {
    const slower = {
      ...DEMO_PLAN,
      steps: DEMO_PLAN.steps.map((step) => (step.id === 'hold-3' ? { ...step, holdForS: 3.5 } : step)),
    };
    expect(nextStart(standingOn('hold-3'), false, 1, slower).carried.trials.count).toBe(0);
    const stricter: Plan = { ...DEMO_PLAN, rule: { kind: 'cautious' } };
    expect(nextStart(standingOn('hold-3'), false, 1, stricter).carried.trials.count).toBe(0);
    expect(nextStart(standingOn('hold-3'), false, 1, DEMO_PLAN).carried.trials.count).toBe(2);
  });

  test('half steps that a session put in can be saved into the plan, once, and only between steps that are left', () => {
    const { standing } = type(open(sessionStart(DEMO_PLAN)), 'h ll').state;
    const saved = planAfter(DEMO_PLAN, standing);
    expect(saved.steps.map(({ id }) => id).slice(0, 3)).toEqual(['hold-0', 'hold-0~hold-1', 'hold-1']);
    expect(planAfter(saved, standing)).toEqual(saved);
    expect(planAfter(without('hold-0'), standing).steps).toEqual(without('hold-0').steps);
  });

  test('a half step that the plan has no room for any more is dropped: the edited plan wins, and stays one that may be kept', () => {
    const { standing } = type(open(sessionStart(DEMO_PLAN)), 'h ll').state;
    const shorter = { kind: 'reword', stepId: 'hold-1', title: 'Lie flat a moment', seconds: 0.4 } as const;
    const edited = editPlan(DEMO_PLAN, shorter);
    if (!edited.ok) throw new Error(edited.refusal.kind);
    expect(planAfter(edited.plan, standing)).toEqual(edited.plan);
    const [lowest, next, ...rest] = DEMO_PLAN.steps as [Step, Step, ...Step[]];
    const turned = { ...DEMO_PLAN, steps: [{ ...next, holdForS: 0 } as Step, { ...lowest, holdForS: 1 } as Step, ...rest] };
    expect(checkPlan(turned)).toEqual([]);
    expect(planAfter(turned, standing)).toEqual(turned);
  });
});
