/**
 * One exchange with one database, as a pure machine: what is asked next, given the answers so far.
 * First what is new there comes in, then what is new here goes out. It can be broken off anywhere: what was done is in the book,
 * and doing a thing twice changes nothing.
 */
import type { Milliseconds } from '../units.ts';
import { backOffMs } from './back-off.ts';
import { isKnown, type Known, NOTHING_KNOWN, partsOfId, withKnown } from './known.ts';
import { passesByItself, type Trouble } from './trouble.ts';

/** A place in the server's list of changes; only the server knows what it means. */
export type Place = string | number;

/** What this device remembers of one database. Kept on the device after every piece of work. */
export interface Book {
  /** How far the list of changes was read. */
  readonly since: Place;
  readonly known: Known;
  /** Counts exchanges that changed something; the server keeps it too. Null: never been there. */
  readonly turn: number | null;
  /** Events that are on the server and here with unlike content; both are left as they are. */
  readonly conflicts: readonly Unlike[];
  /** Documents that cannot be used: not sealed with this passphrase, damaged, or not of this dog. */
  readonly refused: readonly Refused[];
}

/** Where two events of one id begin to say something else; both shortened. */
export interface Unlike {
  readonly id: string;
  /** From field to field: `body › word`. */
  readonly path: string;
  readonly here: string;
  readonly there: string;
}

export interface Refused {
  readonly id: string;
  /** `sealed-otherwise`: with another passphrase, or changed or moved on the server. */
  readonly why: 'sealed-otherwise' | 'other-dog' | 'damaged';
  /** What is damaged. */
  readonly what?: string;
}

export const NEW_BOOK: Book = { since: 0, known: NOTHING_KNOWN, turn: null, conflicts: [], refused: [] };

/** Ids a page; a change is some 90 bytes. */
export const CHANGES_AT_ONCE = 500;
/** Documents a request: some 80 kB, so that a bad connection can finish one. Tried by hand, no source. */
export const DOCUMENTS_AT_ONCE = 100;

export type Ask =
  /** Read the head of the database and try the passphrase on it. */
  | { readonly do: 'open' }
  /** Write the head: nobody was here before. */
  | { readonly do: 'found' }
  | { readonly do: 'read-turn' }
  | { readonly do: 'list'; readonly since: Place; readonly limit: number }
  /** Read these, unseal them, keep those that are new. */
  | { readonly do: 'fetch'; readonly ids: readonly string[] }
  /** Which events of this dog does the device have that the server is not known to have? */
  | { readonly do: 'look-here'; readonly known: Known }
  | { readonly do: 'push'; readonly ids: readonly string[] }
  | { readonly do: 'keep-book'; readonly book: Book }
  | { readonly do: 'write-turn'; readonly turn: number }
  | { readonly do: 'wait'; readonly ms: Milliseconds; readonly because: Trouble }
  | { readonly do: 'end'; readonly trouble: Trouble | null };

export interface Change {
  readonly id: string;
  /** 1 for a document that was never changed. */
  readonly generation: number;
  readonly deleted: boolean;
}

export type Answer =
  | { readonly to: 'open'; readonly found: 'fits' | 'empty' }
  /** `taken`: another device was first. */
  | { readonly to: 'found'; readonly done: 'founded' | 'taken' }
  | { readonly to: 'read-turn'; readonly turn: number | null }
  | { readonly to: 'list'; readonly changes: readonly Change[]; readonly last: Place }
  | { readonly to: 'fetch'; readonly conflicts: readonly Unlike[]; readonly refused: readonly Refused[] }
  | { readonly to: 'look-here'; readonly ids: readonly string[] }
  /** `taken`: the server has such an id already. */
  | { readonly to: 'push'; readonly ok: readonly string[]; readonly taken: readonly string[] }
  | { readonly to: 'keep-book' | 'write-turn' }
  | { readonly to: 'wait' }
  | { readonly to: 'trouble'; readonly trouble: Trouble };

type At =
  | { readonly at: 'open' | 'found' | 'read-turn' | 'list' | 'look-here' | 'write-turn' }
  /** A page of changes, of which these are still to be read. */
  | { readonly at: 'page'; readonly ids: readonly string[]; readonly last: Place; readonly more: boolean }
  | { readonly at: 'push'; readonly ids: readonly string[] }
  /** Ids that the server had already are read and compared before the rest is pushed. */
  | { readonly at: 'compare'; readonly ids: readonly string[]; readonly rest: readonly string[] }
  | { readonly at: 'keep-book'; readonly then: At }
  | { readonly at: 'end'; readonly trouble: Trouble | null };

export interface Exchange {
  readonly book: Book;
  readonly where: At;
  /** In a row. */
  readonly failures: number;
  readonly wait: { readonly ms: Milliseconds; readonly because: Trouble } | null;
  /** Whether anything came or went since the last turn was written. */
  readonly moved: boolean;
}

export function beginExchange(book: Book): Exchange {
  return { book, where: { at: 'open' }, failures: 0, wait: null, moved: false };
}

export function askOf({ book, where, wait }: Exchange): Ask {
  if (wait) return { do: 'wait', ...wait };
  switch (where.at) {
    case 'list':
      return { do: 'list', since: book.since, limit: CHANGES_AT_ONCE };
    case 'page':
    case 'compare':
      return { do: 'fetch', ids: where.ids.slice(0, DOCUMENTS_AT_ONCE) };
    case 'push':
      return { do: 'push', ids: where.ids.slice(0, DOCUMENTS_AT_ONCE) };
    case 'look-here':
      return { do: 'look-here', known: book.known };
    case 'keep-book':
      return { do: 'keep-book', book };
    case 'write-turn':
      return { do: 'write-turn', turn: (book.turn ?? 0) + 1 };
    case 'end':
      return { do: 'end', trouble: where.trouble };
    default:
      return { do: where.at };
  }
}

