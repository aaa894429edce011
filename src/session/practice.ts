/** The live session: a heard word goes through the core; what it asks for is written, sounded and shown, in that order. */
import type { Beats } from '../audio/beats.ts';
import type { Calls } from '../audio/calls.ts';
import type { CallKind } from '../audio/names.ts';
import type { Call } from '../core/call.ts';
import type { EarState, SessionEvent, SessionStart, Stamp } from '../core/event.ts';
import { EXPECTED_IN_PAUSE, expectedOf } from '../core/expected.ts';
import { fold, type SessionState } from '../core/fold.ts';
import { t } from '../core/language.ts';
import { callWords } from '../core/sentences.ts';
import { writtenInReview } from '../core/standing.ts';
import { type Effect, type Input, type Stepped, start, step } from '../core/step.ts';
import type { Seconds } from '../core/units.ts';
import { type Heard, type Unsure, WORDS } from '../core/word.ts';
import { isoWithOffset, type WallClock } from './wall-clock.ts';
import type { Writer } from './writer.ts';

export interface PracticeParts {
  /** Page time, s: the sound room's clock. */
  readonly nowS: () => Seconds;
  readonly wall: WallClock;
  readonly writer: Writer;
  readonly beats: Pick<Beats, 'start' | 'stop'>;
  readonly calls: Pick<Calls, 'call' | 'holdBegan' | 'holdEnded' | 'voice' | 'silence'>;
  /** Tells the ear which words may well come next; null: all alike. */
  readonly expect?: (words: readonly string[] | null) => void;
  /** Tells the screen; only after the writer has answered. */
  readonly show: (state: SessionState) => void;
}

/** Heard and unsure carry page time; the session's own clock begins at 0 with the session. */
export interface Practice {
  begin(body: SessionStart): Promise<void>;
  /** Goes on with a session that was closed: the hold it broke off is void, the time between is a pause. */
  /** False when its log does not fold. */
  goOn(events: readonly SessionEvent[]): Promise<boolean>;
  /** The event that it became; null: it changed nothing. */
  hear(heard: Heard): Promise<string | null>;
  unsure(unsure: Unsure): Promise<string | null>;
  ear(name: string, state: EarState): Promise<void>;
  pause(why: 'handler' | 'hidden'): Promise<void>;
  resume(): Promise<void>;
  end(why: 'handler' | 'abandoned'): Promise<void>;
  /** Seconds on the session clock. */
  sessionS(): Seconds;
  state(): SessionState | null;
}

interface Inside {
  readonly parts: PracticeParts;
  state: SessionState | null;
  /** Page time of the session's 0. */
  zeroS: Seconds;
  /** What the ear was last told to expect. */
  expected: 'end of hold' | 'hold' | 'end of pause' | 'all alike';
  /** What is being written; the next input waits for it, so that events keep their order. */
  busy: Promise<void>;
}

export function createPractice(parts: PracticeParts): Practice {
  const inside: Inside = { parts, state: null, zeroS: 0, expected: 'all alike', busy: Promise.resolve() };
  const sessionS = () => parts.nowS() - inside.zeroS;
  const feed = (input: Input) => inTurn(inside, () => take(inside, input));
  const tell = (input: Input) => feed(input).then(() => undefined);
  return {
    begin: (body) => inTurn(inside, () => begin(inside, body)),
    goOn: (events) => inTurn(inside, () => goOn(inside, events)),
    hear: (heard) => {
      // Before it waits its turn: a call under way must give way to the handler at once.
      parts.calls.voice(heard.endedAtS);
      return feed({ kind: 'heard', heard: onSessionClock(heard, inside.zeroS) });
    },
    unsure: (unsure) => {
      parts.calls.voice(unsure.endedAtS);
      return feed({ kind: 'unsure', unsure: onSessionClock(unsure, inside.zeroS) });
    },
    ear: (ear, state) => tell({ kind: 'ear', atS: sessionS(), ear, state }),
    pause: (why) => tell({ kind: 'pause', atS: sessionS(), why }),
    resume: () => tell({ kind: 'resume', atS: sessionS() }),
    end: (why) => tell({ kind: 'end', atS: sessionS(), why }),
    sessionS,
    state: () => inside.state,
  };
}

/** One after the other. What failed is told to its own caller; the next word is heard all the same. */
function inTurn<T>(inside: Inside, work: () => Promise<T>): Promise<T> {
  const done = inside.busy.then(work);
  inside.busy = done.then(
    () => undefined,
    () => undefined,
  );
  return done;
}

