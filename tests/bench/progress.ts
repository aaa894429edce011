/**
 * Measures how long progress takes and how much memory it needs as sessions grow: digesting logs, and answering from digests.
 * Times are processor time, so that what else the machine does is not counted. `npm run bench:progress -- 2000` for one size.
 */
import { inventedHistory } from '../../demo/history.ts';
import { LONG_LADDER } from '../../demo/long-ladder.ts';
import type { SessionEvent } from '../../src/core/event.ts';
import { calendarOf, countDays } from '../../src/core/progress/calendar.ts';
import { ANY, choose } from '../../src/core/progress/choice.ts';
import { compare } from '../../src/core/progress/compare.ts';
import { digestLog, type SessionDigest } from '../../src/core/progress/digest.ts';
import { gridOf, nextToTry } from '../../src/core/progress/mastery.ts';
import { pooledRate, seriesOf, trendOf } from '../../src/core/progress/series.ts';
import { holdWeeks } from '../../src/core/progress/weeks.ts';

/** The plan is made so often anew that a history of any length stays lively. */
const SESSIONS_A_DOG = 200;

function invent(sessions: number): readonly (readonly SessionEvent[])[] {
  const logs: (readonly SessionEvent[])[] = [];
  for (let seed = 1; logs.length < sessions; seed++) {
    const count = Math.min(SESSIONS_A_DOG, sessions - logs.length);
    const wish = {
      plan: LONG_LADDER,
      sessions: count,
      seed,
      places: ['bathroom', 'garden', 'surgery'],
      handlers: ['one', 'two'],
    };
    logs.push(...inventedHistory(wish).map(({ log }) => log));
  }
  return logs;
}

/** Everything that the screen asks for at once. */
function answer(digests: readonly SessionDigest[]): number {
  const chosen = choose(digests, { ...ANY, planId: LONG_LADDER.id });
  const today = chosen.at(-1)?.day ?? 0;
  const points = seriesOf(chosen);
  const grid = gridOf(chosen, LONG_LADDER.steps);
  const parts = [points, trendOf(points), pooledRate(points), holdWeeks(chosen, 4), grid, nextToTry(grid, today)];
  return parts.length + countDays(calendarOf(chosen, today, 12)).days;
}

/** Both halves of all sessions: the largest comparison there can be. */
function compareHalves(digests: readonly SessionDigest[]): number {
  const half = Math.floor(digests.length / 2);
  return compare(digests.slice(0, half), digests.slice(half)).steps.length;
}

function cpuMs(work: () => unknown): number {
  const from = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

/** The first time too: nobody asks five times. */
function slowestOf(times: number, work: () => unknown): number {
  return Math.max(...Array.from({ length: times }, () => cpuMs(work)));
}

const heapMb = (): number => {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 2 ** 20;
};

console.log(
  '| sessions | events | digest all, ms | a session, ms | answer, slowest of 5, ms | compare halves, ms | events, MB | digests, MB |',
);
console.log('|---|---|---|---|---|---|---|---|');
let tooSlow = false;
for (const sessions of process.argv[2] ? [Number(process.argv[2])] : [200, 2000, 20_000]) {
  const empty = heapMb();
  const logs = invent(sessions);
  const withLogs = heapMb();
  let digests: readonly SessionDigest[] = [];
  const digestMs = cpuMs(() => {
    digests = logs.flatMap((log) => digestLog(log) ?? []);
  });
  const withDigests = heapMb();
  const [answerMs, compareMs] = [slowestOf(5, () => answer(digests)), slowestOf(5, () => compareHalves(digests))];
  const events = logs.reduce((sum, log) => sum + log.length, 0);
  const times = [digestMs.toFixed(0), (digestMs / sessions).toFixed(2), answerMs.toFixed(0), compareMs.toFixed(0)];
  const row = [sessions, events, ...times, (withLogs - empty).toFixed(1), (withDigests - withLogs).toFixed(1)];
  console.log(`| ${row.join(' | ')} |`);
  tooSlow ||= sessions === 2000 && answerMs > 200;
}
if (tooSlow) {
  console.error('2,000 sessions must be answered within 200 ms.');
  process.exitCode = 1;
}
