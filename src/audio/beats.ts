/**
 * Taps the seconds of a hold. Sources are put on the audio clock HORIZON_S ahead, so that a page which is busy when a beat
 * is due does not matter; a tick every 25 ms tops the schedule up; `stop` takes back what has not sounded.
 */
import type { Seconds } from '../core/units.ts';
import { type Beat, beatTimes, type Hold } from './beat-times.ts';
import type { AudioClock } from './clock.ts';
import { type CueMode, type FlashListener, flashes, type OwnSoundListener, sounds } from './names.ts';
import { LEAD_S, type Schedule, type Sounding } from './schedule.ts';
import type { Tick } from './tick.ts';

/**
 * How far ahead beats are scheduled: 0.5 s (the block of the page we promise to survive) + 1 s (the slowest tick a hidden
 * page is given, should the worker's be slowed too) + 0.1 s to spare. Not longer: a page that hangs for good taps on this long.
 */
export const HORIZON_S: Seconds = 1.6;

export interface Beats {
  /** Begins to tap a hold; one that was running is stopped first. */
  start(hold: Hold): void;
  /** No beat begins after `atS`; in the past or left out: none from now on. */
  stop(atS?: Seconds): void;
  dispose(): void;
}

export interface BeatsParts {
  readonly clock: AudioClock;
  readonly schedule: Schedule;
  readonly tick: Pick<Tick, 'listen'>;
  readonly onOwnSound: OwnSoundListener;
  readonly onFlash?: FlashListener;
  /** Asked at each beat; 'sound' when left out. */
  readonly mode?: () => CueMode;
}

interface Planned {
  readonly beat: Beat;
  readonly sounding: Sounding | null;
}

interface Running {
  readonly hold: Hold;
  /** Beats before this were planned, or had gone by. */
  plannedToS: Seconds;
  /** Planned and not yet due. */
  ahead: Planned[];
}

export function createBeats(parts: BeatsParts): Beats {
  let running: Running | null = null;
  const stop = (atS?: Seconds): void => {
    if (running) withdrawAfter(running.ahead, Math.max(atS ?? 0, parts.clock.now()));
    running = null;
  };
  const unlisten = parts.tick.listen(() => {
    if (running) lookAhead(parts, running);
  });
  return {
    start: (hold) => {
      stop();
      running = { hold, plannedToS: hold.onsetS, ahead: [] };
      lookAhead(parts, running);
    },
    stop,
    dispose: () => {
      stop();
      unlisten();
    },
  };
}

function lookAhead(parts: BeatsParts, running: Running): void {
  const nowS = parts.clock.now();
  running.ahead = flashDue(parts, running.ahead, nowS);
  const fromS = Math.max(running.plannedToS, nowS + LEAD_S);
  running.plannedToS = Math.max(running.plannedToS, nowS + HORIZON_S);
  for (const beat of beatTimes(running.hold, fromS, running.plannedToS)) running.ahead.push(plan(parts, beat));
}

function plan({ schedule, onOwnSound, mode }: BeatsParts, beat: Beat): Planned {
  const sounding = sounds(mode?.() ?? 'sound') ? schedule.play(beat.kind, beat.atS) : null;
  if (sounding) onOwnSound(sounding.fromS, sounding.toS);
  return { beat, sounding };
}

/** Flashes what has come due and returns what has not. Of several that a busy page let pass, only the last one flashes. */
function flashDue({ onFlash, mode }: BeatsParts, ahead: readonly Planned[], nowS: Seconds): Planned[] {
  const due = ahead.findLast(({ beat }) => beat.atS <= nowS);
  if (due && flashes(mode?.() ?? 'sound')) onFlash?.(due.beat.kind);
  return ahead.filter(({ beat }) => beat.atS > nowS);
}

/** A tap that is sounding rings out: cut short it would be another sound. */
function withdrawAfter(ahead: readonly Planned[], atS: Seconds): void {
  for (const { beat, sounding } of ahead) if (beat.atS > atS) sounding?.withdraw();
}
