/**
 * Packs homework into the fragment of the app's own address, small enough for a QR code, and unpacks it again.
 * A fragment is never sent to a server: the phone that reads it opens the app, and the app reads it there.
 */
import type { Homework } from '../core/handover/homework.ts';
import { t } from '../core/language.ts';
import type { HandlingStep, Step } from '../core/plan.ts';
import { digestOf, fitHomework, type HomeworkRead, notHomework, refuse } from './homework-file.ts';
import { isTooDeep } from './import.ts';

const LINK_VERSION = 1;
/** A camera reads without a fault or not at all; eight bytes are enough to find a link that was cut or mistyped. */
const DIGEST_BYTES = 8;
/** Sixty steps with much text. Unpacked, a link may not grow beyond what a file may hold, bytes. */
const MOST_CODE_CHARACTERS = 200_000;
const MOST_UNPACKED_BYTES = 1_000_000;

/** Null: this browser cannot pack; the file says the same. Letters and digits of RFC 4648's base 32, which a QR code packs tightest. */
export async function homeworkCode(homework: Homework): Promise<string | null> {
  if (typeof CompressionStream === 'undefined') return null;
  const packed = pack(homework);
  const digest = (await digestOf(unpack(packed))).subarray(0, DIGEST_BYTES);
  const text = new TextEncoder().encode(JSON.stringify(packed));
  const body = await through(text, new CompressionStream('deflate-raw'), Number.POSITIVE_INFINITY);
  return toBase32(Uint8Array.of(LINK_VERSION, ...digest, ...(body ?? [])));
}

export async function parseHomeworkCode(code: string): Promise<HomeworkRead> {
  const bytes = code.length > MOST_CODE_CHARACTERS ? null : fromBase32(code);
  if (!bytes || bytes.length <= 1 + DIGEST_BYTES) return notHomework('link', t('letters A-Z and digits 2-7 of a homework'), code);
  const [version = 0] = bytes;
  if (version > LINK_VERSION) return refuse({ kind: 'newer', version });
  if (version < LINK_VERSION) return notHomework('link › version', String(LINK_VERSION), version);
  if (typeof DecompressionStream === 'undefined') return refuse({ kind: 'cannot-unpack' });
  const unpacked = await unpackBytes(bytes.subarray(1 + DIGEST_BYTES));
  const homework = unpacked === null ? null : unpack(unpacked);
  if (homework === null || !startsWith(await digestOf(homework), bytes.subarray(1, 1 + DIGEST_BYTES)))
    return refuse({ kind: 'changed-on-the-way' });
  return fitHomework(homework, 'homework');
}

const startsWith = (digest: Uint8Array, start: Uint8Array): boolean => start.every((byte, at) => byte === digest[at]);

async function unpackBytes(bytes: Uint8Array): Promise<readonly unknown[] | null> {
  try {
    const inflated = await through(bytes, new DecompressionStream('deflate-raw'), MOST_UNPACKED_BYTES);
    const text = inflated ? new TextDecoder().decode(inflated) : '';
    const value: unknown = isTooDeep(text) ? null : JSON.parse(text);
    return Array.isArray(value) ? value : null;
  } catch {
    return null;
  }
}

/** Null: more than `most` bytes would come out. Throws on what cannot be unpacked. */
async function through(bytes: Uint8Array, stream: GenericTransformStream, most: number): Promise<Uint8Array | null> {
  const reader = new Blob([bytes as Uint8Array<ArrayBuffer>])
    .stream()
    .pipeThrough<Uint8Array>(stream as never)
    .getReader();
  const pieces: Uint8Array[] = [];
  let length = 0;
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    length += piece.value.length;
    if (length > most) {
      await reader.cancel();
      return null;
    }
    pieces.push(piece.value);
  }
  const all = new Uint8Array(length);
  pieces.reduce((at, piece) => {
    all.set(piece, at);
    return at + piece.length;
  }, 0);
  return all;
}

/** Values without their names, in one order: a fifth shorter once deflated. 0 stands for what is not there. */
function pack(homework: Homework): readonly unknown[] {
  const { id, revision, givenAt, trainer, ownerName, dogName, title, position, rule, words, caution, sessionsAWeek, note } =
    homework;
  return [
    ...[id, revision, givenAt, trainer, ownerName, dogName, title, position, rule ?? 0],
    ...[words.hold, words.mark, words.lifted, caution, sessionsAWeek, note],
    homework.steps.map(packStep),
  ];
}

function packStep(step: Step): readonly unknown[] {
  const { id, title, caution = 0, halfOf } = step;
  const half = halfOf ? [halfOf.belowId, halfOf.aboveId] : 0;
  const common = [id, title, caution, half];
  if (step.kind === 'duration') return [...common, step.holdForS];
  const { area, extent, forS, halfway } = step;
  return [...common, forS, area, extent, halfway ? [halfway.title, halfway.extent, halfway.forS] : 0];
}

/** In the shape of homework, unchecked. */
function unpack(packed: readonly unknown[]): unknown {
  const [id, revision, givenAt, trainer, ownerName, dogName, title, position, rule, ...rest] = packed;
  const [hold, mark, lifted, caution, sessionsAWeek, note, steps] = rest;
  return {
    ...{ id, revision, givenAt, trainer, ownerName, dogName, title, position, caution, sessionsAWeek, note },
    words: { hold, mark, lifted },
    steps: Array.isArray(steps) ? steps.map(unpackStep) : steps,
    ...(rule === 0 ? {} : { rule }),
  };
}

function unpackStep(packed: unknown): unknown {
  if (!Array.isArray(packed)) return packed;
  const [id, title, caution, half, seconds, area, extent, halfway] = packed as readonly unknown[];
  const common = { id, title, ...(caution === 0 ? {} : { caution }), ...unpackHalfOf(half) };
  if (area === undefined) return { ...common, kind: 'duration', holdForS: seconds };
  return { ...common, kind: 'handling', area, extent, forS: seconds, ...unpackHalfway(halfway) };
}

function unpackHalfOf(half: unknown): Pick<Step, 'halfOf'> | object {
  return Array.isArray(half) ? { halfOf: { belowId: half[0], aboveId: half[1] } } : {};
}

function unpackHalfway(halfway: unknown): Pick<HandlingStep, 'halfway'> | object {
  return Array.isArray(halfway) ? { halfway: { title: halfway[0], extent: halfway[1], forS: halfway[2] } } : {};
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567';

function toBase32(bytes: Uint8Array): string {
  let text = '';
  let [held, bits] = [0, 0];
  for (const byte of bytes) {
    held = (held << 8) | byte;
    for (bits += 8; bits >= 5; bits -= 5) text += LETTERS[(held >> (bits - 5)) & 31];
    held &= (1 << bits) - 1;
  }
  return bits === 0 ? text : text + LETTERS[(held << (5 - bits)) & 31];
}

/** Null: it holds something else. Small letters too: somebody may have typed it. */
function fromBase32(text: string): Uint8Array | null {
  const bytes: number[] = [];
  let [held, bits] = [0, 0];
  for (const letter of text.toUpperCase()) {
    const value = LETTERS.indexOf(letter);
    if (value < 0) return null;
    held = (held << 5) | value;
    bits += 5;
    if (bits < 8) continue;
    bits -= 8;
    bytes.push(held >> bits);
    held &= (1 << bits) - 1;
  }
  return Uint8Array.from(bytes);
}
