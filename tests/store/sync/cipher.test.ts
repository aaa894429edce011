/** The browser's cryptography through our wrapper: published vectors, Node's own as a second opinion, and what must not open. */
import { createDecipheriv, pbkdf2Sync } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import {
  type Bytes,
  cipherKey,
  createLock,
  makeHead,
  openBytes,
  openEvent,
  openHead,
  passphraseKey,
  type RandomBytes,
  ROUNDS,
  sealBytes,
  sealEvent,
  stretchKey,
} from '../../../src/store/sync-cipher.ts';
import { playedSession } from '../event-samples.ts';

const fromHex = (hex: string): Bytes => Uint8Array.from(Buffer.from(hex, 'hex'));
const toHex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');
const utf8 = (text: string): Bytes => new TextEncoder().encode(text);
const randomBytes: RandomBytes = (count) => crypto.getRandomValues(new Uint8Array(count));

/** RFC 7914, section 11 (R). */
const STRETCHED = [
  {
    ...{ passphrase: 'passwd', salt: 'salt', rounds: 1 },
    makes:
      '55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783',
  },
  {
    ...{ passphrase: 'Password', salt: 'NaCl', rounds: 80_000 },
    makes:
      '4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d',
  },
];

/** McGrew and Viega, "The Galois/Counter Mode of Operation", submitted to NIST, test case 16: AES-256 with additional data (R). */
const SEALED = {
  key: 'feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308',
  iv: 'cafebabefacedbaddecaf888',
  about: 'feedfacedeadbeeffeedfacedeadbeefabaddad2',
  plain:
    'd9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a721c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39',
  cipher:
    '522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662',
  tag: '76fc6ece0f4e1768cddf8853bb2d551b',
};

describe('published vectors', () => {
  test.each(STRETCHED)(
    'a key is stretched as RFC 7914 says: $passphrase, $rounds rounds',
    async ({ passphrase, salt, rounds, makes }) => {
      const stretched = await stretchKey(await passphraseKey(passphrase), utf8(salt), rounds, 512);
      expect(toHex(stretched)).toBe(makes);
    },
  );

  test('a text is sealed as the authors of GCM say, and opened again', async () => {
    const key = await cipherKey(fromHex(SEALED.key));
    const [iv, about, plain] = [fromHex(SEALED.iv), fromHex(SEALED.about), fromHex(SEALED.plain)];
    const sealed = await sealBytes(key, iv, about, plain);
    expect(toHex(sealed)).toBe(SEALED.cipher + SEALED.tag);
    expect(toHex((await openBytes(key, iv, about, sealed)) as Bytes)).toBe(SEALED.plain);
    for (let at = 0; at < sealed.length; at++) {
      const changed = Uint8Array.from(sealed, (byte, nth) => (nth === at ? byte ^ 1 : byte));
      expect(await openBytes(key, iv, about, changed)).toBeNull();
    }
    expect(await openBytes(key, iv, fromHex(`${SEALED.about.slice(0, -2)}d3`), sealed)).toBeNull();
  });
});

const [EVENT, OTHER] = playedSession('evening');
if (!EVENT || !OTHER) throw new Error('a played session has events');

async function begun(passphrase: string, rounds = ROUNDS) {
  const base = await passphraseKey(passphrase);
  return { base, ...(await makeHead(base, 'pixel', randomBytes, rounds)) };
}

