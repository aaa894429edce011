/** Opens the rooms in their order: the right to write, the store, the sound, the ear; and ties each to the others. */
import { settingsOf } from '../core/settings.ts';
import type { EventStore } from '../store/event-store.ts';
import { earChanged, hidden, platformChanged, roomChanged, shown } from './changes.ts';
import { createLibraryKeeper, type LibraryKeeper } from './library.ts';
import { isLive } from './live.ts';
import { createPractice } from './practice.ts';
import { showHeads } from './read-back.ts';
import type { AppParts, Rooms } from './rooms.ts';
import { heard, take } from './run.ts';
import { applySettings } from './sound-check.ts';
import { createTeaching } from './teaching.ts';
import { createWriter } from './writer.ts';

/** How often it is looked whether the ear still gets sound, ms. */
const LOOK_MS = 500;

export async function openRooms(parts: AppParts, use: Rooms['use']): Promise<Rooms | null> {
  const yieldTo = () => use.setState({ opening: { kind: 'another-tab' } });
  if (!(await parts.claim(yieldTo))) {
    yieldTo();
    return null;
  }
  const { store, kept } = await parts.openStore();
  const rooms = await furnish(parts, use, store);
  if (!rooms) {
    use.setState({ opening: { kind: 'no-web-audio' } });
    return null;
  }
  await showHeads(rooms);
  use.setState({ opening: { kind: 'ready', kept } });
  // Takes seconds on a phone; nobody who looks at the first screen needs it yet.
  void rooms.teaching.refresh();
  void import('./heard-sounds.ts').then(({ forgetOldHearings }) => forgetOldHearings(rooms));
  parts.watchUpdates((update) => use.setState({ update }));
  return rooms;
}

async function furnish(parts: AppParts, use: Rooms['use'], store: EventStore): Promise<Rooms | null> {
  const { wall, timers } = parts;
  const writer = await createWriter(store, wall.newId, (writeProblem) => use.setState({ writeProblem }));
  const kept = await store.library();
  // An empty library in its place would soon be written over the real one.
  if (!kept.ok) throw new Error(`what is kept on this device cannot be read (${kept.problem.kind})`);
  const { events, damaged } = kept.value;
  if (damaged.length > 0) use.setState({ writeProblem: { kind: 'damaged', damaged } });
  const keeper = createLibraryKeeper(events, {
    wall,
    writer,
    show: (library) => use.setState({ library }),
  });
  if (events.length === 0 && damaged.length === 0) await seed(keeper, parts.invented);
  use.setState({ library: keeper.library() });

  const late: { rooms: Rooms | null } = { rooms: null };
  const opened = await parts.openRoom({
    onOwnSound: (fromS, toS) => late.rooms?.ear.expectOwnSound(fromS, toS),
    onFlash: (name) => use.setState(({ flash }) => ({ flash: { name, n: (flash?.n ?? 0) + 1 } })),
    onState: (state) => late.rooms && roomChanged(late.rooms, state),
    // An ear that was listening must tap the new context; one that was off stays off.
    onContext: () => late.rooms && late.rooms.ear.ear().state !== 'off' && void late.rooms.ear.open(),
  });
  if (opened.kind === 'no-web-audio') return null;
  const { room } = opened;
  const ear = parts.createEar({
    context: room.context,
    echoCancellation: () => settingsOf(keeper.library()).echoCancellation ?? true,
    clock: room.clock,
    onHearing: (hearing) => late.rooms && heard(late.rooms, hearing),
    onCaught: (take) => void late.rooms?.teaching.caught(take),
    onLevel: (level) => use.setState({ level }),
    onState: (state) => late.rooms && earChanged(late.rooms, state),
  });
  const platform = () => settingsOf(keeper.library()).platformEar;
  const platformEar = await parts.createPlatformEar({
    ...{ after: timers.after, nowS: room.clock.now },
    sayings: () => platform()?.sayings ?? {},
    language: () => platform()?.language ?? parts.language,
    mayLeave: () => platform()?.mayLeave ?? false,
    onHeard: ({ heard: word }) => late.rooms && isLive(use.getState().live) && void take(late.rooms, word),
    onState: (state, lasting) => late.rooms && platformChanged(late.rooms, state, lasting),
  });
  const practice = createPractice({
    ...{ nowS: room.clock.now, wall, writer, beats: room.beats, calls: room.calls },
    expect: ear.expect,
    show: (live) => use.setState({ live }),
  });
  const teaching = createTeaching({
    ...{ ear, keeper, handler: () => settingsOf(keeper.library()).handler },
    show: (state, taught) => use.setState({ teaching: state, taught }),
  });
  const rooms: Rooms = { parts, use, store, writer, keeper, room, ear, platformEar, practice, teaching };
  late.rooms = rooms;
  applySettings(rooms);
  timers.every(LOOK_MS, () => ear.look());
  parts.listenToKeys({
    bindings: () => (isLive(use.getState().live) ? settingsOf(keeper.library()).keys : {}),
    atS: (timeStampMs) => room.clock.now() - (wall.monoMs() - timeStampMs) / 1000,
    onHeard: (word) => void take(rooms, word),
  });
  parts.watchPage({ onHidden: () => hidden(rooms), onShown: () => shown(rooms) });
  return rooms;
}

function seed(keeper: LibraryKeeper, { dog, plan }: AppParts['invented']): Promise<void> {
  return keeper.keep({ type: 'dog-saved', body: dog }, { type: 'plan-saved', body: plan });
}
