/** Owns the page's one way out: requests to its own address, and to no other; and the chance that the way needs. */

export interface Web {
  readonly fetch: (url: string, init: RequestInit) => Promise<Response>;
  /** The whole address of a path, with a slash at its end; null: it leads to another host. */
  readonly addressOf: (path: string) => string | null;
  readonly randomBytes: (count: number) => Uint8Array<ArrayBuffer>;
  /** From 0 to 1. */
  readonly chance: () => number;
}

export const pageWeb: Web = {
  fetch: (url, init) => fetch(url, init),
  addressOf: (path) => addressFrom(path, document.baseURI),
  randomBytes: (count) => crypto.getRandomValues(new Uint8Array(count)),
  chance: Math.random,
};

/** The content policy refuses other hosts too; this says so before anything is asked. */
export function addressFrom(path: string, page: string): string | null {
  const url = parsed(path.trim().replace(/\/*$/, '/'), page);
  const isOurs = url !== null && url.origin === new URL(page).origin;
  return isOurs && !url.search && !url.hash && !url.username ? url.href : null;
}

function parsed(path: string, page: string): URL | null {
  try {
    return new URL(path, page);
  } catch {
    return null;
  }
}
