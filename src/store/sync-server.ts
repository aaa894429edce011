/**
 * Speaks to the handler's own server over the CouchDB HTTP protocol: the only file that does. Every answer is a value; what a server
 * may do wrong, or a network break off, is a trouble with a kind.
 */
import type { Change, Place } from '../core/sync/exchange.ts';
import type { Trouble } from '../core/sync/trouble.ts';
import type { Milliseconds } from '../core/units.ts';
import type { After } from './database.ts';
import type { EventDocument, Head } from './sync-cipher.ts';

export type Answered<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly trouble: Trouble };

export interface ServerParts {
  readonly fetch: (url: string, init: RequestInit) => Promise<Response>;
  readonly after: After;
  /** Where the server is reached: a path of the page's own origin, with a slash at its end. */
  readonly address: string;
  readonly user: string;
  readonly password: string;
}

export interface SyncServer {
  /** Who the server takes this device for. */
  whoAmI(): Promise<Answered<{ readonly name: string }>>;
  database(name: string): SyncDatabase;
}

export interface SyncDatabase {
  /** Null: there is a database, and nothing in it says how its key is made. */
  head(): Promise<Answered<unknown>>;
  writeHead(head: Head): Promise<Answered<'founded' | 'taken'>>;
  turn(device: string): Promise<Answered<number | null>>;
  writeTurn(device: string, turn: number): Promise<Answered<undefined>>;
  changes(since: Place, limit: number): Promise<Answered<{ changes: readonly Change[]; last: Place }>>;
  /** Those of these that are there. */
  documents(ids: readonly string[]): Promise<Answered<readonly { readonly _id: string }[]>>;
  /** `taken`: there is a document with this id already, and it stays as it is. */
  add(documents: readonly EventDocument[]): Promise<Answered<{ ok: readonly string[]; taken: readonly string[] }>>;
}

/** A hundred documents over a bad line take some seconds. */
const ANSWER_WITHIN_MS: Milliseconds = 30_000;
/** No event's id: events are named `<device>:<number>`. */
const HEAD_ID = 'stillbeat';

/** CouchDB's rule for names of databases. */
export function isDatabaseName(name: string): boolean {
  return /^[a-z][a-z0-9_$()+/-]{0,127}$/.test(name);
}

interface Said {
  readonly status: number;
  readonly body: Readonly<Record<string, unknown>>;
}

type Send = (method: 'GET' | 'PUT' | 'POST', path: string, body?: unknown) => Promise<Answered<Said>>;

export function reachServer(parts: ServerParts): SyncServer {
  const send: Send = (method, path, body) => sendOnce(parts, method, path, body);
  return {
    whoAmI: async () => {
      const said = await send('GET', '_session');
      if (!said.ok) return said;
      const { name } = (said.value.body.userCtx ?? {}) as { name?: unknown };
      return typeof name === 'string' ? fine({ name }) : trouble({ kind: 'sign-in' });
    },
    database: (name) => databaseOf(send, encodeURIComponent(name)),
  };
}

function databaseOf(send: Send, db: string): SyncDatabase {
  const local = (device: string) => `${db}/_local/stillbeat-${encodeURIComponent(device)}`;
  return {
    head: async () => expectDocument(await send('GET', `${db}/${HEAD_ID}`)),
    writeHead: async (head) => {
      const said = await send('PUT', `${db}/${HEAD_ID}`, head);
      if (!said.ok) return said;
      return said.value.status === 409 ? fine('taken') : expectDone(said.value, 'founded');
    },
    turn: async (device) => {
      const document = await expectDocument(await send('GET', local(device)));
      if (!document.ok) return document;
      const { turn } = (document.value ?? {}) as { turn?: unknown };
      return fine(typeof turn === 'number' ? turn : null);
    },
    writeTurn: (device, turn) => writeLocal(send, local(device), { turn }),
    changes: async (since, limit) => {
      const said = await send('GET', `${db}/_changes?since=${encodeURIComponent(since)}&limit=${limit}`);
      return said.ok ? changesIn(said.value) : said;
    },
    documents: async (ids) => {
      const said = await send('POST', `${db}/_all_docs?include_docs=true`, { keys: ids });
      return said.ok ? documentsIn(said.value) : said;
    },
    add: async (documents) => {
      const said = await send('POST', `${db}/_bulk_docs`, { docs: documents, new_edits: true });
      return said.ok ? addedIn(said.value) : said;
    },
  };
}

async function writeLocal(send: Send, path: string, content: object): Promise<Answered<undefined>> {
  const before = await expectDocument(await send('GET', path));
  if (!before.ok) return before;
  const { _rev } = (before.value ?? {}) as { _rev?: unknown };
  const said = await send('PUT', path, typeof _rev === 'string' ? { ...content, _rev } : content);
  if (!said.ok) return said;
  // Written in the meantime, by an answer that was lost: asked again it will fit.
  return said.value.status === 409 ? trouble({ kind: 'busy', status: 409 }) : expectDone(said.value, undefined);
}

