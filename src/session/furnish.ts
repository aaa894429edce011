/** Opens what hears and sounds, after the first screen: the sound room, the ears, the live session, teaching; and ties each to the others. */
import { settingsOf } from '../core/settings.ts';
import { earChanged, hidden, platformChanged, roomChanged, shown } from './changes.ts';
import { rememberDigests } from './digested.ts';
import { isLive } from './live.ts';
import { createPractice } from './practice.ts';
import type { HomeRooms, Rooms } from './rooms.ts';
import { heard, take } from './run.ts';
import { applySettings } from './sound-check.ts';
import { createTeaching } from './teaching.ts';

/** How often it is looked whether the ear still gets sound, ms. */
const LOOK_MS = 500;

/** Null, and said on the screen, when this browser has no sound for pages. */
export async function furnish(home: HomeRooms): Promise<Rooms | null> {
  const { parts, use, writer, keeper } = home;
  const { wall, timers } = parts;
  const late: { rooms: Rooms | null } = { rooms: null };
  const opened = await parts.openRoom({
    onOwnSound: (fromS, toS) => late.rooms?.ear.expectOwnSound(fromS, toS),
    onFlash: (name) => use.setState(({ flash }) => ({ flash: { name, n: (flash?.n ?? 0) + 1 } })),
    onState: (state) => late.rooms && roomChanged(late.rooms, state),
    // An ear that was listening must tap the new context; one that was off stays off.
    onContext: () => late.rooms && late.rooms.ear.ear().state !== 'off' && void late.rooms.ear.open(),
  });
  if (opened.kind === 'no-web-audio') {
    use.setState({ opening: { kind: 'no-web-audio' } });
    return null;
  }
  const { room } = opened;
  const ear = await parts.createEar({
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
    show: (state, taught, isWorkingOut) => use.setState({ teaching: state, taught, isWorkingOut }),
  });
  const rooms: Rooms = { ...home, room, ear, platformEar, practice, teaching, digested: rememberDigests(use) };
  late.rooms = rooms;
  applySettings(rooms);
  timers.every(LOOK_MS, () => ear.look());
  parts.listenToKeys({
    bindings: () => (isLive(use.getState().live) ? settingsOf(keeper.library()).keys : {}),
    atS: (timeStampMs) => room.clock.now() - (wall.monoMs() - timeStampMs) / 1000,
    onHeard: (word) => void take(rooms, word),
  });
  parts.watchPage({ onHidden: () => hidden(rooms), onShown: () => shown(rooms) });
  // Takes seconds on a phone; nobody who looks at the first screen needs it yet.
  void teaching.refresh();
  void import('./heard-sounds.ts').then(({ forgetOldHearings }) => forgetOldHearings(rooms));
  return rooms;
}
