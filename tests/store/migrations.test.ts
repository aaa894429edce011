/** What an older version kept is still whole in this one. Each migration brings a fixture: rows as that version wrote them. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inOrder } from '../../src/core/library.ts';
import { MIGRATIONS } from '../../src/store/database.ts';
import { openEventStore } from '../../src/store/event-store.ts';
import { parseExport } from '../../src/store/export.ts';
import { freshDatabase, value } from './event-samples.ts';

const versions = MIGRATIONS.map(({ version }) => version);

function fixture(version: number): string {
  return join(import.meta.dirname, 'fixtures', `v${version}.json`);
}

/** A fixture is an export (so that samples can be written) with the device beside it and the tables as they were. */
interface Fixture {
  readonly device: string;
  readonly tables: Readonly<
    Record<string, { readonly key: string; readonly indexes: Readonly<Record<string, string | string[]>> }>
  >;
}

/** Lays the rows into storage as the version of the fixture did, without the store's help. */
async function layDown(version: number, options: ReturnType<typeof freshDatabase>) {
  const text = readFileSync(fixture(version), 'utf8');
  const { device, tables } = JSON.parse(text) as Fixture;
  const { events } = await value(parseExport(text));
  const { indexedDB } = options.from as { indexedDB: IDBFactory };
  const request = indexedDB.open(options.name, 10 * version);
  const db = await new Promise<IDBDatabase>((resolve, reject) => {
    request.onupgradeneeded = () => {
      for (const [name, { key, indexes }] of Object.entries(tables)) {
        const table = request.result.createObjectStore(name, { keyPath: key });
        for (const [index, path] of Object.entries(indexes)) table.createIndex(index, path);
      }
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const transaction = db.transaction(['events', 'meta'], 'readwrite');
  for (const event of events) transaction.objectStore('events').add(event);
  transaction.objectStore('meta').add({ key: 'device', value: device });
  await new Promise((resolve) => {
    transaction.oncomplete = resolve;
  });
  db.close();
  return { device, events };
}

test('every migration has its fixture', () => {
  expect(versions.filter((version) => !existsSync(fixture(version)))).toEqual([]);
});

test('migrations are numbered through and never taken back', () => {
  expect(versions).toEqual(versions.map((_, nth) => nth + 1));
});

test.each(versions)('an evening kept by version %i is whole today, and practice goes on', async (version) => {
  const options = freshDatabase();
  const { device, events } = await layDown(version, options);
  const store = await value(openEventStore(options));
  expect(await value(store.all())).toEqual({ events: inOrder(events), damaged: [] });
  expect(events.length).toBeGreaterThan(20);
  const own = events.filter((event) => event.device === device);
  expect(await value(store.writer())).toEqual({ device, nextSeq: Math.max(...own.map(({ seq }) => seq)) + 1 });
  expect((await value(store.sessionHeads())).heads.map(({ id, ended }) => [id, ended])).toEqual([['evening', true]]);
});