function expectDone<T>({ status, body }: Said, value: T): Answered<T> {
  return body.ok === true ? fine(value) : trouble({ kind: 'no-server', status });
}

/** Null: the database has no such document. */
function expectDocument(said: Answered<Said>): Answered<unknown> {
  if (!said.ok) return said;
  const { status, body } = said.value;
  if (status === 200) return fine(body);
  if (status === 404 && body.error === 'not_found') return fine(null);
  return trouble({ kind: 'no-server', status });
}

function changesIn({ status, body }: Said): Answered<{ changes: readonly Change[]; last: Place }> {
  const { results, last_seq: last } = body;
  if (!Array.isArray(results) || !(typeof last === 'string' || typeof last === 'number'))
    return trouble({ kind: 'no-server', status });
  const changes = results.flatMap(({ id, changes: revisions, deleted }: Listed) =>
    typeof id === 'string' ? [{ id, generation: generationOf(revisions), deleted: deleted === true }] : [],
  );
  return fine({ changes, last });
}

interface Listed {
  readonly id?: unknown;
  readonly changes?: readonly { readonly rev?: unknown }[];
  readonly deleted?: unknown;
}

/** "3-91f2…" was changed twice. */
function generationOf(revisions: Listed['changes']): number {
  return Number.parseInt(String(revisions?.[0]?.rev), 10) || 1;
}

function documentsIn({ status, body }: Said): Answered<readonly { readonly _id: string }[]> {
  if (!Array.isArray(body.rows)) return trouble({ kind: 'no-server', status });
  return fine(
    body.rows.flatMap(({ doc }: { doc?: { _id?: unknown } | null }) =>
      typeof doc?._id === 'string' ? [doc as { _id: string }] : [],
    ),
  );
}

function addedIn({ status, body }: Said): Answered<{ ok: readonly string[]; taken: readonly string[] }> {
  const { list } = body;
  if (!Array.isArray(list)) return trouble({ kind: 'no-server', status });
  const rows = list as readonly { id?: unknown; ok?: unknown; error?: unknown }[];
  const ids = (which: readonly { id?: unknown }[]) => which.map(({ id }) => String(id));
  const taken = rows.filter(({ error }) => error === 'conflict');
  const refused = rows.find(({ error }) => error !== undefined && error !== 'conflict');
  // Some servers answer for each document that this user may not write it.
  if (refused) return trouble({ kind: 'not-allowed' });
  return fine({ ok: ids(rows.filter(({ ok }) => ok === true)), taken: ids(taken) });
}

async function sendOnce(parts: ServerParts, method: string, path: string, body: unknown): Promise<Answered<Said>> {
  const stop = new AbortController();
  const callOff = parts.after(ANSWER_WITHIN_MS, () => stop.abort());
  try {
    const response = await parts.fetch(parts.address + path, {
      ...{ method, signal: stop.signal, headers: headersOf(parts, body !== undefined) },
      // No cookies, no stored copies, no leading elsewhere: one request, one answer.
      ...{ credentials: 'omit', cache: 'no-store', redirect: 'error', referrerPolicy: 'no-referrer' },
      ...(body !== undefined && { body: JSON.stringify(body) }),
    });
    return meaningOf(response, await response.text());
  } catch {
    return trouble({ kind: 'no-answer' });
  } finally {
    callOff();
  }
}

function headersOf({ user, password }: ServerParts, hasBody: boolean): Record<string, string> {
  const bytes = new TextEncoder().encode(`${user}:${password}`);
  const authorization = `Basic ${btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))}`;
  return { accept: 'application/json', authorization, ...(hasBody && { 'content-type': 'application/json' }) };
}

function meaningOf({ status, headers }: Response, text: string): Answered<Said> {
  if (status >= 500 || status === 429 || status === 408) return trouble({ kind: 'busy', status });
  const body = readBody(text);
  // Half an answer is a cut; a page where an answer should be is a path that leads elsewhere.
  if (body === null && /json/.test(headers.get('content-type') ?? '')) return trouble({ kind: 'no-answer' });
  if (body === null) return trouble({ kind: 'no-server', status });
  if (status === 401) return trouble({ kind: isAboutDatabase(body) ? 'not-allowed' : 'sign-in' });
  if (status === 403) return trouble({ kind: 'not-allowed' });
  if (status === 404 && /no_db_file|database does not exist/i.test(String(body.reason))) return trouble({ kind: 'no-database' });
  return fine({ status, body });
}

/** Signed in and not let in: CouchDB says 403, express-pouchdb 401 with this reason. */
function isAboutDatabase({ reason }: Said['body']): boolean {
  return /not authorized to access/i.test(String(reason));
}

/** A list comes back as `{ list }`. */
function readBody(text: string): Said['body'] | null {
  try {
    const body: unknown = JSON.parse(text);
    if (Array.isArray(body)) return { list: body };
    return typeof body === 'object' && body !== null ? (body as Said['body']) : null;
  } catch {
    return null;
  }
}

function fine<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

function trouble(what: Trouble): { readonly ok: false; readonly trouble: Trouble } {
  return { ok: false, trouble: what };
}
