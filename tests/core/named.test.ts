/** Handlers and places: a new name shows on what is long past, and nothing is deleted. */
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import { open, sessionStart } from '../../demo/typed-session.ts';
import type { LibraryEvent } from '../../src/core/event.ts';
import { foldLibrary } from '../../src/core/library.ts';
import { choosable, handlersIn, namedAs, nameOf, placesIn, withNames } from '../../src/core/named.ts';

const saved = (type: 'handler-saved' | 'place-saved', id: string, name: string, seq: number, archived = false) =>
  ({
    ...{ id: `phone:${seq}`, device: 'phone', seq, session: null, version: 1, at: `2026-03-02T18:00:0${seq}Z`, monoMs: 0 },
    ...{ type, body: { id, name, archived } },
  }) as LibraryEvent;

test('a place that is renamed is renamed on old sessions too', () => {
  const old = open(sessionStart(DEMO_PLAN)).state;
  const library = foldLibrary([saved('place-saved', 'bathroom', 'bathroom, upstairs', 1)]);
  expect(old.start.place).toBe('bathroom');
  expect(withNames(old, library).start.place).toBe('bathroom, upstairs');
  expect(withNames(old, library).start.handler).toBe('demo handler');
});

test('a dog that is renamed is renamed on old sessions too; one that was deleted keeps the name written down', () => {
  const old = open(sessionStart(DEMO_PLAN)).state;
  const renamed = { ...foldLibrary([]), dogs: [{ ...DEMO_DOG, name: 'Pix' }] };
  expect(withNames(old, renamed).start.dogName).toBe('Pix');
  expect(withNames(old, foldLibrary([])).start.dogName).toBe('Pixel');
});

test('the latest name stands', () => {
  const log = [saved('handler-saved', 'me', 'Noor', 1), saved('handler-saved', 'me', 'Noor A.', 2)];
  expect(nameOf(foldLibrary(log).handlers, 'me')).toBe('Noor A.');
  expect(nameOf(foldLibrary(log).handlers, 'Sam')).toBe('Sam');
});

test('who is only used stands in the list beside who was saved, each once', () => {
  const library = foldLibrary([saved('handler-saved', 'me', 'Noor', 1)]);
  expect(handlersIn(library, 'Sam').map(({ name }) => name)).toEqual(['Noor', 'Sam']);
  expect(handlersIn(library, 'me').map(({ name }) => name)).toEqual(['Noor']);
  expect(placesIn(library, 'at home', ['kitchen', 'at home', '']).map(({ name }) => name)).toEqual(['kitchen', 'at home']);
});

test('what is put away is not offered, unless it is what is chosen now', () => {
  const all = foldLibrary([saved('place-saved', 'kitchen', 'kitchen', 1, true), saved('place-saved', 'yard', 'yard', 2)]).places;
  expect(choosable(all, 'yard').map(({ id }) => id)).toEqual(['yard']);
  expect(choosable(all, 'kitchen').map(({ id }) => id)).toEqual(['kitchen', 'yard']);
});

test('a new handler never becomes somebody who was there before', () => {
  const all = handlersIn(foldLibrary([saved('handler-saved', 'me', 'Noor', 1)]), 'me');
  const newId = () => 'fresh';
  expect(namedAs(all, 'Sam', newId)).toEqual({ id: 'Sam', name: 'Sam', archived: false });
  // 'me' is Noor by now: the next one called "me" is another person.
  expect(namedAs(all, 'me', newId)).toEqual({ id: 'fresh', name: 'me', archived: false });
  // The name of somebody who is there means that one, put away or not.
  expect(namedAs(all, 'Noor', newId)).toEqual({ id: 'me', name: 'Noor', archived: false });
});
