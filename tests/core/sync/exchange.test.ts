/** Exchanges between devices and a model of a server: nothing is lost, nothing is written over, whatever breaks off where. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceOf } from '../../../demo/chance.ts';
import { backOffMs, LONGEST_WAIT_MS } from '../../../src/core/sync/back-off.ts';
import {
  type Answer,
  type Ask,
  answered,
  askOf,
  type Book,
  beginExchange,
  type Exchange,
  NEW_BOOK,
} from '../../../src/core/sync/exchange.ts';
import { countKnown, isKnown, NOTHING_KNOWN, partsOfId, withKnown } from '../../../src/core/sync/known.ts';
import type { Trouble } from '../../../src/core/sync/trouble.ts';

/** What a database is to an exchange: documents in the order in which they came, and each device's turn. */
function modelServer() {
  const documents: { id: string; content: string; generation: number }[] = [];
  const turns = new Map<string, number>();
  let head: string | null = null;
  return {
    documents,
    turns,
    head: () => head,
    begin: (passphrase: string) => {
      head ??= passphrase;
      return head;
    },
    contentOf: (id: string) => documents.find((each) => each.id === id)?.content,
    wipe: () => {
      documents.length = 0;
      turns.clear();
      head = null;
    },
  };
}
type Server = ReturnType<typeof modelServer>;

interface Device {
  readonly name: string;
  readonly events: Map<string, string>;
  book: Book;
}

const device = (name: string, ...ids: readonly string[]): Device => ({
  name,
  events: new Map(ids.map((id) => [id, `what ${id} says`])),
  book: NEW_BOOK,
});

/** Before the request arrives, or after the server has done it: the two ways in which a cut hurts. */
type Cut = 'none' | 'before' | 'after';

function carryOut(ask: Ask, here: Device, server: Server, passphrase: string): Answer {
  switch (ask.do) {
    case 'open':
      if (server.head() === null) return { to: 'open', found: 'empty' };
      return server.head() === passphrase ? { to: 'open', found: 'fits' } : troubled({ kind: 'wrong-passphrase' });
    case 'found':
      return { to: 'found', done: server.head() === null && server.begin(passphrase) ? 'founded' : 'taken' };
    case 'read-turn':
      return { to: 'read-turn', turn: server.turns.get(here.name) ?? null };
    case 'list': {
      const page = server.documents.slice(Number(ask.since)).slice(0, ask.limit);
      return { to: 'list', changes: page.map((each) => ({ ...each, deleted: false })), last: Number(ask.since) + page.length };
    }
    case 'fetch': {
      const there = ask.ids.map((id) => [id, server.contentOf(id) ?? ''] as const);
      const conflicts = there.filter(([id, content]) => (here.events.get(id) ?? content) !== content);
      for (const [id, content] of there) if (!here.events.has(id)) here.events.set(id, content);
      return {
        to: 'fetch',
        conflicts: conflicts.map(([id, there]) => ({ id, path: '', here: here.events.get(id) ?? '', there })),
        refused: [],
      };
    }
    case 'look-here':
      return { to: 'look-here', ids: [...here.events.keys()].filter((id) => !isKnown(ask.known, id)) };
    case 'push': {
      const taken = ask.ids.filter((id) => server.contentOf(id) !== undefined);
      const ok = ask.ids.filter((id) => !taken.includes(id));
      server.documents.push(...ok.map((id) => ({ id, content: here.events.get(id) ?? '', generation: 1 })));
      return { to: 'push', ok, taken };
    }
    case 'keep-book':
      here.book = ask.book;
      return { to: 'keep-book' };
    case 'write-turn':
      server.turns.set(here.name, ask.turn);
      return { to: 'write-turn' };
    case 'wait':
      return { to: 'wait' };
    case 'end':
      throw new Error('an exchange that has ended asks nothing');
  }
}

const troubled = (trouble: Trouble): Answer => ({ to: 'trouble', trouble });
const CUT = troubled({ kind: 'no-answer' });
const OVER_THE_NET: readonly Ask['do'][] = ['open', 'found', 'read-turn', 'list', 'fetch', 'push', 'write-turn'];

