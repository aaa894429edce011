/** The event store in memory and on a simulated database keeps every promise; a database keeps them after the tab is closed. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inOrder } from '../../src/core/library.ts';
import { openEventStore } from '../../src/store/event-store.ts';
import { createMemoryStore } from '../../src/store/memory-store.ts';
import { DEVICE, firstEvening, freshDatabase, value } from './event-samples.ts';
import { promisesOf } from './store-contract.ts';

promisesOf('in memory, this visit only', async () => createMemoryStore({ newId: () => DEVICE }), 100);
promisesOf('on the device', async () => value(openEventStore(freshDatabase())), 25);

test('a tab killed between two words loses only what was never written, and goes on', async () => {
  const evening = firstEvening();
  await fc.assert(
    fc.asyncProperty(fc.nat(evening.length), async (killedAfter) => {
      const device = freshDatabase();
      const first = await value(openEventStore(device));
      await value(first.writer());
      for (const event of evening.slice(0, killedAfter)) await value(first.append([event]));
      // No close: a killed tab says no goodbye.
      const second = await value(openEventStore({ ...device, newId: () => 'another name' }));
      expect((await value(second.all())).events).toEqual(inOrder(evening.slice(0, killedAfter)));
      expect(await value(second.writer())).toEqual({ device: DEVICE, nextSeq: killedAfter + 1 });
      await value(second.append(evening.slice(killedAfter)));
      expect((await value(second.all())).events).toEqual(inOrder(evening));
    }),
    { seed: 20260302, numRuns: 15 },
  );
});
