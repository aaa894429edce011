/** Devices and a real server that speaks the CouchDB protocol, over a network that is cut: nothing lost, nothing overwritten, nothing read by others. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { chanceOf } from '../../../demo/chance.ts';
import { DEMO_DOG } from '../../../demo/scenario.ts';
import type { StoredEvent } from '../../../src/core/event.ts';
import { reachServer } from '../../../src/store/sync-server.ts';
import { type Couch, startCouch } from '../../support/couch.ts';
import { startCuttingProxy } from '../../support/cutting-proxy.ts';
import { never, takeOf, value } from '../event-samples.ts';
import { inventedEvents, syncDevice } from './sync-device.ts';

let couch: Couch;

beforeAll(async () => {
  couch = await startCouch();
  await couch.addUser('anna', 'pa');
  await couch.addUser('ben', 'pb');
});

afterAll(() => couch.stop());

let databases = 0;
/** A database for one test, open to Anna alone. */
async function fresh(): Promise<{ url: string; database: string }> {
  const database = `dog-${++databases}`;
  await couch.addDatabase(database, ['anna']);
  return { url: couch.url, database };
}

describe('two phones and a server', () => {
  test('come together though the network is cut twenty times, and a third that joins late gets everything', async () => {
    const { database } = await fresh();
    const chance = chanceOf(8);
    const proxy = await startCuttingProxy(couch.port, chanceOf(20), 20);
    const [a, b, c] = await Promise.all([
      syncDevice('a', inventedEvents('a', 800)),
      syncDevice('b', inventedEvents('b', 800)),
      syncDevice('c'),
    ]);
    const reach = { url: proxy.url, database, chance };
    await Promise.all([a.sync(reach), b.sync(reach)]);
    // Others join over the same bad line, until it has broken twenty times.
    for (let n = 0; proxy.cuts() < 20; n++) await (await syncDevice(`other ${n}`)).sync(reach);
    proxy.heal();
    expect(proxy.cuts()).toBe(20);
    for (const device of [a, b, a]) expect(await device.sync(reach)).toMatchObject({ trouble: null });
    const late = await c.sync({ ...reach, dogId: null });
    await proxy.stop();
    expect(late).toMatchObject({ trouble: null, arrived: 1_600, dogId: DEMO_DOG.id });
    expect(await a.ids()).toHaveLength(1_600);
    expect(await b.ids()).toEqual(await a.ids());
    expect(await c.ids()).toEqual(await a.ids());
    expect(await value(c.store.all())).toEqual(await value(a.store.all()));
    expect(a.waits() + b.waits()).toBeGreaterThan(0);
    expect([a, b, c].flatMap((device) => [...device.book().conflicts, ...device.book().refused])).toEqual([]);
  });

  test('send what is new and nothing else the next time', async () => {
    const reach = await fresh();
    const a = await syncDevice('a', inventedEvents('a', 100));
    expect(await a.sync(reach)).toMatchObject({ sent: 100, arrived: 0 });
    const more = inventedEvents('a', 130).slice(100);
    await value(a.store.append(more));
    expect(await a.sync(reach)).toMatchObject({ sent: 30, arrived: 0 });
    expect(await a.sync(reach)).toMatchObject({ sent: 0, arrived: 0 });
  });

  test('with one event of unlike content each keep their own, and say so', async () => {
    const reach = await fresh();
    const events = inventedEvents('a', 20);
    const [a, b] = await Promise.all([syncDevice('a', events), syncDevice('b', withOther(events, 'a:7'))]);
    await a.sync(reach);
    const before = await value(b.store.pick(['a:7']));
    const ran = await b.sync(reach);
    expect(ran).toMatchObject({ trouble: null, book: { conflicts: [{ id: 'a:7', path: 'monoMs' }] } });
    expect(await value(b.store.pick(['a:7']))).toEqual(before);
    expect((await couch.documents(reach.database)).every(({ _rev }) => String(_rev).startsWith('1-'))).toBe(true);
  });

  test('never send taught sounds or settings', async () => {
    const reach = await fresh();
    const own = inventedEvents('a', 10);
    const sound = { ...takeOf('hold'), id: 'a:11', device: 'a', seq: 11, session: null, version: 1, at: own[0]?.at, monoMs: 0 };
    const a = await syncDevice('a', [...own, sound as StoredEvent]);
    expect(await a.sync(reach)).toMatchObject({ sent: 10 });
    expect((await couch.documents(reach.database)).map(({ _id }) => _id)).not.toContain('a:11');
  });
});

