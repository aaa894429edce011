/** Says which dogs stand on the trainer's desk, and under which of their records. Apart from their needs: the first screen asks for no more. */
import type { Dog } from '../event.ts';
import { type HomeworkGiven, latestOfEach, plansOf } from '../handover/homework.ts';
import type { Library } from '../library.ts';

/** One dog of an owner, with all under which it practises: the trainer's record of it, and the records that came back with homework. */
export interface DeskDog {
  readonly id: string;
  readonly name: string;
  readonly owner: string;
  /** The trainer's own record, and those of the owner's devices. */
  readonly dogIds: ReadonlySet<string>;
  /** What of it hurts, by any of these records; '': nothing is noted. */
  readonly pain: string;
  /** Each homework by its latest sending, newest first. */
  readonly homework: readonly HomeworkGiven[];
}

/** Dogs that are not the trainer's own, and dogs that were given homework; those put away are left out. */
export function deskDogs(library: Library): readonly DeskDog[] {
  const given = latestOfEach(library.homework.given);
  const sameAs = recordsThatCameBack(library, given);
  return library.dogs
    .filter(({ id, archived }) => !archived && !sameAs.has(id))
    .map((dog) => deskDogOf(dog, library.dogs, given, sameAs))
    .filter(({ owner, homework }) => owner !== '' || homework.length > 0);
}

function deskDogOf(
  { id, name, owner }: Dog,
  dogs: readonly Dog[],
  given: readonly HomeworkGiven[],
  sameAs: ReadonlyMap<string, string>,
): DeskDog {
  const homework = given.filter(({ dogId }) => dogId === id);
  const records = dogs.filter((each) => each.id === id || sameAs.get(each.id) === id);
  const whose = owner || homework[0]?.homework.ownerName || '';
  return { id, name, owner: whose, dogIds: new Set(records.map((each) => each.id)), pain: painOf(records), homework };
}

const painOf = (records: readonly Dog[]): string => [...new Set(records.flatMap(({ pain }) => pain || []))].join(' · ');

/** A dog as its owner's device knows it, by its id there, and the trainer's own record of the same dog: homework ties the two together. */
function recordsThatCameBack({ dogs, plans, homework }: Library, given: readonly HomeworkGiven[]): ReadonlyMap<string, string> {
  // Every device has the invented dog under one name: it is nobody's.
  const invented = new Set(dogs.flatMap((dog) => (dog.invented ? [dog.id] : [])));
  const ownerOf = new Map(plans.map(({ id, dogId }) => [id, dogId]));
  const sameAs = new Map<string, string>();
  for (const { homework: sent, dogId } of given)
    for (const planId of plansOf(sent.id, homework.received)) {
      const back = ownerOf.get(planId);
      if (back !== undefined && back !== dogId && !invented.has(back)) sameAs.set(back, dogId);
    }
  return sameAs;
}

/** The trainer's own record of every dog that came back under another: its sessions are told together. */
export function dogsThatCameBack(library: Library): ReadonlyMap<string, string> {
  return recordsThatCameBack(library, latestOfEach(library.homework.given));
}

/** Dogs of owners, under any of their records: the first screen is for the handler's own. */
export function dogsOfOwners(library: Library): ReadonlySet<string> {
  const owned = library.dogs.flatMap(({ id, owner }) => (owner ? [id] : []));
  return new Set([...owned, ...dogsThatCameBack(library).keys()]);
}
