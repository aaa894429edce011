/**
 * Seals what leaves for a server, and opens what comes back: AES-256-GCM under a key made from the handler's passphrase by
 * PBKDF2-HMAC-SHA-256, both the browser's own (WebCrypto). The server sees names of documents, sizes and times, no content.
 */
import type { StoredEvent } from '../core/event.ts';
import { base64Of, bytesFrom } from './base64.ts';

export type Bytes = Uint8Array<ArrayBuffer>;
export type RandomBytes = (count: number) => Bytes;

/** What OWASP's Password Storage Cheat Sheet asks of PBKDF2-HMAC-SHA-256 since 2023. */
export const ROUNDS = 600_000;
/** More would only keep a phone busy: a hostile server must not be able to ask for it. */
const MOST_ROUNDS = 10_000_000;
/** NIST SP 800-132 asks for 128 bits at least. */
const SALT_BYTES = 16;
/** 96 bits, fresh for each sealing: NIST SP 800-38D, 8.2. Drawn by chance it serves for 2^32 sealings under one key. */
const IV_BYTES = 12;
/** Sealed texts are filled up to a multiple of this, so that their length hardly tells one kind of event from another. */
const FILLED_TO_BYTES = 256;

/** The passphrase in a form from which keys can be made, and from which nobody can read it back. */
export function passphraseKey(passphrase: string): Promise<CryptoKey> {
  // The same letters can be typed in several codes.
  const bytes = new TextEncoder().encode(passphrase.normalize('NFKC'));
  return crypto.subtle.importKey('raw', bytes, 'PBKDF2', false, ['deriveBits']);
}

export async function stretchKey(base: CryptoKey, salt: Bytes, rounds: number, bits = 256): Promise<Bytes> {
  const how = { name: 'PBKDF2', hash: 'SHA-256', salt, iterations: rounds };
  return new Uint8Array(await crypto.subtle.deriveBits(how, base, bits));
}

export function cipherKey(raw: Bytes): Promise<CryptoKey> {
  return crypto.subtle.importKey('raw', raw, 'AES-GCM', false, ['encrypt', 'decrypt']);
}

/** `about` is not hidden, and must be the same when it is opened. */
export async function sealBytes(key: CryptoKey, iv: Bytes, about: Bytes, plain: Bytes): Promise<Bytes> {
  const how = { name: 'AES-GCM', iv, additionalData: about, tagLength: 128 };
  return new Uint8Array(await crypto.subtle.encrypt(how, key, plain));
}

/** Null: another key, another `about`, or changed on the way. */
export async function openBytes(key: CryptoKey, iv: Bytes, about: Bytes, sealed: Bytes): Promise<Bytes | null> {
  try {
    const how = { name: 'AES-GCM', iv, additionalData: about, tagLength: 128 };
    return new Uint8Array(await crypto.subtle.decrypt(how, key, sealed));
  } catch {
    return null;
  }
}

/** Both base64. */
interface Sealed {
  readonly iv: string;
  readonly sealed: string;
}

async function seal(key: CryptoKey, about: string, content: unknown, randomBytes: RandomBytes): Promise<Sealed> {
  const iv = randomBytes(IV_BYTES);
  const sealed = await sealBytes(key, iv, utf8(about), filled(utf8(JSON.stringify(content))));
  return { iv: base64Of(iv), sealed: base64Of(sealed) };
}

async function open(key: CryptoKey, about: string, { iv, sealed }: Partial<Sealed>): Promise<unknown> {
  const nonce = typeof iv === 'string' ? bytesFrom(iv) : null;
  const body = typeof sealed === 'string' ? bytesFrom(sealed) : null;
  if (nonce?.length !== IV_BYTES || !body) return undefined;
  const plain = await openBytes(key, nonce, utf8(about), body);
  return plain === null ? undefined : parsed(new TextDecoder().decode(plain));
}

/** With spaces, which JSON passes over. */
function filled(bytes: Bytes): Bytes {
  const full = new Uint8Array(Math.ceil(bytes.length / FILLED_TO_BYTES) * FILLED_TO_BYTES).fill(0x20);
  full.set(bytes);
  return full;
}