/** @param chance from 0 to 1, for the wait after a failure. */
export function answered(exchange: Exchange, answer: Answer, chance: number): Exchange {
  if (answer.to === 'wait') return { ...exchange, wait: null };
  if (answer.to === 'trouble') return inTrouble(exchange, answer.trouble, chance);
  return goOn({ ...exchange, failures: 0 }, answer);
}

function inTrouble(exchange: Exchange, trouble: Trouble, chance: number): Exchange {
  if (!passesByItself(trouble)) return { ...exchange, where: { at: 'end', trouble } };
  const failures = exchange.failures + 1;
  return { ...exchange, failures, wait: { ms: backOffMs(failures, chance), because: trouble } };
}

function goOn(exchange: Exchange, answer: Exclude<Answer, { to: 'wait' | 'trouble' }>): Exchange {
  const { book, where } = exchange;
  switch (answer.to) {
    case 'open':
      return { ...exchange, where: { at: answer.found === 'fits' ? 'read-turn' : 'found' } };
    case 'found':
      return { ...exchange, where: { at: answer.done === 'founded' ? 'read-turn' : 'open' } };
    case 'read-turn':
      return { ...exchange, book: isSamePlace(book, answer.turn) ? book : { ...NEW_BOOK, turn: null }, where: { at: 'list' } };
    case 'list':
      return listed(exchange, answer);
    case 'fetch':
      return fetched(exchange, answer);
    case 'look-here':
      return afterPush(exchange, answer.ids);
    case 'push':
      return pushed(exchange, answer);
    case 'keep-book':
      return where.at === 'keep-book' ? { ...exchange, where: where.then } : exchange;
    case 'write-turn':
      return keepBook({ ...exchange, book: { ...book, turn: (book.turn ?? 0) + 1 }, moved: false }, END);
  }
}

const END: At = { at: 'end', trouble: null };

/** One turn ahead: its answer was lost. Anything else: the server was emptied, or put back to an older copy; all is looked at anew. */
function isSamePlace({ turn }: Book, onServer: number | null): boolean {
  if (turn === null) return false;
  return onServer === turn || onServer === turn + 1;
}

function keepBook(exchange: Exchange, then: At): Exchange {
  return { ...exchange, where: { at: 'keep-book', then } };
}

function listed(exchange: Exchange, { changes, last }: Extract<Answer, { to: 'list' }>): Exchange {
  const more = changes.length >= CHANGES_AT_ONCE;
  const events = changes.filter(({ id }) => partsOfId(id) !== null);
  // A deletion there deletes nothing here; that the number is used up is remembered.
  const gone = events.filter(({ deleted }) => deleted).map(({ id }) => id);
  const wanted = events.filter(
    ({ id, generation, deleted }) => !deleted && (generation > 1 || !isKnown(exchange.book.known, id)),
  );
  const book = { ...exchange.book, known: withKnown(exchange.book.known, gone) };
  return pageDone({ ...exchange, book }, { at: 'page', ids: wanted.map(({ id }) => id), last, more });
}

function pageDone(exchange: Exchange, page: Extract<At, { at: 'page' }>): Exchange {
  if (page.ids.length > 0) return { ...exchange, where: page };
  const book = { ...exchange.book, since: page.last };
  return keepBook({ ...exchange, book }, { at: page.more ? 'list' : 'look-here' });
}

function fetched(exchange: Exchange, { conflicts, refused }: Extract<Answer, { to: 'fetch' }>): Exchange {
  const { where } = exchange;
  if (where.at !== 'page' && where.at !== 'compare') return exchange;
  const done = where.ids.slice(0, DOCUMENTS_AT_ONCE);
  const ids = where.ids.slice(DOCUMENTS_AT_ONCE);
  const book: Book = {
    ...exchange.book,
    // What cannot be used is known too: to ask for it again and again would not mend it.
    known: withKnown(exchange.book.known, done),
    conflicts: byId([...exchange.book.conflicts, ...conflicts]),
    refused: byId([...exchange.book.refused, ...refused]),
  };
  const next = { ...exchange, book, moved: true };
  if (where.at === 'page') return pageDone(next, { ...where, ids });
  return ids.length > 0 ? { ...next, where: { ...where, ids } } : afterPush(next, where.rest);
}

/** Each once, as last told. */
function byId<T extends { readonly id: string }>(list: readonly T[]): readonly T[] {
  return [...new Map(list.map((each) => [each.id, each])).values()];
}

function pushed(exchange: Exchange, { ok, taken }: Extract<Answer, { to: 'push' }>): Exchange {
  const { where } = exchange;
  if (where.at !== 'push') return exchange;
  const rest = where.ids.slice(DOCUMENTS_AT_ONCE);
  const book = { ...exchange.book, known: withKnown(exchange.book.known, ok) };
  const next = { ...exchange, book, moved: true };
  return taken.length > 0 ? { ...next, where: { at: 'compare', ids: taken, rest } } : afterPush(next, rest);
}

function afterPush(exchange: Exchange, rest: readonly string[]): Exchange {
  if (rest.length > 0)
    return exchange.moved ? keepBook(exchange, { at: 'push', ids: rest }) : { ...exchange, where: { at: 'push', ids: rest } };
  // A server that never saw this device is told, so that it is recognised the next time.
  return exchange.moved || exchange.book.turn === null ? keepBook(exchange, { at: 'write-turn' }) : { ...exchange, where: END };
}
