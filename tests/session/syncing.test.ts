/** Sync as the screens ask for it: off until wished, never in a session, two phones through a real server, stopped without a trace. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEMO_DOG } from '../../demo/scenario.ts';
import { addressFrom, type Web } from '../../src/session/web.ts';
import { value } from '../store/event-samples.ts';
import { type Couch, startCouch } from '../support/couch.ts';
import { openedApp } from './opened-app.ts';

let couch: Couch;

beforeAll(async () => {
  couch = await startCouch();
  await couch.addUser('anna', 'pa');
  await couch.addUser('ben', 'pb');
});

afterAll(() => couch.stop());

const PASSPHRASE = 'sprats in the bath';
const SIGN_IN = { path: 'sync', user: 'anna', password: 'pa', keeps: true };

/** A way out to the server, with a note of every request. */
function wayOut(): { web: Web; asked: string[] } {
  const asked: string[] = [];
  const web: Web = {
    fetch: (url, init) => {
      asked.push(`${init.method} ${new URL(url).pathname}`);
      return fetch(url, init);
    },
    addressOf: (path) => (path === 'sync' ? `${couch.url}/` : null),
    randomBytes: (count) => crypto.getRandomValues(new Uint8Array(count)),
    chance: () => 0.5,
  };
  return { web, asked };
}

async function phone(device: string) {
  const { web, asked } = wayOut();
  const opened = await openedApp({ device, web });
  const syncing = await opened.app.intents.syncing();
  if (!syncing) throw new Error('the app is not open');
  return { ...opened, syncing, asked, shown: () => opened.app.getState().sync };
}

/** Waits for what takes its time: the server is real. */
async function until(isSo: () => boolean): Promise<void> {
  for (let n = 0; !isSo(); n++) {
    if (n > 500) throw new Error('it did not come');
    await new Promise((next) => setTimeout(next, 10));
  }
}

let databases = 0;
async function database(): Promise<string> {
  const name = `pixel-${++databases}`;
  await couch.addDatabase(name, ['anna']);
  return name;
}