function utf8(text: string): Bytes {
  return new TextEncoder().encode(text);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** An event as a server keeps it. Everything of it but its id is sealed; the id is bound to the rest. */
export interface EventDocument extends Sealed {
  readonly _id: string;
  readonly form: 1;
}

const aboutEvent = (id: string): string => `stillbeat event 1|${id}`;

export async function sealEvent(key: CryptoKey, event: StoredEvent, randomBytes: RandomBytes): Promise<EventDocument> {
  return { _id: event.id, form: 1, ...(await seal(key, aboutEvent(event.id), event, randomBytes)) };
}

/** The record inside, unchecked; undefined: not sealed with this key, or changed, or moved to another id. */
export async function openEvent(key: CryptoKey, document: { readonly _id: string }): Promise<unknown> {
  const { form, ...rest } = document as Partial<EventDocument>;
  const record = form === 1 ? await open(key, aboutEvent(document._id), rest) : undefined;
  return (record as { id?: unknown } | undefined)?.id === document._id ? record : undefined;
}

/** The document of a database that says how its key is made, and by which a passphrase is tried. */
export interface Head {
  readonly format: 'stillbeat sync';
  readonly version: 1;
  readonly kdf: 'PBKDF2-HMAC-SHA-256';
  readonly rounds: number;
  /** Base64, drawn for this database. */
  readonly salt: string;
  readonly cipher: 'AES-256-GCM';
  /** The id of the dog, sealed. Whoever can open it has the right passphrase. */
  readonly check: Sealed;
}

export interface Opened {
  readonly key: CryptoKey;
  readonly dogId: string;
}

const aboutHead = (salt: string, rounds: number): string => `stillbeat sync 1|${salt}|${rounds}`;

/** A database of a dog is begun with this passphrase. */
export async function makeHead(
  base: CryptoKey,
  dogId: string,
  randomBytes: RandomBytes,
  rounds = ROUNDS,
): Promise<{ head: Head; key: CryptoKey }> {
  const bytes = randomBytes(SALT_BYTES);
  const key = await cipherKey(await stretchKey(base, bytes, rounds));
  const salt = base64Of(bytes);
  const check = await seal(key, aboutHead(salt, rounds), { dogId }, randomBytes);
  const head: Head = {
    ...{ format: 'stillbeat sync', version: 1, kdf: 'PBKDF2-HMAC-SHA-256', rounds, salt },
    ...{ cipher: 'AES-256-GCM', check },
  };
  return { head, key };
}

export type HeadOpened =
  | ({ readonly kind: 'fits' } & Opened)
  | { readonly kind: 'wrong-passphrase' }
  | { readonly kind: 'unknown-form' };

/** @param leastRounds fewer in a head that a server hands out would make the passphrase cheap to guess. */
export async function openHead(base: CryptoKey, given: unknown, leastRounds = ROUNDS): Promise<HeadOpened> {
  const { format, version, kdf, cipher, rounds = 0, salt = '', check } = (given ?? {}) as Partial<Head>;
  const bytes = bytesFrom(salt);
  const isOurs = format === 'stillbeat sync' && version === 1 && kdf === 'PBKDF2-HMAC-SHA-256' && cipher === 'AES-256-GCM';
  const isSound = Number.isSafeInteger(rounds) && rounds >= leastRounds && rounds <= MOST_ROUNDS;
  if (!isOurs || !isSound || !bytes || bytes.length < SALT_BYTES) return { kind: 'unknown-form' };
  const key = await cipherKey(await stretchKey(base, bytes, rounds));
  const inside = (await open(key, aboutHead(salt, rounds), check ?? {})) as { dogId?: unknown } | undefined;
  return typeof inside?.dogId === 'string' ? { kind: 'fits', key, dogId: inside.dogId } : { kind: 'wrong-passphrase' };
}

/** One passphrase on one database. Stretching takes a phone half a second, so the same head is tried once. */
export interface Lock {
  open(head: unknown): Promise<HeadOpened>;
  make(dogId: string): Promise<{ head: Head; key: CryptoKey }>;
}

/** @param rounds fewer only in tests. */
export function createLock(base: CryptoKey, randomBytes: RandomBytes, rounds = ROUNDS): Lock {
  let tried: { readonly text: string; readonly opened: HeadOpened } | null = null;
  return {
    open: async (head) => {
      const text = JSON.stringify(head);
      if (tried?.text !== text) tried = { text, opened: await openHead(base, head, rounds) };
      return tried.opened;
    },
    make: (dogId) => makeHead(base, dogId, randomBytes, rounds),
  };
}
