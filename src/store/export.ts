/** Writes every event into one JSON document, and reads such a document back, record by record, telling what it cannot use. */
import type { Settings, StoredEvent } from '../core/event.ts';
import { t } from '../core/language.ts';
import { inOrder } from '../core/library.ts';
import type { Stretch } from '../core/stretch.ts';
import type { IsoTime } from '../core/units.ts';
import { base64Of, bytesFrom } from './base64.ts';
import { type Damage, failure, type Result, success } from './problem.ts';
import type { Reading } from './reading.ts';
import { checkEvent, isInt16Array, isSettings, isStretch, shorten } from './record-check.ts';

export const EXPORT_FORMAT = 'stillbeat events';
export const EXPORT_VERSION = 1;

/** Version 1. `samples` of a taught sound are base64 of 16-bit little-endian; features are base64 of bytes and of 32-bit floats; all else is as stored. */
interface Exported {
  readonly format: typeof EXPORT_FORMAT;
  readonly version: typeof EXPORT_VERSION;
  readonly exportedAt: IsoTime;
  /** Only in a file of one handler's words. */
  readonly words?: WordsHead;
  /** Good events in order, then damaged records as they are: a copy of everything, so that nothing is lost. */
  readonly events: readonly unknown[];
}

/** Whose words a file holds, and what they have set; the takes are its events. */
export interface WordsHead {
  readonly handler: string;
  readonly settings: Settings;
}

export interface Imported extends Reading<StoredEvent> {
  readonly exportedAt: IsoTime;
}

export function exportText({ events, damaged }: Reading<StoredEvent>, exportedAt: IsoTime, words?: WordsHead): string {
  const records = [...events, ...damaged.map(({ record }) => record)].map(packSamples);
  const document: Exported = {
    format: EXPORT_FORMAT,
    version: EXPORT_VERSION,
    exportedAt,
    ...(words && { words }),
    events: records,
  };
  // One event a line: such a file can be read, searched and compared.
  const { events: lines, ...head } = document;
  const rows = lines.map((line) => JSON.stringify(line) ?? 'null').join(',\n');
  return `${JSON.stringify(head).slice(0, -1)},"events":[\n${rows}\n]}\n`;
}

/** Fails when the document as a whole cannot be read; a bad event costs only itself and is told. */
export function parseExport(text: string): Result<Imported> {
  const document = parseJson(text);
  const problem = document === undefined ? damage('file', 'JSON', text) : headProblem(document);
  if (problem) return failure({ kind: 'damaged', damaged: [problem] });
  const { exportedAt, events } = document as Exported;
  const checked = events.map((record, nth) => checkEvent(unpackSamples(record), `file › events[${nth}]`));
  return success({
    exportedAt,
    events: inOrder(checked.flatMap((one) => (one.ok ? [one.event] : []))),
    damaged: checked.flatMap((one) => (one.ok ? [] : [one.damage])),
  });
}

/** Of a file that reads as an export; null: it holds something else than one handler's words, or settings that cannot be. */
export function wordsHeadOf(text: string): WordsHead | null {
  const { words } = (parseJson(text) ?? {}) as { words?: Partial<WordsHead> | null };
  return typeof words?.handler === 'string' && isSettings(words.settings)
    ? { handler: words.handler, settings: words.settings }
    : null;
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function headProblem(document: unknown): Damage | null {
  if (typeof document !== 'object' || document === null) return damage('file', t('a record'), document);
  const { format, version, exportedAt, events } = document as { [Field in keyof Exported]?: unknown };
  if (format !== EXPORT_FORMAT) return damage('file › format', `"${EXPORT_FORMAT}"`, format);
  if (version !== EXPORT_VERSION)
    return damage('file › version', t('{n}, the newest this app knows', { n: EXPORT_VERSION }), version);
  if (typeof exportedAt !== 'string') return damage('file › exportedAt', t('an ISO time with its offset'), exportedAt);
  return Array.isArray(events) ? null : damage('file › events', t('a list'), events);
}

function damage(path: string, expected: string, value: unknown): Damage {
  return { path, expected, got: shorten(value), record: value };
}

interface WithSamples {
  readonly type?: unknown;
  readonly body?: { readonly samples?: unknown; readonly stretch?: unknown } | null;
}

function packSamples(record: unknown): unknown {
  const { body } = (record ?? {}) as WithSamples;
  const { samples, stretch } = body ?? {};
  if (isStretch(stretch)) return { ...(record as object), body: { ...body, stretch: packStretch(stretch) } };
  return isInt16Array(samples) ? { ...(record as object), body: { ...body, samples: toBase64(samples) } } : record;
}

function packStretch({ bytes, base, scale, ...counts }: Stretch): object {
  return { ...counts, bytes: base64Of(bytes), base: floatsToText(base), scale: floatsToText(scale) };
}

/** What does not fit stays as it is, and the check says so. */
function unpackStretch(packed: unknown): unknown {
  const { bytes, base, scale, ...counts } = (packed ?? {}) as { bytes?: unknown; base?: unknown; scale?: unknown };
  const [all, low, width] = [bytes, base, scale].map((text) => (typeof text === 'string' ? bytesFrom(text) : null));
  if (!all || !low || !width) return packed;
  return { ...counts, bytes: all, base: floatsFrom(low), scale: floatsFrom(width) };
}

/** 32-bit, little-endian. */
function floatsToText(values: Float32Array): string {
  const view = new DataView(new ArrayBuffer(4 * values.length));
  values.forEach((value, at) => {
    view.setFloat32(4 * at, value, true);
  });
  return base64Of(new Uint8Array(view.buffer));
}

function floatsFrom(bytes: Uint8Array): Float32Array {
  const view = new DataView(bytes.buffer);
  return Float32Array.from({ length: Math.floor(bytes.length / 4) }, (_, at) => view.getFloat32(4 * at, true));
}

function unpackSamples(record: unknown): unknown {
  const { type, body } = (record ?? {}) as WithSamples;
  if (type === 'take-learned' && body) return { ...(record as object), body: { ...body, stretch: unpackStretch(body.stretch) } };
  if (type !== 'sound-taught' || typeof body?.samples !== 'string') return record;
  // What is no base64 stays text, and the check says so.
  return { ...(record as object), body: { ...body, samples: fromBase64(body.samples) ?? body.samples } };
}

function toBase64(samples: Int16Array): string {
  const view = new DataView(new ArrayBuffer(2 * samples.length));
  samples.forEach((sample, at) => {
    view.setInt16(2 * at, sample, true);
  });
  return base64Of(new Uint8Array(view.buffer));
}

function fromBase64(text: string): Int16Array | null {
  const bytes = bytesFrom(text);
  if (!bytes || bytes.length % 2 !== 0) return null;
  const view = new DataView(bytes.buffer);
  return Int16Array.from({ length: bytes.length / 2 }, (_, at) => view.getInt16(2 * at, true));
}