/** Runs to its end; returns every ask in order. `cuts` are used up one a request. */
function run(here: Device, server: Server, { passphrase = 'one', cuts = [] as readonly Cut[], steps = 5_000 } = {}) {
  const asks: Ask[] = [];
  let exchange: Exchange = beginExchange(here.book);
  let cut = 0;
  for (let n = 0; n < steps; n++) {
    const ask = askOf(exchange);
    asks.push(ask);
    if (ask.do === 'end') break;
    const how = OVER_THE_NET.includes(ask.do) ? (cuts[cut++] ?? 'none') : 'none';
    const answer = how === 'before' ? CUT : carryOut(ask, here, server, passphrase);
    exchange = answered(exchange, how === 'none' ? answer : CUT, 0.5);
  }
  return asks;
}

const ids = (name: string, count: number) => Array.from({ length: count }, (_, nth) => `${name}:${nth + 1}`);
const all = (here: Device) => [...here.events.keys()].sort();

describe('an exchange', () => {
  test('two phones come to hold the same, and a third that joins late gets all of it', () => {
    const server = modelServer();
    const [a, b, c] = [device('a', ...ids('a', 1_234)), device('b', ...ids('b', 777)), device('c')];
    run(a, server);
    run(b, server);
    run(a, server);
    run(c, server);
    expect(all(a)).toEqual([...ids('a', 1_234), ...ids('b', 777)].sort());
    expect(all(b)).toEqual(all(a));
    expect(all(c)).toEqual(all(a));
  });

  test('whatever the network breaks off and wherever the phone dies, everything arrives once', () => {
    const cut = fc.constantFrom<Cut>('none', 'none', 'before', 'after');
    const visit = fc.record({ who: fc.integer({ min: 0, max: 2 }), cuts: fc.array(cut, { maxLength: 30 }), steps: fc.nat(60) });
    fc.assert(
      fc.property(fc.array(visit, { maxLength: 12 }), (visits) => {
        const server = modelServer();
        const devices = [device('a', ...ids('a', 250)), device('b', ...ids('b', 130)), device('c', ...ids('c', 1))] as const;
        for (const { who, cuts, steps } of visits) run(devices[who as 0 | 1 | 2], server, { cuts, steps });
        for (const each of [...devices, ...devices]) run(each, server);
        for (const each of devices) {
          expect(all(each)).toEqual([...ids('a', 250), ...ids('b', 130), 'c:1'].sort());
          expect(each.book.conflicts).toEqual([]);
        }
        expect(server.documents).toHaveLength(381);
      }),
      { numRuns: 200 },
    );
  });

  test('an event is sent once, and what this phone sent is not fetched back', () => {
    const server = modelServer();
    const a = device('a', ...ids('a', 300));
    run(a, server);
    const again = run(a, server);
    expect(again.map((ask) => ask.do)).toEqual(['open', 'read-turn', 'list', 'keep-book', 'look-here', 'end']);
  });

  test('the same event with other content is told and left alone on both sides', () => {
    const server = modelServer();
    const [a, b] = [device('a', 'a:1', 'a:2'), device('b', 'a:1')];
    b.events.set('a:1', 'something else');
    run(a, server);
    run(b, server);
    expect(b.book.conflicts).toEqual([{ id: 'a:1', path: '', here: 'something else', there: 'what a:1 says' }]);
    expect(b.events.get('a:1')).toBe('something else');
    expect(server.contentOf('a:1')).toBe('what a:1 says');
    run(b, server);
    expect(b.book.conflicts, 'told once').toHaveLength(1);
  });

  test('a document that somebody changed on the server is compared again', () => {
    const server = modelServer();
    const a = device('a', 'a:1');
    run(a, server);
    server.documents.push({ ...server.documents.splice(0, 1)[0], id: 'a:1', content: 'forged', generation: 2 });
    a.book = { ...a.book, since: 0 };
    run(a, server);
    expect(a.book.conflicts.map(({ id }) => id)).toEqual(['a:1']);
    expect(a.events.get('a:1')).toBe('what a:1 says');
  });

  test('a wrong passphrase ends it before anything is read or written', () => {
    const server = modelServer();
    run(device('a', 'a:1'), server, { passphrase: 'right' });
    const b = device('b', 'b:1');
    const asks = run(b, server, { passphrase: 'wrong' });
    expect(asks).toEqual([{ do: 'open' }, { do: 'end', trouble: { kind: 'wrong-passphrase' } }]);
    expect(all(b)).toEqual(['b:1']);
    expect(server.documents.map(({ id }) => id)).toEqual(['a:1']);
  });

  test('a server that was emptied is filled again', () => {
    const server = modelServer();
    const a = device('a', ...ids('a', 20));
    run(a, server);
    server.wipe();
    run(a, server);
    expect(server.documents).toHaveLength(20);
  });

  test('a server put back to an older copy is looked through anew', () => {
    const server = modelServer();
    const [a, b] = [device('a', 'a:1'), device('b')];
    run(a, server);
    const old = { documents: [...server.documents], turns: new Map(server.turns) };
    a.events.set('a:2', 'what a:2 says');
    run(a, server);
    run(b, server);
    server.documents.splice(0, 99, ...old.documents);
    server.turns.clear();
    for (const [name, turn] of old.turns) server.turns.set(name, turn);
    run(a, server);
    expect(server.documents.map(({ id }) => id)).toEqual(['a:1', 'a:2']);
  });

  test('what no event is called is passed over', () => {
    const server = modelServer();
    const a = device('a');
    for (const id of ['stillbeat', '_design/x', 'a:0', 'a:01', ':1', 'a:1.5', 'a'])
      server.documents.push({ id, content: '', generation: 1 });
    run(a, server);
    expect(all(a)).toEqual([]);
  });

  test('what only somebody can mend is not tried again', () => {
    for (const kind of ['sign-in', 'not-allowed', 'no-database', 'unknown-form', 'another-dog'] as const) {
      const ended = answered(beginExchange(NEW_BOOK), troubled({ kind }), 0.5);
      expect(askOf(ended)).toEqual({ do: 'end', trouble: { kind } });
    }
  });
});