describe('sync', () => {
  test('is off until it is wished for: no request leaves, whatever is done', async () => {
    const { web, asked } = wayOut();
    const { app, practised, timers } = await openedApp({ web });
    await practised();
    timers.advance(3_600_000);
    expect(app.getState().sync).toBeNull();
    expect(asked).toEqual([]);
  });

  test('brings a dog with its sessions from one phone to another, and back', async () => {
    const name = await database();
    const [a, b] = [await phone('a'), await phone('b')];
    await a.practised();
    expect(await a.syncing.signIn(SIGN_IN)).toBeNull();
    expect(await a.syncing.addDog({ database: name, dogId: DEMO_DOG.id, passphrase: PASSPHRASE })).toBeNull();
    await a.syncing.syncNow();
    await b.syncing.signIn(SIGN_IN);
    expect(await b.syncing.addDog({ database: name, dogId: null, passphrase: PASSPHRASE })).toBeNull();
    await b.syncing.syncNow();
    expect(b.shown()?.dogs).toMatchObject([{ database: name, dogId: DEMO_DOG.id, trouble: null, waiting: 0 }]);
    expect(b.app.getState().heads.map(({ id }) => id)).toEqual(a.app.getState().heads.map(({ id }) => id));
    expect(b.app.getState().unfinished).toBeNull();
    await b.app.intents.saveDog({ ...DEMO_DOG, name: 'Pixel the Second' });
    await b.syncing.syncNow();
    await a.syncing.syncNow();
    expect(a.app.getState().library.dogs.map((dog) => dog.name)).toEqual(['Pixel the Second']);
  });

  test('sends by itself what was practised, after the session and not in it', async () => {
    const name = await database();
    const a = await phone('a');
    await a.syncing.signIn(SIGN_IN);
    await a.syncing.addDog({ database: name, dogId: DEMO_DOG.id, passphrase: PASSPHRASE });
    await a.syncing.syncNow();
    await a.app.intents.practise('demo-plan');
    await a.press('hold', 60);
    const before = a.asked.length;
    a.timers.advance(600_000);
    await a.syncing.syncNow();
    await a.press('mark', 61);
    expect(a.asked.slice(before), 'in a session nothing is asked').toEqual([]);
    await a.app.intents.finish();
    a.timers.advance(20_000);
    await until(() => a.shown()?.isBusy === false && a.asked.some((line) => line.includes('_bulk_docs')));
    await a.syncing.count();
    expect(a.shown()?.dogs[0]?.waiting).toBe(0);
    const stored = await couch.documents(name);
    const { events } = await value(a.store.all());
    for (const { id } of events.filter(({ session }) => session !== null))
      expect(stored.some(({ _id }) => _id === id)).toBe(true);
  });

  test('asked in the middle of a session waits until it is over', async () => {
    const name = await database();
    const a = await phone('a');
    await a.syncing.signIn(SIGN_IN);
    await a.app.intents.practise('demo-plan');
    expect(await a.syncing.addDog({ database: name, dogId: DEMO_DOG.id, passphrase: PASSPHRASE })).toEqual({ kind: 'session' });
  });

  test('tells what stands in the way, and then nothing is changed', async () => {
    const name = await database();
    const [a, b] = [await phone('a'), await phone('b')];
    expect(await a.syncing.signIn({ ...SIGN_IN, password: 'no' })).toEqual({ kind: 'sign-in' });
    expect(await a.syncing.signIn({ ...SIGN_IN, path: 'https://elsewhere.invalid/' })).toEqual({ kind: 'foreign' });
    expect(a.shown()).toBeNull();
    await a.syncing.signIn(SIGN_IN);
    const dog = { database: name, dogId: DEMO_DOG.id, passphrase: PASSPHRASE };
    expect(await a.syncing.addDog({ ...dog, passphrase: 'short' })).toEqual({ kind: 'short' });
    expect(await a.syncing.addDog({ ...dog, database: 'Pixel' })).toEqual({ kind: 'bad-name' });
    expect(await a.syncing.addDog({ ...dog, database: 'nowhere' })).toEqual({ kind: 'no-database' });
    expect(await a.syncing.addDog({ ...dog, dogId: null })).toEqual({ kind: 'empty' });
    expect(await a.syncing.addDog(dog)).toBeNull();
    expect(await a.syncing.addDog(dog)).toEqual({ kind: 'known' });
    await b.syncing.signIn(SIGN_IN);
    expect(await b.syncing.addDog({ ...dog, passphrase: 'sprats in the bag' })).toEqual({ kind: 'wrong-passphrase' });
    expect(b.shown()?.dogs).toEqual([]);
    await b.syncing.signIn({ ...SIGN_IN, user: 'ben', password: 'pb' });
    expect(await b.syncing.addDog(dog)).toEqual({ kind: 'not-allowed' });
  });

  test('keeps password and passphrase for this visit alone when that is wished', async () => {
    const name = await database();
    const a = await phone('a');
    await a.syncing.signIn({ ...SIGN_IN, keeps: false });
    await a.syncing.addDog({ database: name, dogId: DEMO_DOG.id, passphrase: PASSPHRASE });
    expect(await a.store.syncNotes()).toMatchObject({ value: { password: null, dogs: [{ passphrase: null }] } });
    expect(JSON.stringify(await a.store.syncNotes())).not.toMatch(/"pa"|sprats/);
  });

  test('asks for the passphrase again in the next visit, and knows a wrong one', async () => {
    const name = await database();
    const a = await phone('a');
    await a.syncing.signIn({ ...SIGN_IN, keeps: false });
    await a.syncing.addDog({ database: name, dogId: DEMO_DOG.id, passphrase: PASSPHRASE });
    const kept = await a.store.syncNotes();
    const { web } = wayOut();
    const next = await openedApp({ device: 'a', web, syncNotes: kept.ok ? kept.value : undefined });
    const syncing = await next.app.intents.syncing();
    expect(next.app.getState().sync).toMatchObject({ hasPassword: false, dogs: [{ hasPassphrase: false }] });
    await syncing?.signIn({ ...SIGN_IN, keeps: false });
    expect(await syncing?.unlock(name, 'sprats in the bag')).toEqual({ kind: 'wrong-passphrase' });
    expect(await syncing?.unlock(name, PASSPHRASE)).toBeNull();
    expect(next.app.getState().sync?.dogs[0]?.hasPassphrase).toBe(true);
  });

  test('forgets everything when it is stopped', async () => {
    const name = await database();
    const a = await phone('a');
    await a.syncing.signIn(SIGN_IN);
    await a.syncing.addDog({ database: name, dogId: DEMO_DOG.id, passphrase: PASSPHRASE });
    await a.syncing.stop();
    expect(a.shown()).toBeNull();
    expect(await a.store.syncNotes()).toEqual({ ok: true, value: undefined });
    const before = a.asked.length;
    a.timers.advance(3_600_000);
    expect(a.asked.length).toBe(before);
  });

  test('of a dog that is deleted here ends, and does not bring it back', async () => {
    const name = await database();
    const a = await phone('a');
    await a.syncing.signIn(SIGN_IN);
    await a.syncing.addDog({ database: name, dogId: DEMO_DOG.id, passphrase: PASSPHRASE });
    await a.syncing.syncNow();
    expect(await a.app.intents.eraseDog(DEMO_DOG.id)).toBeNull();
    await until(() => a.shown()?.dogs.length === 0);
    await a.syncing.syncNow();
    expect(a.app.getState().library.dogs).toEqual([]);
  });

  test('goes with everything else when all is deleted', async () => {
    const a = await phone('a');
    await a.syncing.signIn(SIGN_IN);
    await a.app.intents.eraseEverything();
    expect(await a.store.syncNotes()).toEqual({ ok: true, value: undefined });
  });

  test('offers a passphrase of a hundred bits, another each time', async () => {
    const { syncing } = await phone('a');
    expect(syncing.newPassphrase()).toMatch(/^([a-km-np-z2-9]{4}-){4}[a-km-np-z2-9]{4}$/);
    expect(syncing.newPassphrase()).not.toBe(syncing.newPassphrase());
  });
});

describe('the way out', () => {
  test.each([
    ['sync', 'https://host.example/app/sync/'],
    ['/db/', 'https://host.example/db/'],
    ['https://host.example/x', 'https://host.example/x/'],
  ])('"%s" leads to %s', (path, address) => {
    expect(addressFrom(path, 'https://host.example/app/index.html')).toBe(address);
  });

  test.each([
    'https://elsewhere.example/',
    '//elsewhere.example',
    'http://host.example/',
    'sync?x=1',
    'https://a:b@host.example/',
    'https://[',
  ])('"%s" is refused: it leads elsewhere, or is no path', (path) => {
    expect(addressFrom(path, 'https://host.example/app/')).toBeNull();
  });
});
