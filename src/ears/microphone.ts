/** Owns the microphone: asks for it, says in words why it cannot be had, and notices when it is taken away. */

export type MicProblem =
  | { readonly kind: 'not-allowed' }
  | { readonly kind: 'no-microphone' }
  | { readonly kind: 'in-use' }
  /** A page without HTTPS is not given a microphone. */
  | { readonly kind: 'not-secure' }
  | { readonly kind: 'unknown'; readonly what: string };

export interface Microphone {
  readonly stream: MediaStream;
  /** What the device really gave; kept with the session. */
  readonly settings: MediaTrackSettings;
  close(): void;
}

export type OpenedMicrophone =
  | { readonly ok: true; readonly microphone: Microphone }
  | { readonly ok: false; readonly problem: MicProblem };

export interface MicrophoneEvents {
  /** The track ended, or was muted by the system: another app, a call, a pulled plug. */
  readonly onLost: (why: 'ended' | 'muted') => void;
  readonly onBack: () => void;
}

/** Echo cancellation on, so that the app does not hear itself; the other two off: they eat short words (PITFALLS, microphone). */
const WANTED: MediaTrackConstraints = {
  echoCancellation: true,
  noiseSuppression: false,
  autoGainControl: false,
  channelCount: 1,
};

/**
 * Call it from a tap, after saying why.
 * @param echoCancellation keeps the app from hearing itself; on some phones it distorts, and with headphones it is not needed.
 */
export async function openMicrophone(echoCancellation: boolean, events: MicrophoneEvents): Promise<OpenedMicrophone> {
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (!devices?.getUserMedia) return { ok: false, problem: { kind: 'not-secure' } };
  try {
    return { ok: true, microphone: watched(await devices.getUserMedia({ audio: { ...WANTED, echoCancellation } }), events) };
  } catch (error) {
    return { ok: false, problem: problemOf(error) };
  }
}

function watched(stream: MediaStream, { onLost, onBack }: MicrophoneEvents): Microphone {
  const [track] = stream.getAudioTracks();
  track?.addEventListener('ended', () => onLost('ended'));
  track?.addEventListener('mute', () => onLost('muted'));
  track?.addEventListener('unmute', onBack);
  return {
    stream,
    settings: track?.getSettings() ?? {},
    // Stopping a track ourselves sends no "ended".
    close: () => {
      for (const each of stream.getTracks()) each.stop();
    },
  };
}

function problemOf(error: unknown): MicProblem {
  const name = error instanceof DOMException ? error.name : '';
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return { kind: 'not-allowed' };
    case 'NotFoundError':
    case 'OverconstrainedError':
      return { kind: 'no-microphone' };
    case 'NotReadableError':
    case 'AbortError':
      return { kind: 'in-use' };
    default:
      return { kind: 'unknown', what: error instanceof Error ? error.message : String(error) };
  }
}