function onSessionClock<T extends { startedAtS: Seconds; endedAtS: Seconds; decidedAtS: Seconds }>(heard: T, zeroS: Seconds): T {
  const { startedAtS, endedAtS, decidedAtS } = heard;
  return { ...heard, startedAtS: startedAtS - zeroS, endedAtS: endedAtS - zeroS, decidedAtS: decidedAtS - zeroS };
}

async function begin(inside: Inside, body: SessionStart): Promise<void> {
  if (inside.state && inside.state.phase.phase !== 'ended') return;
  inside.zeroS = inside.parts.nowS();
  await carryOut(inside, start(body, stampFor(inside, inside.parts.wall.newId())));
}

async function goOn(inside: Inside, events: readonly SessionEvent[]): Promise<boolean> {
  if (inside.state && inside.state.phase.phase !== 'ended') return true;
  const folded = fold(events);
  if (!folded.ok) return false;
  // A correction made since in the review is no part of the session's time.
  const ofReview = writtenInReview(events);
  const lastAt = events.findLast(({ id }) => !ofReview.has(id))?.at ?? '';
  const closedForS = (inside.parts.wall.now().getTime() - Date.parse(lastAt)) / 1000;
  // The wall clock may have been set back while the page was closed: time never runs backwards in a session.
  inside.zeroS = inside.parts.nowS() - folded.state.latestS - Math.max(0, closedForS || 0);
  inside.state = folded.state;
  await take(inside, { kind: 'pause', atS: folded.state.latestS, why: 'closed' });
  return true;
}

async function take(inside: Inside, input: Input): Promise<string | null> {
  if (!inside.state) return null;
  return carryOut(inside, step(inside.state, input, stampFor(inside, inside.state.log[0]?.session ?? null)));
}

function stampFor({ parts }: Inside, session: string | null): Stamp {
  const { wall, writer } = parts;
  return { ...writer.next(), session, at: isoWithOffset(wall.now()), monoMs: wall.monoMs() };
}

/** Begins to write, sounds at once, and tells the screen only when it is written. */
async function carryOut(inside: Inside, { state, effects }: Stepped): Promise<string | null> {
  inside.state = state;
  const events = effects.flatMap((effect) => (effect.do === 'keep' ? [effect.event] : []));
  // Under way before anything sounds: whatever becomes of a sound, the word is kept.
  const written = events.length > 0 ? inside.parts.writer.write(events) : null;
  for (const effect of effects) sound(inside, effect);
  expectNext(inside, state.phase.phase);
  await written;
  inside.parts.show(state);
  return events[0]?.id ?? null;
}

const EXPECTED: Readonly<Record<SessionState['phase']['phase'], Inside['expected']>> = {
  ...{ waiting: 'hold', holding: 'end of hold', paused: 'end of pause', ended: 'all alike' },
};

function expectNext(inside: Inside, phase: SessionState['phase']['phase']): void {
  const expected = EXPECTED[phase];
  if (expected === inside.expected) return;
  inside.expected = expected;
  if (expected === 'end of pause') inside.parts.expect?.(EXPECTED_IN_PAUSE);
  else inside.parts.expect?.(expected === 'all alike' ? null : expectedOf(WORDS, expected === 'end of hold'));
}

function sound({ parts: { beats, calls }, zeroS }: Inside, effect: Effect): void {
  switch (effect.do) {
    case 'startBeats':
      calls.holdBegan();
      return beats.start({ onsetS: effect.sinceS + zeroS, criterionS: effect.criterionS });
    case 'stopBeats':
      beats.stop();
      return calls.holdEnded();
    case 'call':
      return calls.call(soundOf(effect.call), callWords(effect.call.kind));
    case 'ask':
    case 'sayUnsure':
      return calls.call('unsure', t('say it again'));
    case 'keep':
      return;
  }
}

function soundOf({ kind, reasons }: Call): CallKind {
  switch (kind) {
    case 'remain':
      // The way that the step goes: down again after a raise, up again after a return or half a step.
      return reasons.some((reason) => reason.kind === 'not-followed' && reason.call === 'raise') ? 'return' : 'raise';
    case 'stay':
      return 'return';
    case 'begin':
      return 'raise';
    default:
      return kind;
  }
}
