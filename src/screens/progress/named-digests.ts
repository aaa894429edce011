/** Names places and people of digests as they are called now, and puts a dog that came back with homework under the record it has here. */
import { dogsThatCameBack } from '../../core/desk/dogs.ts';
import type { Library } from '../../core/library.ts';
import { nameOf } from '../../core/named.ts';
import type { SessionDigest } from '../../core/progress/digest.ts';

export function withNamesNow(digests: readonly SessionDigest[], library: Library): readonly SessionDigest[] {
  const { handlers, places } = library;
  const sameAs = dogsThatCameBack(library);
  return digests.map((digest) => ({
    ...digest,
    dogId: sameAs.get(digest.dogId) ?? digest.dogId,
    handler: nameOf(handlers, digest.handler),
    place: nameOf(places, digest.place),
  }));
}
