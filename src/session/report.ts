/** Notes the last things that happened inside, without names or sound, for a report that the handler may copy. Nothing is sent. */
import type { AppState } from './app-state.ts';
import type { WallClock } from './wall-clock.ts';

export interface Report {
  note(what: string): void;
  /** One line each, oldest first. */
  text(): string;
}

const KEPT = 500;

/** @param about the app's version and the browser, for the head of the report. */
export function createReport(wall: Pick<WallClock, 'now' | 'monoMs'>, about: () => string): Report {
  let lines: readonly string[] = [];
  return {
    note: (what) => {
      lines = [...lines, `${(wall.monoMs() / 1000).toFixed(2)} s  ${what}`].slice(-KEPT);
    },
    text: () => [`Stillbeat report, ${wall.now().toISOString()}`, about(), ...lines].join('\n'),
  };
}

/** What changed between two states, in words that hold nothing a handler typed or said. */
export function changesBetween(before: AppState, now: AppState): readonly string[] {
  return WATCHED.flatMap(([name, of]) => (of(before) === of(now) ? [] : [`${name}: ${of(now)}`]));
}

const WATCHED: readonly (readonly [string, (state: AppState) => string | number | boolean])[] = [
  ['opening', ({ opening }) => opening.kind],
  ['ear', ({ ear }) => `${ear.state}${ear.why ? `, ${ear.why}` : ''}`],
  ['sound', ({ room }) => room],
  ['saving', ({ writeProblem }) => writeProblem?.kind ?? 'fine'],
  ['session', ({ live }) => live?.phase.phase ?? 'none'],
  ['reps', ({ live }) => live?.reps.length ?? 0],
  ['sessions kept', ({ heads }) => heads.length],
  ['teaching', ({ teaching }) => teaching.kind],
  ['takes', ({ library }) => library.sounds.length],
  ['refused', ({ refusal }) => refusal !== null],
  ['update ready', ({ update }) => update !== null],
  ['screen stays on', ({ screenStaysOn }) => screenStaysOn],
];

/** An error's kind and words; what stands in quotes may be a name. */
export function sayError(error: unknown): string {
  const said = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return said.replaceAll(/(["'“‘`]).*?["'”’`]/g, '$1…$1').slice(0, 300);
}
