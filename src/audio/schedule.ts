/** Puts sounds on the audio clock: each at its exact time, withdrawn without a click. The only file that makes sources. */
import type { Seconds } from '../core/units.ts';
import type { AudioClock } from './clock.ts';
import type { SoundName } from './names.ts';
import { needsPreRoll, PRE_ROLL_S, preRollSamples } from './pre-roll.ts';

/** A sound that was given a time. */
export interface Sounding {
  readonly name: SoundName;
  readonly fromS: Seconds;
  readonly toS: Seconds;
  /** Not begun: it never sounds. Sounding: it fades. Over: nothing. */
  withdraw(): void;
}

export interface Schedule {
  /** The earliest time at which a sound can begin whole. Later than now: what the sound card already holds is past changing. */
  soonestS(): Seconds;
  /** Null when that sound could not be loaded: the session goes on silent, the screen still flashes. */
  play(name: SoundName, atS: Seconds): Sounding | null;
}

/** A start nearer than this may be cut by the block being rendered (128 frames) and the device's buffer, s. */
export const LEAD_S: Seconds = 0.02;

/** Long enough to end without a click, short enough to be silence, s. */
const FADE_S: Seconds = 0.005;

export interface ScheduleParts {
  readonly clock: AudioClock & { toContextS(atS: Seconds): Seconds };
  /** Asked each time: howler replaces its context. */
  readonly context: () => BaseAudioContext;
  readonly output: () => AudioNode;
  readonly bufferOf: (name: SoundName) => AudioBuffer | undefined;
}

export function createSchedule({ clock, context, output, bufferOf }: ScheduleParts): Schedule {
  let lastToS: Seconds = Number.NEGATIVE_INFINITY;
  return {
    soonestS: () => clock.now() + (needsPreRoll(lastToS, clock.now()) ? PRE_ROLL_S : 0) + LEAD_S,
    play: (name, atS) => {
      const buffer = bufferOf(name);
      if (!buffer) return null;
      if (needsPreRoll(lastToS, atS)) wakeOutput(context(), output(), clock.toContextS(atS));
      const toS = atS + buffer.duration;
      lastToS = Math.max(lastToS, toS);
      return { name, fromS: atS, toS, withdraw: startSource(context(), output(), buffer, clock.toContextS(atS)) };
    },
  };
}

/** Starts one source; returns the way to take it back. Times are those of the context. */
function startSource(context: BaseAudioContext, output: AudioNode, buffer: AudioBuffer, atS: Seconds): () => void {
  const level = context.createGain();
  const source = context.createBufferSource();
  source.buffer = buffer;
  source.connect(level).connect(output);
  source.onended = () => level.disconnect();
  source.start(atS);
  return () => {
    const nowS = context.currentTime;
    level.gain.setValueAtTime(1, nowS);
    level.gain.linearRampToValueAtTime(0, nowS + FADE_S);
    // Stopped before it starts, a source never sounds; the ramp is for one that is under way.
    source.stop(nowS + FADE_S);
  };
}

function wakeOutput(context: BaseAudioContext, output: AudioNode, beforeS: Seconds): void {
  const samples = preRollSamples(context.sampleRate);
  const source = context.createBufferSource();
  source.buffer = context.createBuffer(1, samples.length, context.sampleRate);
  source.buffer.copyToChannel(samples, 0);
  source.connect(output);
  source.onended = () => source.disconnect();
  source.start(Math.max(context.currentTime, beforeS - PRE_ROLL_S));
}