describe('what stands on the server', () => {
  test('tells names of devices, how many events and how long each is, and no word of what they say', async () => {
    const reach = await fresh();
    const a = await syncDevice('a', inventedEvents('a', 200));
    await a.sync(reach);
    const documents = await couch.documents(reach.database);
    expect(documents).toHaveLength(201);
    for (const document of documents) {
      const fields =
        document._id === 'stillbeat'
          ? ['check', 'cipher', 'format', 'kdf', 'rounds', 'salt', 'version']
          : ['form', 'iv', 'sealed'];
      expect(
        Object.keys(document)
          .filter((name) => !name.startsWith('_'))
          .sort(),
      ).toEqual(fields);
    }
    expect(JSON.stringify(documents)).not.toMatch(/Pixel|demo handler|demo-dog|word-heard|session-started|2026-03/);
  });

  test('is not read with a wrong passphrase, and nothing is written then', async () => {
    const reach = await fresh();
    const [a, b] = await Promise.all([syncDevice('a', inventedEvents('a', 50)), syncDevice('b', inventedEvents('b', 50))]);
    await a.sync(reach);
    const before = await couch.documents(reach.database);
    expect(await b.sync({ ...reach, passphrase: 'spratz' })).toMatchObject({
      trouble: { kind: 'wrong-passphrase' },
      arrived: 0,
      sent: 0,
    });
    expect(await couch.documents(reach.database)).toEqual(before);
    expect(await b.ids()).toHaveLength(50);
  });

  test('is nobody else’s: another user of the server can neither read nor write this dog', async () => {
    const reach = await fresh();
    const [a, b] = await Promise.all([syncDevice('a', inventedEvents('a', 50)), syncDevice('b', inventedEvents('b', 50))]);
    await a.sync(reach);
    const ben = { user: 'ben', password: 'pb' };
    // Even with the passphrase.
    expect(await b.sync({ ...reach, ...ben })).toMatchObject({ trouble: { kind: 'not-allowed' }, arrived: 0, sent: 0 });
    const database = reachServer({ fetch, after: never, address: `${couch.url}/`, ...ben }).database(reach.database);
    const refused = { ok: false, trouble: { kind: 'not-allowed' } };
    expect(await database.head()).toEqual(refused);
    expect(await database.changes(0, 10)).toEqual(refused);
    expect(await database.documents(['a:1'])).toEqual(refused);
    expect(await database.add([{ _id: 'b:1', form: 1, iv: '', sealed: '' }])).toEqual(refused);
    expect(await couch.documents(reach.database)).toHaveLength(51);
  });

  test('that was tampered with is refused and told; the rest comes', async () => {
    const reach = await fresh();
    const [a, b] = await Promise.all([syncDevice('a', inventedEvents('a', 30)), syncDevice('b')]);
    await a.sync(reach);
    const [one, two] = (await couch.documents(reach.database)).filter(({ _id }) => _id === 'a:5' || _id === 'a:6');
    await couch.ask('PUT', `${reach.database}/a:5`, { ...one, sealed: two?.sealed, iv: two?.iv });
    await couch.ask('PUT', `${reach.database}/a:99`, { form: 1, iv: one?.iv, sealed: one?.sealed });
    const ran = await b.sync({ ...reach, dogId: null });
    expect(ran.arrived).toBe(29);
    expect(ran.book.refused.toSorted((x, y) => x.id.localeCompare(y.id))).toEqual([
      { id: 'a:5', why: 'sealed-otherwise' },
      { id: 'a:99', why: 'sealed-otherwise' },
    ]);
    // The device that has the true one keeps it, and is told too.
    expect((await a.sync(reach)).book.refused.map(({ id }) => id)).toContain('a:5');
    expect(await a.ids()).toHaveLength(30);
  });

  test('may bring nothing but this dog: settings, sounds and other dogs are refused', async () => {
    const reach = await fresh();
    const a = await syncDevice('a', inventedEvents('a', 10));
    await a.sync(reach);
    const other = await syncDevice('x', inventedEvents('x', 1));
    const [dog] = (await value(other.store.all())).events;
    const strange = await syncDevice('x', [{ ...dog, body: { ...DEMO_DOG, id: 'another' } } as StoredEvent]);
    // One that knows the passphrase and sends what it should not.
    const pick = async () => await value(strange.store.all());
    await strange.sync({
      ...reach,
      more: {
        store: {
          ...strange.store,
          library: async () => ({ ok: true, value: { events: [dog] as never, damaged: [] } }),
          pick: async () => ({ ok: true, value: await pick() }),
        },
      },
    });
    const ran = await a.sync(reach);
    expect(ran.book.refused).toEqual([{ id: 'x:1', why: 'other-dog' }]);
    expect(await a.ids()).toHaveLength(10);
  });

  test('is filled again when the server was emptied', async () => {
    const reach = await fresh();
    const a = await syncDevice('a', inventedEvents('a', 40));
    await a.sync(reach);
    await couch.ask('DELETE', reach.database);
    await couch.addDatabase(reach.database, ['anna']);
    expect(await a.sync(reach)).toMatchObject({ sent: 40, trouble: null });
  });

  test('of a phone put back to an older copy of itself comes back, and the phone writes under another name', async () => {
    const reach = await fresh();
    const events = inventedEvents('a', 60);
    const whole = await syncDevice('a', events);
    await whole.sync(reach);
    const putBack = await syncDevice('a', events.slice(0, 40));
    expect(await putBack.sync(reach)).toMatchObject({ arrived: 20, trouble: null, book: { conflicts: [] } });
    expect(await value(putBack.store.writer())).toEqual({ device: 'a again', nextSeq: 1 });
  });
});

