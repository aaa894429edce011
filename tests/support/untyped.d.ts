/** Packages that bring no types: a CouchDB server for the tests. */
declare module 'express-pouchdb' {
  import type { RequestListener } from 'node:http';

  export default function serve(pouch: unknown, options: Readonly<Record<string, unknown>>): RequestListener;
}
declare module 'pouchdb-core' {
  interface Pouch {
    plugin(plugin: unknown): Pouch;
    defaults(options: Readonly<Record<string, unknown>>): Pouch;
  }
  const pouch: Pouch;
  export default pouch;
}
declare module 'pouchdb-adapter-memory';
declare module 'pouchdb-mapreduce';
declare module 'pouchdb-replication';
