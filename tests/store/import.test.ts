/** A file is looked at before anything is kept: new, known, refused and why; and what is deleted is gone for good. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StoredEvent } from '../../src/core/event.ts';
import { inOrder } from '../../src/core/library.ts';
import { openEventStore } from '../../src/store/event-store.ts';
import { exportText } from '../../src/store/export.ts';
import { IMPORT_LIMITS, previewImport } from '../../src/store/import.ts';
import { createMemoryStore } from '../../src/store/memory-store.ts';
import { sayDamage } from '../../src/store/problem.ts';
import { DEVICE, firstEvening, freshDatabase, kindOf, playedSession, value, wholeLibrary } from './event-samples.ts';

const NOW = '2026-03-02T21:00:00.000+01:00';
const SEED = 20261125;
const evening = firstEvening();
const FILE = exportText({ events: evening, damaged: [] }, NOW);

const withEvening = (events: readonly StoredEvent[] = evening) => createMemoryStore({ newId: () => DEVICE, records: events });

describe('looking at a file', () => {
  test('a phone that has half of it is told what is new, and nothing is kept by looking', async () => {
    const store = withEvening(evening.slice(0, 10));
    const preview = await value(previewImport(store, FILE));
    expect(preview.known).toBe(10);
    expect(preview.fresh).toEqual(inOrder(evening).filter(({ id }) => !evening.slice(0, 10).some((kept) => kept.id === id)));
    expect((await value(store.all())).events).toHaveLength(10);
  });

  test('an event that is here with other content is shown, and neither is touched', async () => {
    const mine = evening.map((event, nth) => (nth === 0 ? { ...event, at: '2020-01-01T00:00:00Z' } : event));
    const store = withEvening(mine);
    const preview = await value(previewImport(store, FILE));
    expect(preview.conflicts).toEqual([{ id: evening[0]?.id, kept: mine[0], offered: evening[0] }]);
    expect(preview.fresh).toEqual([]);
    expect((await value(store.all())).events.find(({ id }) => id === evening[0]?.id)).toEqual(mine[0]);
  });

  test('a file beyond its bounds is refused with the bound', async () => {
    const store = withEvening([]);
    const deep = `${'['.repeat(IMPORT_LIMITS.depth + 1)}${']'.repeat(IMPORT_LIMITS.depth + 1)}`;
    expect(await previewImport(store, deep)).toMatchObject({
      problem: { damaged: [{ path: 'file', expected: 'at most 32 depth' }] },
    });
    // Brackets within text are text.
    const brackets = await previewImport(store, FILE.replace('stillbeat events', '[[[['.repeat(20)));
    expect(brackets).toMatchObject({ problem: { damaged: [{ path: 'file › format' }] } });
  });

  test('ten thousand files that somebody meddled with: none is taken in part, each refusal names path, bound and value', async () => {
    const small = exportText({ events: evening.slice(0, 9), damaged: [] }, NOW);
    const letters = fc.constantFrom('{', '}', '[', ']', '"', '\\', ',', ':', '0', '-', 'e', 'n', ' ', '\u0000', '√');
    const meddled = fc.oneof(
      fc
        .tuple(fc.nat(small.length), fc.nat(40), fc.array(letters, { maxLength: 6 }))
        .map(([at, gone, put]) => small.slice(0, at) + put.join('') + small.slice(at + gone)),
      fc
        .tuple(fc.nat(small.length), fc.nat(small.length))
        .map(([from, to]) => small.slice(Math.min(from, to), Math.max(from, to))),
      fc.json(),
      fc.string({ unit: 'binary' }),
      fc
        .tuple(fc.constantFrom(...(small.match(/"[a-zA-Z]+":/g) ?? [])), fc.jsonValue())
        .map(([name, put]) =>
          small.replaceAll(new RegExp(`${name}("[^"]*"|[0-9.-]+|null|true|false)`, 'g'), `${name}${JSON.stringify(put)}`),
        ),
    );
    const store = withEvening(evening.slice(0, 3));
    const before = await value(store.all());
    await fc.assert(
      fc.asyncProperty(meddled, async (text) => {
        const preview = await previewImport(store, text);
        const refused = preview.ok ? preview.value.refused : preview.problem.kind === 'damaged' ? preview.problem.damaged : null;
        expect(refused).not.toBeNull();
        for (const damage of refused ?? []) expect(sayDamage(damage)).toMatch(/^file.*: expected .+, got .+$/s);
        expect(await value(store.all())).toEqual(before);
        if (!preview.ok || preview.value.fresh.length === 0) return;
        // What was offered is added whole, and is then there as it was offered.
        const phone = withEvening(evening.slice(0, 3));
        expect(await value(phone.merge(preview.value.fresh))).toEqual({ added: preview.value.fresh.length, known: 0 });
        const ids = new Set(preview.value.fresh.map(({ id }) => id));
        expect((await value(phone.all())).events.filter(({ id }) => ids.has(id))).toEqual(preview.value.fresh);
      }),
      { numRuns: 10_000, seed: SEED },
    );
  }, 120_000);
});

describe('deleting for good', () => {
  const stores = [
    ['in memory', async () => withEvening([])],
    ['on a database', async () => value(openEventStore(freshDatabase()))],
  ] as const;

  test.each(stores)('%s: what was deleted is gone, the rest stands, and no number is used twice', async (_, open) => {
    const store = await open();
    const writer = await value(store.writer());
    await value(store.append(evening));
    const last = evening.at(-1)?.seq ?? 0;
    expect(await value(store.erase(({ session }) => session === 'evening'))).toEqual({
      erased: evening.filter(({ session }) => session === 'evening').length,
    });
    expect((await value(store.all())).events).toEqual(inOrder(evening.filter(({ session }) => session === null)));
    expect(await value(store.writer())).toEqual({ device: writer.device, nextSeq: last + 1 });
    // A copy made before brings them back: that is the handler's way back, and it still fits.
    expect(await value(store.merge(evening))).toMatchObject({ known: wholeLibrary().length });
    expect(await kindOf(store.append(playedSession('next', last + 1)))).toBe('fine');
  });

  test('everything deleted: nothing is left, not even after a new start', async () => {
    const options = freshDatabase();
    const store = await value(openEventStore(options));
    await value(store.writer());
    await value(store.append(evening));
    await value(store.erase(() => true));
    store.close();
    const again = await value(openEventStore(options));
    expect(await value(again.all())).toEqual({ events: [], damaged: [] });
    expect(await value(again.sessionHeads())).toEqual({ heads: [], damaged: [] });
  });
});