describe('waiting', () => {
  test('doubles, stays under five minutes, and half of it is chance', () => {
    const chance = chanceOf(1);
    for (let failures = 1; failures < 40; failures++) {
      const whole = Math.min(LONGEST_WAIT_MS, 1000 * 2 ** (failures - 1));
      const waitedMs = backOffMs(failures, chance());
      expect(waitedMs).toBeGreaterThanOrEqual(whole / 2);
      expect(waitedMs).toBeLessThanOrEqual(whole);
    }
    expect([1, 2, 3, 4].map((failures) => backOffMs(failures, 1))).toEqual([1000, 2000, 4000, 8000]);
  });

  test('grows while nothing gets through and is short again afterwards', () => {
    const waits = run(device('a', 'a:1'), modelServer(), {
      cuts: ['before', 'before', 'before', 'none', 'none', 'before'],
    }).flatMap((ask) => (ask.do === 'wait' ? [ask.ms] : []));
    expect(waits).toEqual([750, 1500, 3000, 750]);
  });
});

describe('what a server is known to have', () => {
  test('takes a few lines for years of practice', () => {
    const known = withKnown(NOTHING_KNOWN, ids('a', 3_000));
    expect(known).toEqual({ a: [[1, 3_000]] });
  });

  test('is what was put in, in any order', () => {
    const some = fc.uniqueArray(
      fc.record({ name: fc.constantFrom('a', 'b', 'a:b', '__proto__'), seq: fc.integer({ min: 1, max: 60 }) }),
    );
    fc.assert(
      fc.property(some, some, (first, second) => {
        const name = ({ name: device, seq }: { name: string; seq: number }) => `${device}:${seq}`;
        const known = withKnown(withKnown(NOTHING_KNOWN, first.map(name)), second.map(name));
        const put = new Set([...first, ...second].map(name));
        for (const device of ['a', 'b', 'a:b', '__proto__'])
          for (let seq = 1; seq <= 61; seq++) expect(isKnown(known, `${device}:${seq}`)).toBe(put.has(`${device}:${seq}`));
        expect(countKnown(known)).toBe(put.size);
      }),
    );
  });

  test('an id is taken apart at its last colon, and only as it is written', () => {
    expect(partsOfId('a:b:12')).toEqual({ device: 'a:b', seq: 12 });
    for (const id of ['a:012', 'a:0', 'a:-1', ':1', 'a', 'a:', 'a:1e3', 'a: 1']) expect(partsOfId(id)).toBeNull();
  });
});
