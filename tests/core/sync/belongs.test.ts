/** Which events go into a dog's database, and which a database may bring. */
import { describe, expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../../demo/scenario.ts';
import { events, open, sessionStart } from '../../../demo/typed-session.ts';
import type { LibraryEvent, StoredEvent } from '../../../src/core/event.ts';
import { USUAL_KEYS } from '../../../src/core/key-bindings.ts';
import { USUAL_LIMITS } from '../../../src/core/limits.ts';
import { libraryOf, mayCome } from '../../../src/core/sync/belongs.ts';

let seq = 0;
const made = (draft: Pick<LibraryEvent, 'type' | 'body'>) =>
  ({
    id: `a:${++seq}`,
    device: 'a',
    seq,
    session: null,
    version: 1,
    at: '2026-03-02T18:00:00Z',
    monoMs: 0,
    ...draft,
  }) as LibraryEvent;

const named = (id: string) => ({ id, name: id, archived: false });
const SOUND = made({
  type: 'sound-taught',
  body: { word: 'hold', handler: 'Noor', said: 'chin', sampleRateHz: 16_000, samples: Int16Array.of(1) },
});
const SETTINGS = made({
  type: 'settings-saved',
  body: { volume: 1, mode: 'both', speakCalls: true, keys: USUAL_KEYS, handler: 'Noor', place: 'bath', limits: USUAL_LIMITS },
});
const OWN = [
  made({ type: 'dog-saved', body: DEMO_DOG }),
  made({ type: 'plan-saved', body: DEMO_PLAN }),
  made({ type: 'handler-saved', body: named('Noor') }),
  made({ type: 'place-saved', body: named('bath') }),
];
const OTHERS = [
  made({ type: 'dog-saved', body: { ...DEMO_DOG, id: 'another' } }),
  made({ type: 'plan-saved', body: { ...DEMO_PLAN, dogId: 'another' } }),
  made({ type: 'handler-saved', body: named('Ben') }),
  made({ type: 'place-saved', body: named('surgery') }),
];

describe('a dog’s database', () => {
  test('gets the dog, its plans, and whom and where its sessions name', () => {
    const sessions = [{ id: 's', handler: 'Noor', place: 'bath' }];
    expect(libraryOf(DEMO_DOG.id, [...OWN, ...OTHERS, SOUND, SETTINGS], sessions)).toEqual(OWN);
  });

  test('brings nothing of another dog', () => {
    const [start] = events(open({ ...sessionStart(DEMO_PLAN), dogId: 'another' }));
    for (const event of [OTHERS[0], OTHERS[1], start]) expect(mayCome(event as StoredEvent, DEMO_DOG.id)).toBe(false);
    const [own] = events(open(sessionStart(DEMO_PLAN)));
    for (const event of [...OWN, own]) expect(mayCome(event as StoredEvent, DEMO_DOG.id)).toBe(true);
  });

  test('brings no sound and no settings: whoever writes there has no say about the ear', () => {
    for (const event of [SOUND, SETTINGS]) expect(mayCome(event, DEMO_DOG.id)).toBe(false);
  });
});
