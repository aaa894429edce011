/** A correction is stored like any event: it travels in a copy, and what cannot be one is refused with its path and value. */
import { expect, test } from 'vitest';
import { foldCorrected } from '../../src/core/correct.ts';
import type { Correction } from '../../src/core/correction.ts';
import type { SessionEvent, StoredEvent } from '../../src/core/event.ts';
import { exportText, parseExport } from '../../src/store/export.ts';
import { checkEvent } from '../../src/store/record-check.ts';
import { DEVICE, playedSession, value } from './event-samples.ts';

const session = playedSession('evening') as readonly SessionEvent[];
const of = session.find(({ type }) => type === 'word-heard')?.id ?? '';

function corrected(...bodies: readonly unknown[]): readonly StoredEvent[] {
  return bodies.map((body, nth) => {
    const seq = session.length + nth + 1;
    return { ...session.at(-1), id: `${DEVICE}:${seq}`, seq, type: 'corrected', body } as StoredEvent;
  });
}

const ALL: readonly Correction[] = [
  { do: 'confirm', of },
  { do: 'relabel', of, as: 'lifted' },
  { do: 'relabel', of, as: null },
  { do: 'move', of, startedAtS: 2.5 },
  { do: 'insert', word: 'mark', startedAtS: 12 },
  { do: 'void', of, reason: 'the door bell' },
  { do: 'note', of, text: 'wind' },
  { do: 'note', of: null, text: '' },
];

test('every correction is kept, and a copy brings it to another device whole', async () => {
  const log = [...session, ...corrected(...ALL)];
  for (const event of log) expect(checkEvent(event)).toMatchObject({ ok: true });
  const at = '2026-03-04T18:00:00.000+01:00';
  const copy = await value(Promise.resolve(parseExport(exportText({ events: log, damaged: [] }, at))));
  expect(foldCorrected(copy.events as readonly SessionEvent[])).toEqual(foldCorrected(log as readonly SessionEvent[]));
});

test.each([
  [{ do: 'forgive', of }, 'forgive'],
  [{ do: 'move', of, startedAtS: Number.NaN }, 'NaN'],
  [{ do: 'insert', word: 'mark', startedAtS: Number.POSITIVE_INFINITY }, 'Infinity'],
  [{ do: 'insert', word: 'finish', startedAtS: 1 }, 'finish'],
  [{ do: 'relabel', of, as: 'undo' }, 'undo'],
  [{ do: 'void', of, reason: 7 }, '7'],
  [{ do: 'note', of, text: null }, 'null'],
])('what is no correction is refused, and the complaint names the value (%#)', (body, got) => {
  const checked = checkEvent(corrected(body)[0]);
  expect(JSON.stringify(checked)).toContain(got);
  expect(checked).toMatchObject({ ok: false });
});
