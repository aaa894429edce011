/** Which dogs stand on the desk, and under which of their records. */
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../../demo/scenario.ts';
import { latestSessions } from '../../../src/core/desk/desk.ts';
import { deskDogs, dogsOfOwners } from '../../../src/core/desk/dogs.ts';
import { LATEST } from '../../../src/core/desk/needs.ts';
import type { Dog, LibraryEvent } from '../../../src/core/event.ts';
import { foldLibrary } from '../../../src/core/library.ts';
import { libraryEvents } from '../../store/event-samples.ts';
import { HOMEWORK, homework } from '../handover/homework-sample.ts';

type Draft = Parameters<typeof libraryEvents>[0][number];

const dog = (id: string, more: Partial<Dog> = {}): Draft => ({
  type: 'dog-saved',
  body: { id, name: id, notes: '', invented: false, ...more },
});
const library = (...drafts: readonly Draft[]) => foldLibrary(libraryEvents(drafts) as readonly LibraryEvent[]);
const given: Draft = { type: 'homework-given', body: { homework: HOMEWORK, dogId: 'mine', planId: 'my-plan' } };
/** What comes back from an owner: the dog and the plan as they are called there. */
const back: readonly Draft[] = [
  dog('hers', { pain: 'left paw' }),
  { type: 'plan-saved', body: { ...DEMO_PLAN, id: 'her-plan', dogId: 'hers' } },
  { type: 'homework-received', body: { homework: HOMEWORK, dogId: 'hers', planId: 'her-plan' } },
];

test('dogs of owners stand on the desk, my own do not, nor those put away', () => {
  const now = library(dog('own'), dog('client', { owner: 'Kim' }), dog('gone', { owner: 'Sam', archived: true }));
  expect(deskDogs(now).map(({ id, owner }) => [id, owner])).toEqual([['client', 'Kim']]);
  expect([...dogsOfOwners(now)]).toEqual(['client', 'gone']);
});

test('a dog that was given homework stands there too, under the name that is written on it', () => {
  expect(deskDogs(library(dog('mine'), given)).map(({ id, owner }) => [id, owner])).toEqual([['mine', 'Kim']]);
});

test('the record that comes back with homework is the same dog: one line on the desk, none on the first screen', () => {
  const now = library(dog('mine', { owner: 'Kim' }), given, ...back);
  expect(deskDogs(now)).toMatchObject([{ id: 'mine', dogIds: new Set(['mine', 'hers']), pain: 'left paw' }]);
  expect(dogsOfOwners(now)).toEqual(new Set(['mine', 'hers']));
});

test('the invented dog is the same on every device: it is never taken for somebody’s', () => {
  const onInvented: Draft = { type: 'plan-saved', body: { ...DEMO_PLAN, id: 'her-plan', dogId: DEMO_DOG.id } };
  const now = library({ type: 'dog-saved', body: DEMO_DOG }, dog('mine', { owner: 'Kim' }), given, ...back.slice(2), onInvented);
  expect(dogsOfOwners(now)).toEqual(new Set(['mine']));
});

test('on the owner’s device the very same records make no desk', () => {
  expect(deskDogs(library(dog('hers'), ...back))).toEqual([]);
  expect(dogsOfOwners(library(dog('hers'), ...back)).size).toBe(0);
});

test('of each homework the latest sending counts', () => {
  const second: Draft = {
    type: 'homework-given',
    body: { homework: homework({ revision: 2 }), dogId: 'mine', planId: 'my-plan' },
  };
  const [row] = deskDogs(library(dog('mine'), second, given));
  expect(row?.homework.map(({ homework: { revision } }) => revision)).toEqual([2]);
});

test('of each dog so many latest sessions are read as any need asks for, under all of its records', () => {
  const now = library(dog('mine', { owner: 'Kim' }), given, ...back, dog(DEMO_DOG.id));
  const sessions = Array.from({ length: 40 }, (_, nth) => ({
    id: `s${nth}`,
    dogId: ['mine', 'hers', DEMO_DOG.id][nth % 3] as string,
  }));
  const latest = latestSessions(deskDogs(now), sessions);
  expect(latest).toHaveLength(LATEST);
  expect(latest.slice(0, 3).map(({ id }) => id)).toEqual(['s0', 's1', 's3']);
});
