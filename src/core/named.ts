/** Names of handlers and places: which there are, what each is called now, and under which id a new one is kept. */
import type { Named } from './event.ts';
import type { SessionState } from './fold.ts';
import { type Message, t } from './language.ts';
import type { Library } from './library.ts';

/** The handler and the place of an app in which nobody was named yet (`settings.ts`): ids, which each language calls in its own way. */
const UNNAMED = { me: 'me#the handler', 'at home': 'at home#the place' } as const satisfies Readonly<Record<string, Message>>;

const isUnnamed = (id: string): id is keyof typeof UNNAMED => Object.hasOwn(UNNAMED, id);

/** What it is called now. One that was never saved by name is called by its id. */
export function nameOf(saved: readonly Named[], id: string): string {
  return saved.find((each) => each.id === id)?.name ?? (isUnnamed(id) ? t(UNNAMED[id]) : id);
}

/** Those saved, then those that are only used, each once. */
function withUsed(saved: readonly Named[], usedIds: readonly string[]): readonly Named[] {
  const known = new Set(saved.map(({ id }) => id));
  const used = [...new Set(usedIds)].filter((id) => id !== '' && !known.has(id));
  return [...saved, ...used.map((id) => ({ id, name: nameOf([], id), archived: false }))];
}

/** Everybody whose words may be listened for: saved by name, having taught a take, having practised, or chosen now. */
export function handlersIn(library: Library, current: string, practised: readonly string[] = []): readonly Named[] {
  return withUsed(library.handlers, [...library.sounds.map(({ handler }) => handler), ...practised, current]);
}

export function placesIn(library: Library, current: string, practisedAt: readonly string[] = []): readonly Named[] {
  return withUsed(library.places, [...practisedAt, current]);
}

/** What stands in a choice: everything that is not put away, and the one chosen now whatever it is. */
export function choosable(all: readonly Named[], currentId: string): readonly Named[] {
  return all.filter(({ id, archived }) => !archived || id === currentId);
}

/** The one with this name, or else a new one: under its name, or under another id where that is taken. */
export function namedAs(all: readonly Named[], name: string, newId: () => string): Named {
  const has = all.find((each) => each.name === name);
  if (has) return { ...has, archived: false };
  return { id: all.some(({ id }) => id === name) ? newId() : name, name, archived: false };
}

/** A session as it is shown: dog, handler and place by the names they have now. */
export function withNames(state: SessionState, { dogs, handlers, places }: Library): SessionState {
  const { dogId, dogName, handler, place } = state.start;
  const named = {
    dogName: dogs.find(({ id }) => id === dogId)?.name ?? dogName,
    handler: nameOf(handlers, handler),
    place: nameOf(places, place),
  };
  return { ...state, start: { ...state.start, ...named } };
}
