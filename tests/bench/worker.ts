/**
 * `npm run bench:worker`: does the listener's thread keep up for ten minutes with a quarter of a core? Chromium's own throttling leaves workers alone,
 * so the thread is pinned to one core that it shares with three busy programs (Linux, needs `taskset`). Prints lag, losses and memory.
 */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { CDPSession, Page } from 'playwright';
import { build, preview } from 'vite';
import { startPractice, teachFromFiles } from '../e2e/walk.ts';
import { launchChromium } from '../support/chromium.ts';

const MINUTES = Number(process.argv[2] ?? 10);
const RIVALS = Number(process.argv[3] ?? 3);
const SPEECH = resolve('../shared/speech');
const CORE = '1';

declare global {
  interface Window {
    levels: { atS: number; pageMs: number; lost: number }[];
  }
}

/** Notes every level that a worker reports, with the page's time. */
function noteLevels(): void {
  window.levels = [];
  const Real = window.Worker;
  window.Worker = class extends Real {
    constructor(...args: ConstructorParameters<typeof Worker>) {
      super(...args);
      this.addEventListener('message', ({ data }) => {
        if (data?.kind === 'level') window.levels.push({ atS: data.level.atS, lost: data.level.lost, pageMs: performance.now() });
      });
    }
  };
}

/** Another browser may run beside ours. */
function isOurs(id: string): boolean {
  for (let at = Number(id); at > 1; at = parentOf(at)) if (at === process.pid) return true;
  return false;
}

function parentOf(id: number): number {
  try {
    return Number(/PPid:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1] ?? 0);
  } catch {
    return 0;
  }
}

function workerThreads(): string[] {
  return readdirSync('/proc')
    .filter((id) => /^\d+$/.test(id) && isOurs(id))
    .flatMap((id) => {
      try {
        return readdirSync(`/proc/${id}/task`).filter((task) =>
          readFileSync(`/proc/${id}/task/${task}/comm`, 'utf8').startsWith('DedicatedWorker'),
        );
      } catch {
        return []; // It ended meanwhile.
      }
    });
}

/** CPU time of a thread alone, s. */
const usedS = (thread: string): number => {
  const fields = readFileSync(`/proc/${thread}/task/${thread}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  return (Number(fields[11]) + Number(fields[12])) / 100;
};

function throttle(threads: readonly string[]): ChildProcess[] {
  for (const thread of threads) execFileSync('taskset', ['-p', '-c', CORE, thread]);
  return Array.from({ length: RIVALS }, () => spawn('taskset', ['-c', CORE, process.execPath, '-e', 'for(;;);']));
}

function micOf(): { folder: string; wav: string } {
  if (!existsSync(join(SPEECH, 'compose.mjs'))) {
    console.log('skipped: needs ../shared/speech');
    process.exit(0);
  }
  const folder = mkdtempSync(join(tmpdir(), 'stillbeat-worker-'));
  const words = ['compose.mjs', '--speaker', 'theo', '--seed', '3', '--minutes', String(MINUTES + 1), '--out', folder];
  execFileSync(process.execPath, words, { cwd: SPEECH });
  return { folder, wav: join(folder, 'track.wav') };
}

interface HeapUsage {
  readonly usedSize: number;
  readonly backingStorageSize?: number;
}
const totalMb = ({ usedSize, backingStorageSize = 0 }: HeapUsage): number => (usedSize + backingStorageSize) / 1e6;

/** What the page still holds after everything that it does not has been swept away. */
async function heldMb(cdp: CDPSession): Promise<number> {
  await cdp.send('HeapProfiler.collectGarbage');
  return totalMb((await cdp.send('Runtime.getHeapUsage')) as HeapUsage);
}

/** The same of all workers together, which have heaps of their own. */
async function workersHold(cdp: CDPSession): Promise<() => Promise<number>> {
  const sessions: string[] = [];
  const answers = new Map<number, (result: unknown) => void>();
  let asked = 0;
  cdp.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
    if (targetInfo.type === 'worker') sessions.push(sessionId);
  });
  cdp.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { id, result } = JSON.parse(message) as { id?: number; result?: unknown };
    if (id !== undefined) answers.get(id)?.(result);
  });
  const send = (sessionId: string, method: string): Promise<unknown> =>
    new Promise((resolve) => {
      const id = ++asked;
      answers.set(id, resolve);
      void cdp.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) });
    });
  await cdp.send('Target.setAutoAttach', { autoAttach: true, waitForDebuggerOnStart: false, flatten: false });
  return async () => {
    let sum = 0;
    for (const session of sessions) {
      await send(session, 'HeapProfiler.collectGarbage');
      sum += totalMb((await send(session, 'Runtime.getHeapUsage')) as HeapUsage);
    }
    return sum;
  };
}

/** Lag of the latest level against the least that was ever seen, s. */
async function lags(page: Page): Promise<{ worstS: number; nowS: number; lost: number }> {
  return page.evaluate(() => {
    const behind = window.levels.map(({ atS, pageMs }) => pageMs / 1000 - atS);
    const least = behind.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
    const latest = behind.slice(-50);
    return {
      worstS: latest.reduce((a, b) => Math.max(a, b), 0) - least,
      nowS: (behind.at(-1) ?? 0) - least,
      lost: window.levels.at(-1)?.lost ?? 0,
    };
  });
}

function rssMb(thread: string): number {
  const status = readFileSync(`/proc/${thread}/status`, 'utf8');
  return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) / 1024;
}

const { folder, wav } = micOf();
const outDir = mkdtempSync(join(tmpdir(), 'stillbeat-worker-app-'));
await build({ logLevel: 'warn', build: { outDir, emptyOutDir: true } });
const server = await preview({ logLevel: 'warn', build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
const address = server.httpServer.address();
if (address === null || typeof address === 'string') throw new Error('The preview server has no port.');
const appUrl = `http://127.0.0.1:${address.port}/`;
const browser = await launchChromium({ microphoneWav: wav });
const page = await (await browser.newContext({ viewport: { width: 390, height: 844 }, permissions: ['microphone'] })).newPage();
await page.addInitScript(noteLevels);
await teachFromFiles(page, appUrl, folder);
await startPractice(page, appUrl);
await page.getByText('Listening').waitFor();
const threads = workerThreads();
const rivals = throttle(threads);
const ear = threads.reduce((a, b) => (usedS(b) > usedS(a) ? b : a));
const cdp = await page.context().newCDPSession(page);
const workersMb = await workersHold(cdp);
await page.evaluate(() => window.levels.splice(0));
const rows = [];
for (let minute = 1; minute <= MINUTES; minute++) {
  const before = usedS(ear);
  await page.waitForTimeout(60_000);
  const lag = await lags(page);
  rows.push({
    minute,
    'share of a core': ((usedS(ear) - before) / 60).toFixed(3),
    'worst lag of the last 5 s, ms': Math.round(1000 * lag.worstS),
    'blocks lost': lag.lost,
    'page holds, MB': (await heldMb(cdp)).toFixed(1),
    'workers hold, MB': (await workersMb()).toFixed(1),
    'process, MB': Math.round(rssMb(ear)),
  });
}
console.table(rows);
for (const rival of rivals) rival.kill('SIGKILL');
await browser.close();
await server.close();
process.exit(0);
