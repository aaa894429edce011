/** Names places and people of digests as they are called now; both are kept by ids. */
import type { Library } from '../../core/library.ts';
import { nameOf } from '../../core/named.ts';
import type { SessionDigest } from '../../core/progress/digest.ts';

export function withNamesNow(digests: readonly SessionDigest[], { handlers, places }: Library): readonly SessionDigest[] {
  return digests.map((digest) => ({
    ...digest,
    handler: nameOf(handlers, digest.handler),
    place: nameOf(places, digest.place),
  }));
}
