/** What can go wrong between this device and the handler's server, as values; and which of it may pass by itself. */

export type Trouble =
  /** No network, a cut, or no answer in time. */
  | { readonly kind: 'no-answer' }
  /** The server answered that it cannot right now. */
  | { readonly kind: 'busy'; readonly status: number }
  /** Name or password are not right. */
  | { readonly kind: 'sign-in' }
  /** Signed in, and not let into this database. */
  | { readonly kind: 'not-allowed' }
  | { readonly kind: 'no-database' }
  /** What answered does not speak the CouchDB protocol: the path leads elsewhere. */
  | { readonly kind: 'no-server'; readonly status: number }
  /** Noticed before anything is written. */
  | { readonly kind: 'wrong-passphrase' }
  /** The database was begun by a newer version, or its key is weaker than this app allows. */
  | { readonly kind: 'unknown-form' }
  /** The database is there and empty, and this device has no dog to put there. */
  | { readonly kind: 'empty' }
  /** The database holds another dog than the one chosen for it. */
  | { readonly kind: 'another-dog' }
  /** This device could not read or write what it keeps. */
  | { readonly kind: 'device'; readonly cause: string };

/** The rest needs somebody: asking again would not help. */
export function passesByItself({ kind }: Trouble): boolean {
  return kind === 'no-answer' || kind === 'busy';
}
