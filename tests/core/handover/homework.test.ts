/** What an owner is told of a homework that arrives, and which sessions go back to the trainer. */
import { describe, expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import {
  arrivalOf,
  type HomeworkReturned,
  latestOfEach,
  planOfHomework,
  sessionsToReturn,
} from '../../../src/core/handover/homework.ts';
import { homework, received } from './homework-sample.ts';

describe('a homework that is opened', () => {
  test('is new to whom has none of it', () => {
    expect(arrivalOf(homework(), [received({ id: 'another' })])).toEqual({ kind: 'new' });
  });

  test('is an answer when its number is higher: it is told beside the latest one accepted', () => {
    const [first, second] = [received(), received({ revision: 2 })];
    expect(arrivalOf(homework({ revision: 3 }), [second, first])).toEqual({ kind: 'newer', before: second });
  });

  test('is known when it is opened twice, in whatever order its keys come', () => {
    const { id, revision, ...rest } = homework();
    expect(arrivalOf({ ...rest, revision, id }, [received()]).kind).toBe('same');
    expect(arrivalOf(homework({ rule: { kind: 'steady' } }), [received()]).kind).toBe('same');
  });

  test('is older when a later one is practised already', () => {
    expect(arrivalOf(homework(), [received({ revision: 2 })]).kind).toBe('older');
  });

  test('is at odds when the same number says something else', () => {
    expect(arrivalOf(homework({ note: 'Twice a day.' }), [received()]).kind).toBe('at-odds');
  });
});

test('it becomes a plan of the owner’s own: no file can name the plan it writes over', () => {
  const plan = planOfHomework(homework(), 'own', 'her-dog');
  expect(plan).toEqual({ ...DEMO_PLAN, id: 'own', dogId: 'her-dog' });
  expect(planOfHomework(homework({ rule: { kind: 'cautious' } }), 'own', 'her-dog').rule).toEqual({ kind: 'cautious' });
});

test('each homework is listed once, by its latest sending', () => {
  const sent = [
    received({ givenAt: '2026-03-01T10:00:00Z' }),
    received({ revision: 2, givenAt: '2026-03-09T10:00:00Z' }),
    received({ id: 'other', givenAt: '2026-03-05T10:00:00Z' }),
  ];
  expect(latestOfEach(sent).map(({ homework: { id, revision } }) => [id, revision])).toEqual([
    [homework().id, 2],
    ['other', 1],
  ]);
});

describe('what goes back to the trainer', () => {
  const practised = [
    { id: 'monday', planId: 'her-plan', events: 30 },
    { id: 'tuesday', planId: 'another-plan', events: 20 },
    { id: 'friday', planId: 'her-plan', events: 25 },
  ];
  const back = (...sessions: HomeworkReturned['sessions']): HomeworkReturned => ({ homeworkId: homework().id, sessions });
  const due = (...returned: HomeworkReturned[]) =>
    sessionsToReturn(homework().id, practised, { received: [received()], returned }).map(({ id }) => id);

  test('are the sessions on this homework, and no others', () => {
    expect(due()).toEqual(['monday', 'friday']);
  });

  test('each once, until it is put right', () => {
    expect(due(back({ id: 'monday', events: 30 }))).toEqual(['friday']);
    expect(due(back({ id: 'monday', events: 29 }, { id: 'friday', events: 25 }))).toEqual(['monday']);
  });

  test('what went back of another homework counts nothing here', () => {
    expect(due({ homeworkId: 'other', sessions: [{ id: 'monday', events: 30 }] })).toEqual(['monday', 'friday']);
  });
});
