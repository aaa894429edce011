/** What every event store promises, told once and tried on each: in memory, on a simulated database, in a real browser. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StoredEvent } from '../../src/core/event.ts';
import { fold } from '../../src/core/fold.ts';
import { inOrder } from '../../src/core/library.ts';
import { digestLog } from '../../src/core/progress/digest.ts';
import type { EventStore } from '../../src/store/event-store.ts';
import {
  DEVICE,
  firstEvening,
  kindOf,
  libraryEvents,
  playedSession,
  STRETCH,
  takeOf,
  value,
  wholeLibrary,
} from './event-samples.ts';

const SEED = 20260302;

/** How a list tells the beginning: without the ladder and what was carried over. */
function startOf(session: readonly StoredEvent[]): unknown {
  const { steps: _, carried: __, ...body } = (session[0] as StoredEvent & { type: 'session-started' }).body;
  return { ...session[0], body };
}

/** `openFresh` opens an empty store whose device is called `DEVICE`. */
export function promisesOf(kind: string, openFresh: () => Promise<EventStore>, numRuns: number): void {
  async function opened(events: readonly StoredEvent[] = []): Promise<EventStore> {
    const store = await openFresh();
    await value(store.writer());
    await value(store.append(events));
    return store;
  }

  describe(kind, () => {
    test('a new device gets its name once and writes number 1 first', async () => {
      const store = await openFresh();
      expect(await value(store.writer())).toEqual({ device: DEVICE, nextSeq: 1 });
      expect(await value(store.writer())).toEqual({ device: DEVICE, nextSeq: 1 });
      await value(store.append(wholeLibrary()));
      expect(await value(store.writer())).toEqual({ device: DEVICE, nextSeq: 1 + wholeLibrary().length });
    });

    test('an evening written in any bites is read back whole', async () => {
      const evening = firstEvening();
      const cuts = fc.uniqueArray(fc.nat(evening.length), { maxLength: 12 }).map((at) => at.toSorted((a, b) => a - b));
      await fc.assert(
        fc.asyncProperty(cuts, async (at) => {
          const store = await opened();
          const bounds = [0, ...at, evening.length];
          for (const [nth, from] of bounds.entries()) await value(store.append(evening.slice(from, bounds[nth + 1] ?? from)));
          expect(await value(store.all())).toEqual({ events: inOrder(evening), damaged: [] });
          expect((await value(store.session('evening'))).events).toEqual(evening.filter(({ session }) => session));
          expect((await value(store.library())).events).toEqual(wholeLibrary());
          store.close();
        }),
        { seed: SEED, numRuns },
      );
    });

    test('what is read back folds to the session that was practised', async () => {
      const session = playedSession('s');
      const store = await opened(session);
      expect(fold((await value(store.session('s'))).events)).toEqual(fold(session));
    });

    test('a digest is kept until there is a newer one, and goes when anything is deleted', async () => {
      const store = await opened(playedSession('s'));
      const kept = async () => (await value(store.digests(['s', 'unknown']))).map(({ id, stamp }) => [id, stamp]);
      await value(store.keepDigests([{ id: 's', stamp: '1/20', digest: null }]));
      await value(store.keepDigests([{ id: 's', stamp: '1/21', digest: digestLog(playedSession('s')) }]));
      expect(await kept()).toEqual([['s', '1/21']]);
      expect((await value(store.digests(['s'])))[0]?.digest).toEqual(digestLog(playedSession('s')));
      expect((await value(store.all())).events).toEqual(playedSession('s'));
      await value(store.erase(({ id }) => id === 'dev-a:5'));
      expect(await kept()).toEqual([]);
    });

    test('digests that are asked for together stand apart from the others, and go with them', async () => {
      const store = await opened(playedSession('s'));
      const digest = digestLog(playedSession('s'));
      await value(store.keepDigests([{ id: 's', stamp: '1/20', digest: null }]));
      await value(store.keepDigestsTogether('of a test', [{ id: 's', stamp: '1/21', digest }]));
      expect(await value(store.digestsTogether('of a test'))).toEqual([{ id: 's', stamp: '1/21', digest }]);
      expect((await value(store.digests(['s', 'of a test']))).map(({ stamp }) => stamp)).toEqual(['1/20']);
      expect(await value(store.digestsTogether('s'))).toEqual([]);
      await value(store.erase(({ id }) => id === 'dev-a:5'));
      expect(await value(store.digestsTogether('of a test'))).toEqual([]);
    });

    test('what is kept of heard words stands beside their events, and goes when its month is over', async () => {
      const store = await opened(playedSession('s'));
      const sound = Int16Array.of(1, -1, 32_767);
      await value(store.keepHeard({ id: 'dev-a:2', atMs: 1_000, stretch: STRETCH, sound }));
      await value(store.keepHeard({ id: 'dev-a:4', atMs: 2_000, stretch: STRETCH, sound: null }));
      const ids = ['dev-a:4', 'dev-a:3', 'dev-a:2'];
      const kept = async () => new Map((await value(store.heard(ids))).map((row) => [row.id, row]));
      expect(await kept()).toEqual(
        new Map([
          ['dev-a:4', { id: 'dev-a:4', atMs: 2_000, stretch: STRETCH, sound: null }],
          ['dev-a:2', { id: 'dev-a:2', atMs: 1_000, stretch: STRETCH, sound }],
        ]),
      );
      expect(await value(store.countSounds())).toBe(1);
      expect((await value(store.all())).events).toEqual(playedSession('s'));
      await value(store.forgetSounds());
      expect((await kept()).get('dev-a:2')?.sound).toBeNull();
      await value(store.forgetHeardBefore(1_500));
      expect([...(await kept()).keys()]).toEqual(['dev-a:4']);
    });

    test('a session that is deleted for good takes along what was kept of its words', async () => {
      const store = await opened(playedSession('s'));
      await value(store.keepHeard({ id: 'dev-a:2', atMs: 1_000, stretch: STRETCH, sound: Int16Array.of(1) }));
      await value(store.erase(({ session }) => session === 's'));
      expect(await value(store.heard(['dev-a:2']))).toEqual([]);
      expect(await value(store.countSounds())).toBe(0);
    });

    test('the same reps sent twice are kept once', async () => {
      const session = playedSession('s');
      const store = await opened(session.slice(0, 9));
      await value(store.append(session.slice(3, 12)));
      expect((await value(store.session('s'))).events).toEqual(session.slice(0, 12));
    });

    test('many words at once are kept in turn', async () => {
      const session = playedSession('s');
      const store = await opened();
      const kinds = await Promise.all(session.map((event) => kindOf(store.append([event]))));
      expect(new Set(kinds)).toEqual(new Set(['fine']));
      expect((await value(store.session('s'))).events).toEqual(session);
    });

    test('a number that was skipped is out of turn, and nothing of it is kept', async () => {
      const session = playedSession('s');
      const store = await opened(session.slice(0, 5));
      expect(await store.append(session.slice(6, 8))).toEqual({
        ok: false,
        problem: { kind: 'out-of-turn', device: DEVICE, nextSeq: 6, got: `${DEVICE}:7` },
      });
      expect(await kindOf(store.append([...session.slice(5, 7), ...session.slice(8, 9)]))).toBe('out-of-turn');
      expect((await value(store.session('s'))).events).toEqual(session.slice(0, 5));
    });

    test('another device cannot write as this one', async () => {
      const store = await opened();
      expect(await kindOf(store.append(playedSession('s', 1, 'dev-b')))).toBe('out-of-turn');
    });

    test('two tabs that write the same number: the second is told, the first stays', async () => {
      const [first, second] = [libraryEvents([takeOf('hold')]), libraryEvents([takeOf('mark')])];
      const store = await opened(first);
      expect(await store.append(second)).toEqual({
        ok: false,
        problem: { kind: 'conflict', id: `${DEVICE}:1`, kept: first[0], offered: second[0] },
      });
      expect((await value(store.all())).events).toEqual(first);
    });

    test('the log of a second phone is added, the known part of it passed over', async () => {
      const own = playedSession('own');
      const theirs = playedSession('theirs', 1, 'dev-b');
      const store = await opened(own);
      expect(await value(store.merge(theirs.slice(0, 9)))).toEqual({ added: 9, known: 0 });
      expect(await value(store.merge([...theirs, ...own]))).toEqual({ added: theirs.length - 9, known: own.length + 9 });
      expect((await value(store.session('theirs'))).events).toEqual(theirs);
      expect(await value(store.writer())).toEqual({ device: DEVICE, nextSeq: own.length + 1 });
    });

    test('an import with one bad or one contradicting record changes nothing', async () => {
      const own = playedSession('own');
      const theirs = playedSession('theirs', 1, 'dev-b');
      const store = await opened(own);
      const bad = { ...theirs[3], at: 'yesterday' } as StoredEvent;
      const other = { ...own[2], monoMs: 99 } as StoredEvent;
      expect(await kindOf(store.merge([...theirs.slice(0, 3), bad]))).toBe('damaged');
      expect(await kindOf(store.merge([...theirs, other]))).toBe('conflict');
      expect(await kindOf(store.merge([...theirs, { ...theirs[0], monoMs: 99 } as StoredEvent]))).toBe('conflict');
      expect((await value(store.all())).events).toEqual(own);
    });

    test('sessions are listed newest first, with what is needed to go on', async () => {
      const monday = playedSession('monday');
      const tuesday = playedSession('tuesday', monday.length + 1).slice(0, -1);
      const store = await opened([...monday, ...tuesday]);
      const { heads, damaged } = await value(store.sessionHeads());
      expect(damaged).toEqual([]);
      expect(heads).toEqual([
        { id: 'tuesday', started: startOf(tuesday), ended: false, lastAt: tuesday.at(-1)?.at, events: tuesday.length },
        { id: 'monday', started: startOf(monday), ended: true, lastAt: monday.at(-1)?.at, events: monday.length },
      ]);
    });

    test('the list is the same the second time, and follows what is added and deleted', async () => {
      const monday = playedSession('monday');
      const tuesday = playedSession('tuesday', monday.length + 1);
      const store = await opened([...monday, ...tuesday.slice(0, 5)]);
      const list = async () => (await value(store.sessionHeads())).heads.map(({ id, ended, events }) => [id, ended, events]);
      const first = await list();
      expect(await list()).toEqual(first);
      await value(store.append(tuesday.slice(5)));
      expect(await list()).toEqual([
        ['tuesday', true, tuesday.length],
        ['monday', true, monday.length],
      ]);
      const seq = monday.length + tuesday.length + 1;
      const takenBack = { ...tuesday.at(-1), id: `${DEVICE}:${seq}`, seq, type: 'undone', body: { of: monday.at(-1)?.id } };
      await value(store.append([{ ...takenBack, session: 'monday' } as StoredEvent]));
      expect(await list()).toContainEqual(['monday', false, monday.length + 1]);
      const theirs = playedSession('theirs', 1, 'dev-b');
      await value(store.merge(theirs));
      expect(await list()).toContainEqual(['theirs', true, theirs.length]);
      await value(store.erase(({ session }) => session === 'monday'));
      expect((await list()).map(([id]) => id).toSorted()).toEqual(['theirs', 'tuesday']);
    });

    test('so many sessions that they are read all at once are listed as they are one by one', async () => {
      const sessions = Array.from({ length: 101 }, (_, n) => playedSession(`s${n}`, 1, `dev-${n}`));
      const store = await opened();
      for (const session of sessions.slice(0, 50)) await value(store.merge(session));
      await value(store.sessionHeads());
      for (const session of sessions.slice(50)) await value(store.merge(session));
      const oneByOne = await value(store.sessionHeads());
      const atOnce = await opened();
      await value(atOnce.merge(sessions.flat()));
      expect(await value(atOnce.sessionHeads())).toEqual(oneByOne);
      expect(oneByOne.heads).toHaveLength(101);
    });

    test('a session that is put right weeks later is not younger for it', async () => {
      const session = playedSession('evening', 1);
      const last = session.at(-1) as StoredEvent;
      const of = session.find(({ type }) => type === 'word-heard')?.id ?? '';
      const late = { ...last, at: '2026-04-20T18:00:00.000+02:00' };
      const next = session.length + 1;
      const review = [
        { ...late, seq: next, id: `${DEVICE}:${next}`, type: 'corrected', body: { do: 'confirm', of } },
        { ...late, seq: next + 1, id: `${DEVICE}:${next + 1}`, type: 'undone', body: { of: `${DEVICE}:${next}` } },
        { ...late, seq: next + 2, id: `${DEVICE}:${next + 2}`, type: 'undone', body: { of: `${DEVICE}:${next + 1}` } },
      ] as readonly StoredEvent[];
      const store = await opened([...session, ...review]);
      expect((await value(store.sessionHeads())).heads[0]?.lastAt).toBe(last.at);
    });

    test('a session whose end was taken back can go on', async () => {
      const session = playedSession('s');
      const end = session.at(-1) as StoredEvent;
      const seq = end.seq + 1;
      const undone = { ...end, id: `${DEVICE}:${seq}`, seq, type: 'undone', body: { of: end.id } } as StoredEvent;
      const store = await opened([...session, undone]);
      expect((await value(store.sessionHeads())).heads.map(({ ended }) => ended)).toEqual([false]);
    });

    test('a store that was closed says so', async () => {
      const store = await opened(wholeLibrary());
      store.close();
      expect(await kindOf(store.all())).toBe('severed');
      expect(await kindOf(store.append(playedSession('s', 7)))).toBe('severed');
    });
  });
}
