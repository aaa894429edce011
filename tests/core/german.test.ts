/** The core in German: a session told and summed up, a ready ladder, a refused plan. English is restored after each. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { demoDog, demoPlan } from '../../demo/scenario.ts';
import { open, sessionStart, type } from '../../demo/typed-session.ts';
import { checkPlan, sayProblem } from '../../src/core/check-plan.ts';
import { HANDLED_AREAS, POSITIONS, readyPlan } from '../../src/core/ladders.ts';
import { speak } from '../../src/core/language.ts';
import { firstStart } from '../../src/core/next-start.ts';
import { halfStep, type Plan, titleWith } from '../../src/core/plan.ts';
import { sayDay, sayDayShort } from '../../src/core/progress/day.ts';
import { CHOICES, explainRule, nameRule, sayRule, USUAL_PERCENTILE } from '../../src/core/rule.ts';
import { sayCall, sayReason } from '../../src/core/sentences.ts';
import { sayStart } from '../../src/core/start-words.ts';
import { sayPicture, sayRep, summarize } from '../../src/core/summary.ts';
import { englishIn } from '../house/english-words.ts';

beforeEach(() => speak('de'));
afterEach(() => speak('en'));

const germanPlan = (): Plan => readyPlan('plan', 'dog', 'chin-on-towel', 'paws');

function played(reps: string, startStepId: string) {
  const plan = germanPlan();
  return type(open(sessionStart(plan, { ...firstStart(plan.steps), startStepId })), reps).state;
}

describe('a session', () => {
  test('is summed up with a decimal comma and no English word', () => {
    const state = played('kk kkkkk ll k s v n', 'hold-3');
    const { finding, gist, grounds } = summarize(state);
    expect(finding).toBe('6 von 8 Versuchen gehalten.');
    expect(gist).toEqual(['2-mal abgehoben, beide Male auf der Stufe 4 s.', 'Von 3 s bis 3,5 s: 1-mal höher, 1 halbe Stufe.']);
    const told = [finding, ...gist, ...grounds, sayPicture(state.reps), ...state.reps.map(sayRep)];
    expect(told.flatMap(englishIn)).toEqual([]);
    expect(state.reps.map(sayRep).join(' ')).toMatch(/Wiederholung 8, Kinn auf Handtuch 4 s\. Abgehoben, nach \d,\d s\./);
  });

  test('is called out in German, with the half step that the rule puts in', () => {
    const { reps, standing } = played('kk kkkkk ll', 'hold-3');
    const said = reps.flatMap(({ calls }) => calls.map((call) => sayCall(call, standing.steps)));
    expect(said).toEqual([
      'Aufwärmen vorbei: Kinn auf Handtuch 3 s. Zwei leichte Wiederholungen sind geschafft.',
      'Eine Stufe höher: Kinn auf Handtuch 4 s. Die ersten 5 von 5 auf dieser Stufe gehalten.',
      'Halbe Stufe: Kinn auf Handtuch 3,5 s. 2-mal hintereinander abgehoben: Die Stufe war zu groß. Der Schritt nach oben wird halbiert.',
    ]);
  });

  test('that hurts is sent to the veterinarian', () => {
    const alarm = (level: 'look' | 'veterinarian') => sayReason({ kind: 'area-alarm', area: 'paws', level });
    expect(alarm('veterinarian')).toContain('frag deine Tierarztpraxis');
    expect(alarm('look')).toBe('Oft abgehoben, wenn es um die Pfoten geht: Lass es für heute und sieh nach. Tut etwas weh?');
  });

  test('begins with its reason', () => {
    expect(sayStart({ kind: 'gap', days: 30 })).toBe('30 Tage ohne Training, darum tiefer.');
  });
});

describe('a ready ladder', () => {
  test.each(POSITIONS.flatMap((position) => HANDLED_AREAS.map((area) => [position, area] as const)))(
    '%s, %s: may be kept as it is, its cautions name the veterinarian, and nothing of it is English',
    (position, area) => {
      const plan = readyPlan('plan', 'dog', position, area);
      expect(checkPlan(plan)).toEqual([]);
      const words = plan.steps.flatMap((step) =>
        step.kind === 'handling'
          ? [step.title, step.extent, step.caution ?? '', step.halfway?.title ?? '', step.halfway?.extent ?? '']
          : [step.title],
      );
      expect([plan.title, plan.position, ...words].flatMap(englishIn)).toEqual([]);
      const cautions = plan.steps.flatMap((step) => (step.kind === 'handling' && step.caution ? [step.caution] : []));
      expect(cautions.length).toBeGreaterThan(0);
      for (const caution of cautions) expect(caution).toMatch(/Tierarztpraxis/);
      // As long as the editor of a step lets them be.
      expect(plan.steps.filter(({ title }) => title.length > 60)).toEqual([]);
      expect(cautions.filter((caution) => caution.length > 240)).toEqual([]);
    },
  );

  test('keeps the words it was made with when English is spoken later, and is still sound', async () => {
    const plan = germanPlan();
    await speak('en');
    expect(plan.title).toBe('Pfoten: Kinn auf gerolltem Handtuch');
    expect(checkPlan(readyPlan('plan', 'dog', 'chin-on-lap', 'eyes'))).toEqual([]);
    expect(checkPlan(plan)).toEqual([]);
  });

  test('has halves whose titles name their seconds with a comma, and follows them in either language', async () => {
    const [, , two, three] = germanPlan().steps;
    if (!two || !three) throw new Error('a ladder of six holds');
    const half = halfStep(two, three, 'half');
    expect(half?.title).toBe('Kinn auf Handtuch 2,5 s');
    await speak('en');
    expect(half && titleWith(half, 2.25)).toBe('Kinn auf Handtuch 2.25 s');
  });
});

test('an empty app opens with the invented dog and her plan in German, and the plan may be kept', () => {
  const [dog, plan] = [demoDog(), demoPlan()];
  expect(plan.title).toBe('Eine Kralle feilen');
  expect(checkPlan(plan)).toEqual([]);
  const words = plan.steps.flatMap((step) =>
    step.kind === 'handling' ? [step.title, step.extent, step.caution ?? ''] : step.title,
  );
  expect([dog.notes, dog.food ?? '', dog.scares ?? '', plan.position, ...words].flatMap(englishIn)).toEqual([]);
});

test('a plan that cannot be kept is refused in German, with its place', () => {
  const plan = germanPlan();
  const steps = [plan.steps[2], plan.steps[1]].flatMap((step) => step ?? []);
  expect(checkPlan({ ...plan, title: ' ', steps }).map(sayProblem)).toEqual([
    'title: erwartet: ein paar Worte; gefunden: " "',
    'steps[1].holdForS: erwartet: mehr als 2, die Stufe darunter; gefunden: 1',
  ]);
});

test('every rule is named, said and explained without an English word', () => {
  const rules = [...CHOICES, USUAL_PERCENTILE];
  expect(rules.flatMap((rule) => [nameRule(rule), sayRule(rule), explainRule(rule)]).flatMap(englishIn)).toEqual([]);
  expect(rules.map(nameRule)).toContain('9 von 10, in Blöcken');
});

test('a day is written before its month, in German months and in the English ones as before', async () => {
  const march = 20_513;
  expect(sayDay(march)).toBe('1. März');
  await speak('en');
  expect([sayDay(march), sayDayShort(march), sayDayShort(march + 184)]).toEqual(['1 March', '1 Mar', '1 Sep']);
});
