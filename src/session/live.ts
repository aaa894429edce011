/** Says whether a session is being practised. */
import type { SessionState } from '../core/fold.ts';

export function isLive(live: SessionState | null): live is SessionState {
  return live !== null && live.phase.phase !== 'ended';
}
