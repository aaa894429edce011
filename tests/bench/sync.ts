/**
 * Measures sync against a real server in a process of its own: sizes of events, rates, a line that breaks twenty times, and from that
 * what 1,000 trainers would ask of a server. `npm run bench:sync`; the page beside it is `sync.md`. `npm run bench:sync -- 1000` for fewer events.
 */
import { fork } from 'node:child_process';
import { cpus } from 'node:os';
import { chanceOf } from '../../demo/chance.ts';
import { inventedHistory } from '../../demo/history.ts';
import { LONG_LADDER } from '../../demo/long-ladder.ts';
import type { StoredEvent } from '../../src/core/event.ts';
import { cipherKey, openEvent, passphraseKey, ROUNDS, sealEvent, stretchKey } from '../../src/store/sync-cipher.ts';
import { inventedEvents, type Reach, randomBytes, type SyncDevice, syncDevice } from '../store/sync/sync-device.ts';
import { startCouch } from '../support/couch.ts';
import { startCuttingProxy } from '../support/cutting-proxy.ts';

const EVENTS = Number(process.argv[2] ?? 5_000);
const CUTS = 20;
const DATABASES = ['steady', 'cut', 'idle'];

/** The child: a server with two users, and databases that only one of them may read. */
async function serve(): Promise<void> {
  const couch = await startCouch();
  await couch.addUser('anna', 'pa');
  await couch.addUser('ben', 'pb');
  for (const name of DATABASES) await couch.addDatabase(name, ['anna']);
  process.send?.(couch.port);
  process.once('message', () => process.exit());
}

function startServer(): Promise<{ port: number; stop: () => void }> {
  const child = fork(import.meta.filename, ['serve'], { execArgv: ['--import', 'tsx'] });
  return new Promise((ready) => child.once('message', (port) => ready({ port: Number(port), stop: () => child.send('stop') })));
}

const say = (line: string) => console.log(line);
const count = (n: number) => Math.round(n).toLocaleString('en');
const bytesOf = (value: unknown) => Buffer.byteLength(JSON.stringify(value));
const mean = (list: readonly number[]) => list.reduce((sum, n) => sum + n, 0) / list.length;

async function timed<T>(work: () => Promise<T>): Promise<{ value: T; seconds: number }> {
  const fromMs = performance.now();
  const value = await work();
  return { value, seconds: (performance.now() - fromMs) / 1000 };
}

/** What goes over the line, counted where it leaves. */
function meter() {
  const sum = { requests: 0, upBytes: 0, downBytes: 0 };
  const counted = async (url: string, init: RequestInit) => {
    const answer = await fetch(url, init);
    const text = await answer.text();
    sum.requests += 1;
    sum.upBytes += Buffer.byteLength(String(init.body ?? ''));
    sum.downBytes += Buffer.byteLength(text);
    return new Response(text, { status: answer.status, headers: answer.headers });
  };
  return { sum, counted };
}

/** Sessions as the simulator of dogs makes them: up to 14 reps, with calls. */
async function sizes(): Promise<{ eventsASession: number; sealedBytes: number }> {
  const history = [1, 2, 3, 4, 5].flatMap((seed) => inventedHistory({ plan: LONG_LADDER, sessions: 60, seed }));
  const events: readonly StoredEvent[] = history.flatMap(({ log }) => log);
  const eventsASession = events.length / history.length;
  const key = await cipherKey(randomBytes(32));
  const sealing = await timed(() => Promise.all(events.map((event) => sealEvent(key, event, randomBytes))));
  const opening = await timed(() => Promise.all(sealing.value.map((document) => openEvent(key, document))));
  const stretching = await timed(async () => stretchKey(await passphraseKey('sprats in the bath'), randomBytes(16), ROUNDS));
  const sealedBytes = mean(sealing.value.map(bytesOf));
  say(`| events a session (300 invented sessions) | ${eventsASession.toFixed(1)} |`);
  say(`| an event as JSON, bytes: mean, least, most | ${count(mean(events.map(bytesOf)))}, ${minMax(events)} |`);
  say(`| its sealed document, bytes: mean, least, most | ${count(sealedBytes)}, ${minMax(sealing.value)} |`);
  say(
    `| sealed, opened, events/s (one core) | ${count(events.length / sealing.seconds)}, ${count(events.length / opening.seconds)} |`,
  );
  say(`| a key from a passphrase, ${count(ROUNDS)} rounds, s | ${stretching.seconds.toFixed(2)} |`);
  return { eventsASession, sealedBytes };
}

function minMax(list: readonly unknown[]): string {
  const all = list.map(bytesOf);
  return `${count(Math.min(...all))}, ${count(Math.max(...all))}`;
}

