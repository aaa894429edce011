/** A copy of everything in one file: what goes out comes back, and a file that was meddled with is told line by line. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StoredEvent } from '../../src/core/event.ts';
import { inOrder } from '../../src/core/library.ts';
import { exportText, type Imported, parseExport } from '../../src/store/export.ts';
import { createMemoryStore } from '../../src/store/memory-store.ts';
import { sayDamage } from '../../src/store/problem.ts';
import { DEVICE, firstEvening, kindOf, libraryEvents, playedSession, takeOf, value } from './event-samples.ts';

const SEED = 20260302;
const NOW = '2026-03-02T21:00:00.000+01:00';

const repsTyped = fc
  .array(fc.constantFrom('k', 'l', 's', 'v', 'n', 'u', 'e', 'h'), { maxLength: 30 })
  .map((reps) => reps.join(''));
const anyText = fc.string({ unit: 'binary', maxLength: 20 });
const sounds = fc
  .array(
    fc.record({ word: anyText, handler: anyText, samples: fc.array(fc.integer({ min: -32768, max: 32767 }), { maxLength: 40 }) }),
  )
  .map((takes) => libraryEvents(takes.map(({ word, handler, samples }) => takeOf(word, handler, samples))));
const anyLog = fc
  .tuple(sounds, repsTyped, repsTyped)
  .map(([taught, reps, more]): readonly StoredEvent[] => [
    ...taught,
    ...playedSession('s', taught.length + 1, DEVICE, reps),
    ...playedSession('t', 1, 'dev-b', more),
  ]);

function complaints(text: string): readonly string[] {
  const parsed = parseExport(text);
  if (parsed.ok) return parsed.value.damaged.map(sayDamage);
  return parsed.problem.kind === 'damaged' ? parsed.problem.damaged.map(sayDamage) : [parsed.problem.kind];
}

test('whatever was taught and practised comes back from the file as it was', () => {
  fc.assert(
    fc.property(anyLog, (log) => {
      const text = exportText({ events: log, damaged: [] }, NOW);
      const parsed = parseExport(text);
      expect(parsed).toEqual({ ok: true, value: { exportedAt: NOW, events: inOrder(log), damaged: [] } satisfies Imported });
      expect(exportText({ events: log, damaged: [] }, NOW)).toBe(text);
    }),
    { seed: SEED, numRuns: 150 },
  );
});

test('a new phone is filled from the file, and filling it twice changes nothing', async () => {
  const old = createMemoryStore({ newId: () => DEVICE });
  await value(old.merge(firstEvening()));
  const { events } = await value(parseExport(exportText(await value(old.all()), NOW)));
  const phone = createMemoryStore({ newId: () => 'new-phone' });
  expect(await value(phone.merge(events))).toEqual({ added: events.length, known: 0 });
  expect(await value(phone.merge(events))).toEqual({ added: 0, known: events.length });
  expect(await value(phone.all())).toEqual(await value(old.all()));
});

test('a record that is damaged goes out with the rest and is told again when it comes back', async () => {
  const evening = firstEvening();
  const at = evening.findIndex(({ type }) => type === 'word-heard');
  const bad = { ...evening[at], body: { ...evening[at]?.body, confidence: 7 } };
  const store = createMemoryStore({ newId: () => DEVICE, records: evening.with(at, bad as StoredEvent) });
  const text = exportText(await value(store.all()), NOW);
  expect(complaints(text)).toEqual([
    `file › events[${evening.length - 1}] › body › confidence: expected a number from 0 to 1, got 7`,
  ]);
});

describe('a file that is not ours, or not whole, is refused with the place and the bound', () => {
  const good = exportText({ events: firstEvening(), damaged: [] }, NOW);
  test.each([
    ['', 'file: expected JSON, got ""'],
    [good.slice(0, 1000), 'file: expected JSON, got "{\\"format\\":'],
    ['7', 'file: expected a record, got 7'],
    ['{}', 'file › format: expected "stillbeat events", got nothing'],
    [good.replace('"version":1', '"version":2'), 'file › version: expected 1, the newest this app knows, got 2'],
    [good.replace(`"${NOW}"`, 'null'), 'file › exportedAt: expected an ISO time with its offset, got null'],
    [good.replace('"events":[', '"events":0,"others":['), 'file › events: expected a list, got 0'],
  ])('%.40s', (text, complaint) => {
    expect(complaints(text)[0]).toContain(complaint);
    expect(complaints(text)).toHaveLength(1);
  });

  test('one bad value among many good ones', () => {
    const holdForS = good.replace('"holdForS":1}', '"holdForS":-1}');
    expect(complaints(holdForS)).toEqual([
      'file › events[1] › body › steps[1] › holdForS: expected a finite number of at least 0, got -1',
    ]);
    expect(complaints(good.replace(/"samples":"[^"]+"/, '"samples":"AA"'))[0]).toBe(
      'file › events[2] › body › samples: expected 16-bit samples, got "AA"',
    );
  });
});

test('a file with any bytes changed never throws and never half-fills a phone', async () => {
  const good = exportText({ events: firstEvening(), damaged: [] }, NOW);
  const meddling = fc.tuple(fc.nat(good.length), fc.nat(30), fc.string({ maxLength: 8 }));
  await fc.assert(
    fc.asyncProperty(meddling, async ([at, cut, put]) => {
      const parsed = parseExport(good.slice(0, at) + put + good.slice(at + cut));
      if (!parsed.ok) {
        expect(parsed.problem.kind).toBe('damaged');
        return;
      }
      for (const damage of parsed.value.damaged)
        expect(sayDamage(damage)).toMatch(/^file › events\[\d+\].*: expected .+, got .+/);
      const phone = createMemoryStore({ newId: () => 'new-phone' });
      const merged = await kindOf(phone.merge(parsed.value.events));
      const kept = (await value(phone.all())).events.length;
      expect(kept).toBe(merged === 'fine' ? parsed.value.events.length : 0);
    }),
    { seed: SEED, numRuns: 400 },
  );
});
