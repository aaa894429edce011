/** Opens what the first screen needs: the right to write, the store, the library. What hears and sounds comes after it (`furnish.ts`). */
import { t } from '../core/language.ts';
import { settingsOf } from '../core/settings.ts';
import { showHeads } from './heads.ts';
import { createLibraryKeeper, type LibraryKeeper } from './library.ts';
import type { AppParts, HomeRooms } from './rooms.ts';
import { createWriter } from './writer.ts';

/** Null, and said on the screen, when another tab writes. */
export async function openHome(parts: AppParts, use: HomeRooms['use']): Promise<HomeRooms | null> {
  use.setState({ language: await parts.speak(null) });
  const yieldTo = () => use.setState({ opening: { kind: 'another-tab' } });
  if (!(await parts.claim(yieldTo))) {
    yieldTo();
    return null;
  }
  const { store, kept } = await parts.openStore();
  const { wall } = parts;
  const writer = await createWriter(store, wall.newId, (writeProblem) => use.setState({ writeProblem }));
  const library = await store.library();
  // An empty library in its place would soon be written over the real one.
  if (!library.ok) throw new Error(t('what is kept on this device cannot be read ({kind})', { kind: library.problem.kind }));
  const { events, damaged } = library.value;
  if (damaged.length > 0) use.setState({ writeProblem: { kind: 'damaged', damaged } });
  const keeper = createLibraryKeeper(events, { wall, writer, show: (shown) => use.setState({ library: shown }) });
  const { language } = settingsOf(keeper.library());
  if (language) use.setState({ language: await parts.speak(language) });
  if (events.length === 0 && damaged.length === 0) await seed(keeper, parts.invented());
  use.setState({ library: keeper.library() });
  const home: HomeRooms = { parts, use, store, writer, keeper };
  await showHeads(home);
  use.setState({ opening: { kind: 'ready', kept } });
  parts.watchUpdates((update) => use.setState({ update }));
  return home;
}

function seed(keeper: LibraryKeeper, { dog, plan }: ReturnType<AppParts['invented']>): Promise<void> {
  return keeper.keep({ type: 'dog-saved', body: dog }, { type: 'plan-saved', body: plan });
}