/** A good line: how fast one device sends, and one that joins late receives. */
async function rates(url: string): Promise<{ sentPerS: number }> {
  const [up, down, idle] = [meter(), meter(), meter()];
  const a = await syncDevice('a', inventedEvents('a', EVENTS));
  const b = await syncDevice('b');
  const reach: Reach = { url, database: 'steady' };
  const sending = await timed(() => a.sync({ ...reach, fetch: up.counted }));
  const receiving = await timed(() => b.sync({ ...reach, dogId: null, fetch: down.counted }));
  await a.sync(reach);
  const resting = await timed(() => a.sync({ ...reach, fetch: idle.counted }));
  const sentPerS = sending.value.sent / sending.seconds;
  say(`| sent, events/s | ${count(sentPerS)} (${count(EVENTS)} in ${sending.seconds.toFixed(1)} s) |`);
  say(`| received by a late device, events/s | ${count(receiving.value.arrived / receiving.seconds)} |`);
  say(`| bytes up an event sent; requests for all | ${count(up.sum.upBytes / EVENTS)}; ${up.sum.requests} |`);
  say(`| bytes down an event received; requests for all | ${count(down.sum.downBytes / EVENTS)}; ${down.sum.requests} |`);
  say(
    `| nothing new: requests, bytes down, ms | ${idle.sum.requests}, ${count(idle.sum.downBytes)}, ${count(1000 * resting.seconds)} |`,
  );
  return { sentPerS };
}

async function untilCut(devices: readonly SyncDevice[], reach: Reach, cuts: () => number): Promise<void> {
  await Promise.all(devices.map((device) => device.sync(reach)));
  // Others join over the same bad line, until it has broken often enough.
  for (let n = 0; cuts() < CUTS; n++) await (await syncDevice(`other ${n}`)).sync(reach);
}

/** Two devices side by side over a line that breaks, a third that joins late, a wrong passphrase, another user. */
async function convergence(port: number): Promise<void> {
  const proxy = await startCuttingProxy(port, chanceOf(20), CUTS);
  const [a, b, c] = [
    await syncDevice('a', inventedEvents('a', EVENTS)),
    await syncDevice('b', inventedEvents('b', EVENTS)),
    await syncDevice('c'),
  ];
  const reach: Reach = { url: proxy.url, database: 'cut', chance: chanceOf(8) };
  const cutOff = await timed(() => untilCut([a, b], reach, proxy.cuts));
  proxy.heal();
  const rest = await timed(async () => {
    for (const device of [a, b, a]) await device.sync(reach);
  });
  const late = await timed(() => c.sync({ ...reach, dogId: null }));
  const ids = await Promise.all([a, b, c].map(async (device) => (await device.ids()).join()));
  const same = ids.every((each) => each === ids[0]) ? 'the same' : 'NOT THE SAME';
  const told = [a, b, c].flatMap((device) => [...device.book().conflicts, ...device.book().refused]).length;
  const wrong = await (await syncDevice('d')).sync({ ...reach, passphrase: 'another' });
  const ben = await (await syncDevice('e')).sync({ ...reach, user: 'ben', password: 'pb' });
  await proxy.stop();
  say(
    `| 2 × ${count(EVENTS)} events, cut ${proxy.cuts()} times: s (waits left out), waits | ${(cutOff.seconds + rest.seconds).toFixed(1)}, ${a.waits() + b.waits()} |`,
  );
  say(
    `| afterwards the three devices hold | ${same}: ${count((await c.ids()).length)} events; conflicts and refusals: ${told} |`,
  );
  say(`| a third that joins late has all after, s | ${late.seconds.toFixed(1)} |`);
  say(`| a wrong passphrase: read, written, why | ${wrong.arrived}, ${wrong.sent}, ${wrong.trouble?.kind} |`);
  say(`| another user: read, written, why | ${ben.arrived}, ${ben.sent}, ${ben.trouble?.kind} |`);
}

/** 1,000 trainers × 30 dogs × 3 sessions a week, two devices a dog. */
function capacity({ eventsASession, sealedBytes }: { eventsASession: number; sealedBytes: number }, sentPerS: number): void {
  const sessions = 1_000 * 30 * 3;
  const events = sessions * eventsASession;
  // Four fifths of a week's practice in three hours of each evening.
  const atPeakPerS = (0.8 * events) / (7 * 3 * 3600);
  const bytesAYear = 52 * events * sealedBytes;
  // Every open app asks for each of its dogs every five minutes, with three requests; a fifth of the trainers have it open at the peak.
  const askedPerS = (0.2 * 1_000 * 30 * 3) / 300;
  say(`| sessions, events a week | ${count(sessions)}, ${count(events)} |`);
  say(`| events written/s: mean, evening peak | ${(events / 604_800).toFixed(1)}, ${count(atPeakPerS)} |`);
  say(`| of what the test server took, at the peak | ${((100 * atPeakPerS) / sentPerS).toFixed(1)} % |`);
  say(`| requests/s of open apps that find nothing new | ${count(askedPerS)} |`);
  say(
    `| sealed documents a year, one copy; three | ${(bytesAYear / 1e9).toFixed(0)} GB; ${((3 * bytesAYear) / 1e9).toFixed(0)} GB |`,
  );
}

async function main(): Promise<void> {
  const { port, stop } = await startServer();
  const url = `http://127.0.0.1:${port}`;
  say(
    `${new Date().toISOString().slice(0, 10)}, Node ${process.version}, ${cpus().length} cores, express-pouchdb in memory in a process of its own\n`,
  );
  say('| measured | |\n|---|---|');
  const size = await sizes();
  const { sentPerS } = await rates(url);
  await convergence(port);
  say('\n| 1,000 trainers × 30 dogs × 3 sessions a week | |\n|---|---|');
  capacity(size, sentPerS);
  stop();
}

await (process.argv[2] === 'serve' ? serve() : main());