describe('what stands in the way is told by its kind', () => {
  test('a wrong password, no such user, no such database, a path that leads elsewhere, nobody there', async () => {
    const reach = await fresh();
    const a = await syncDevice('a', inventedEvents('a', 5));
    const elsewhere = await startElsewhere();
    const kind = async (how: object) => (await a.sync({ ...reach, ...how })).trouble?.kind;
    expect(await kind({ password: 'wrong' })).toBe('sign-in');
    expect(await kind({ user: 'nobody' })).toBe('sign-in');
    expect(await kind({ database: 'no-such' })).toBe('no-database');
    expect(await kind({ dogId: null })).toBe('empty');
    expect(await kind({ url: elsewhere.url })).toBe('no-server');
    const off = { more: { sleep: async () => false } };
    expect(await a.sync({ ...reach, ...off, url: 'http://127.0.0.1:9' })).toMatchObject({ calledOff: true, sent: 0 });
    expect(await kind({})).toBeUndefined();
    expect(await kind({ dogId: 'another' })).toBe('another-dog');
    elsewhere.stop();
  });

  test('a server tells for whom it takes this device', async () => {
    const as = (user: string, password: string) =>
      reachServer({ fetch, after: never, address: `${couch.url}/`, user, password }).whoAmI();
    expect(await as('anna', 'pa')).toEqual({ ok: true, value: { name: 'anna' } });
    expect(await as('anna', 'pb')).toEqual({ ok: false, trouble: { kind: 'sign-in' } });
  });
});

/** A host that answers every path with its page, as static hosts do. */
async function startElsewhere(): Promise<{ url: string; stop: () => void }> {
  const server = createServer((_, response) => response.setHeader('content-type', 'text/html').end('<!doctype html>'));
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  return { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, stop: () => server.close() };
}

/** The same events, one of them with other content. */
function withOther(events: readonly StoredEvent[], id: string): readonly StoredEvent[] {
  return events.map((event) => (event.id === id ? ({ ...event, monoMs: event.monoMs + 1 } as StoredEvent) : event));
}
