/** A real server that speaks the CouchDB protocol (express-pouchdb, in memory), with users, as whoever hosts one would set it up. */
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import serve from 'express-pouchdb';
import memory from 'pouchdb-adapter-memory';
import Pouch from 'pouchdb-core';
import mapReduce from 'pouchdb-mapreduce';
import replication from 'pouchdb-replication';

export interface Couch {
  /** `http://127.0.0.1:5984`, without a slash. */
  readonly url: string;
  readonly port: number;
  /** Asks as the server's administrator. */
  ask(method: string, path: string, body?: unknown): Promise<unknown>;
  addUser(name: string, password: string): Promise<void>;
  /** A database that only these users may read and write. */
  addDatabase(name: string, members: readonly string[]): Promise<void>;
  /** Every document of a database, as the server has it. */
  documents(database: string): Promise<readonly Readonly<Record<string, unknown>>[]>;
  stop(): Promise<void>;
}

const BOSS = `Basic ${btoa('boss:boss')}`;
let started = 0;

export async function startCouch(): Promise<Couch> {
  const folder = mkdtempSync(join(tmpdir(), 'stillbeat-couch-'));
  started += 1;
  // Each with a prefix of its own: what is in memory is shared by all servers of a process.
  const pouch = Pouch.plugin(memory)
    .plugin(mapReduce)
    .plugin(replication)
    .defaults({ adapter: 'memory', prefix: `${started}-` });
  const server = createServer(serve(pouch, { inMemoryConfig: true, logPath: join(folder, 'log.txt') }));
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  const url = `http://127.0.0.1:${port}`;
  const ask = async (method: string, path: string, body?: unknown) => {
    const headers = { authorization: BOSS, 'content-type': 'application/json' };
    const said = await fetch(`${url}/${path}`, { method, headers, ...(body !== undefined && { body: JSON.stringify(body) }) });
    const text = await said.text();
    if (!said.ok) throw new Error(`${method} ${path}: ${said.status} ${text}`);
    return JSON.parse(text) as unknown;
  };
  await fetch(`${url}/_config/admins/boss`, { method: 'PUT', body: '"boss"' });
  return {
    ...{ url, port, ask },
    addUser: async (name, password) => {
      await ask('PUT', `_users/org.couchdb.user:${name}`, { name, password, roles: [], type: 'user' });
    },
    addDatabase: async (name, members) => {
      await ask('PUT', name);
      await ask('PUT', `${name}/_security`, { admins: { names: [], roles: [] }, members: { names: members, roles: [] } });
    },
    documents: async (database) => {
      const { rows } = (await ask('GET', `${database}/_all_docs?include_docs=true`)) as {
        rows: { doc: Record<string, unknown> }[];
      };
      return rows.map(({ doc }) => doc);
    },
    stop: async () => {
      await close(server);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function close(server: Server): Promise<void> {
  server.closeAllConnections();
  await new Promise((closed) => server.close(closed));
}