describe('an event on its way', () => {
  test('opens as it was, with Node’s own cryptography too', async () => {
    const { head, key } = await begun('Kinn auf die Hand', 1_000);
    const document = await sealEvent(key, EVENT, randomBytes);
    expect(await openEvent(key, document)).toEqual(EVENT);
    const raw = pbkdf2Sync('Kinn auf die Hand', Buffer.from(head.salt, 'base64'), 1_000, 32, 'sha256');
    const sealed = Buffer.from(document.sealed, 'base64');
    const open = createDecipheriv('aes-256-gcm', raw, Buffer.from(document.iv, 'base64'));
    open.setAAD(Buffer.from(`stillbeat event 1|${EVENT.id}`));
    open.setAuthTag(sealed.subarray(-16));
    const text = Buffer.concat([open.update(sealed.subarray(0, -16)), open.final()]).toString();
    expect(JSON.parse(text)).toEqual(EVENT);
  });

  test('shows nothing but its id, and a length in steps of 256 bytes', async () => {
    const { key } = await begun('a', 1);
    for (const event of playedSession('evening')) {
      const { _id, form, iv, sealed, ...rest } = await sealEvent(key, event, randomBytes);
      expect(rest).toEqual({});
      expect([_id, form, Buffer.from(iv, 'base64').length]).toEqual([event.id, 1, 12]);
      expect((Buffer.from(sealed, 'base64').length - 16) % 256).toBe(0);
    }
  });

  test('is never sealed twice alike', async () => {
    const { key } = await begun('a', 1);
    const many = await Promise.all(Array.from({ length: 200 }, () => sealEvent(key, EVENT, randomBytes)));
    expect(new Set(many.map(({ iv }) => iv)).size).toBe(200);
    expect(new Set(many.map(({ sealed }) => sealed)).size).toBe(200);
  });

  test('put under another id is noticed', async () => {
    const { key } = await begun('a', 1);
    const document = await sealEvent(key, EVENT, randomBytes);
    expect(await openEvent(key, { ...document, _id: OTHER.id } as typeof document)).toBeUndefined();
  });

  test('moved from one dog’s database into another is noticed, under the same passphrase too', async () => {
    const [one, two] = await Promise.all([begun('a', 1), begun('a', 1)]);
    expect(await openEvent(two.key, await sealEvent(one.key, EVENT, randomBytes))).toBeUndefined();
  });

  test.each([
    ['nothing', {}],
    ['another form', { form: 2 }],
    ['no seal', { sealed: 7 }],
    ['no base64', { sealed: '***' }],
    ['a short nonce', { iv: 'AAAA' }],
  ])('that is %s is not opened', async (_, wrong) => {
    const { key } = await begun('a', 1);
    const document = await sealEvent(key, EVENT, randomBytes);
    const broken = Object.keys(wrong).length === 0 ? { _id: EVENT.id } : { ...document, ...wrong };
    expect(await openEvent(key, broken as { _id: string })).toBeUndefined();
  });
});

describe('a passphrase', () => {
  test('that is right opens the head and tells the dog; a wrong one is known at once', async () => {
    const { base, head } = await begun('right');
    expect(head.rounds).toBe(600_000);
    expect(await openHead(base, head)).toMatchObject({ kind: 'fits', dogId: 'pixel' });
    expect(await openHead(await passphraseKey('Right'), head)).toEqual({ kind: 'wrong-passphrase' });
  });

  test('is the same however its letters were typed', async () => {
    const { head } = await begun('Pfötchen'.normalize('NFC'), 1);
    const typed = await passphraseKey('Pfötchen'.normalize('NFD'));
    expect(await openHead(typed, head, 1)).toMatchObject({ kind: 'fits' });
  });

  test('cannot be read back from what is kept of it', async () => {
    const base = await passphraseKey('right');
    expect(base.extractable).toBe(false);
    await expect(crypto.subtle.exportKey('raw', base)).rejects.toThrow();
  });

  test('gets another salt, and so another key, for each database', async () => {
    const [one, two] = await Promise.all([begun('a', 1), begun('a', 1)]);
    expect(one.head.salt).not.toBe(two.head.salt);
    expect(Buffer.from(one.head.salt, 'base64')).toHaveLength(16);
  });

  test('is not tried on a head that would make it cheap to guess, or that is none', async () => {
    const { base, head } = await begun('a', 1);
    const odd = [
      ...[head, { ...head, rounds: ROUNDS - 1 }, { ...head, rounds: 1e9 }, { ...head, rounds: '600000' }],
      ...[null, {}, 7, 'head', { ...head, salt: 'AA==', rounds: ROUNDS }, { ...head, version: 2, rounds: ROUNDS }],
    ];
    for (const given of odd) expect(await openHead(base, given)).toEqual({ kind: 'unknown-form' });
  });

  test('is stretched once for one head', async () => {
    const { base, head } = await begun('right');
    const lock = createLock(base, randomBytes);
    await lock.open(head);
    const fromMs = performance.now();
    for (let n = 0; n < 20; n++) expect((await lock.open({ ...head })).kind).toBe('fits');
    // Once takes some 100 ms.
    expect(performance.now() - fromMs).toBeLessThan(100);
    expect(await lock.open({ ...head, rounds: ROUNDS - 1 })).toEqual({ kind: 'unknown-form' });
  });

  test('of which the head was tampered with does not open it', async () => {
    const { base, head } = await begun('a');
    expect(await openHead(base, { ...head, rounds: ROUNDS + 1 })).toEqual({ kind: 'wrong-passphrase' });
  });
});
