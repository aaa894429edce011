/** Serves the built app on this computer, building it first when the sources are newer, and tells how a phone reaches it. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { build, type PreviewServer, preview } from 'vite';

const ROOT = join(import.meta.dirname, '../..');
const DIST = join(ROOT, 'dist');
/** All that a build is made of. */
const SOURCES = ['src', 'sounds', 'demo', 'index.html', 'vite.config.ts', 'package-lock.json'];
const DEFAULT_PORT = 4173;

const HELP = `Usage: npm start -- [options]
  --port N       serve on port N (default ${DEFAULT_PORT}, or the next free one)
  --host         let other devices on this network reach it
  --https        serve over HTTPS, with the certificate below
  --cert FILE    certificate (or STILLBEAT_CERT)
  --key FILE     its key (or STILLBEAT_KEY)`;

interface Wish {
  readonly port: number | undefined;
  readonly host: boolean;
  readonly help: boolean;
}

/** A wish that cannot be met; its message is all that the person sees. */
class Refusal extends Error {}

function parse(words: readonly string[]) {
  try {
    const options = {
      port: { type: 'string' },
      host: { type: 'boolean', default: false },
      https: { type: 'boolean', default: false },
      cert: { type: 'string' },
      key: { type: 'string' },
      help: { type: 'boolean', default: false },
    } as const;
    return parseArgs({ args: [...words], options }).values;
  } catch (error) {
    throw new Refusal(`${(error as Error).message}\n\n${HELP}`);
  }
}

function portFrom(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new Refusal(`--port: expected a number from 0 to 65535, got "${text}".`);
  return port;
}

/** vite.config.ts reads the certificate from the environment, so that `npm run dev` can have it too. */
function wantCertificate(cert: string | undefined, key: string | undefined): void {
  if (!cert || !key) throw new Refusal('--https needs a certificate and its key: --cert FILE --key FILE (mkcert makes both).');
  for (const file of [cert, key]) if (!existsSync(file)) throw new Refusal(`There is no file "${file}".`);
  Object.assign(process.env, { STILLBEAT_CERT: cert, STILLBEAT_KEY: key });
}

function read(words: readonly string[]): Wish {
  const values = parse(words);
  const cert = values.cert ?? process.env.STILLBEAT_CERT;
  const key = values.key ?? process.env.STILLBEAT_KEY;
  if (values.https || values.cert || values.key) wantCertificate(cert, key);
  return { port: portFrom(values.port), host: values.host, help: values.help };
}

function newestChangeMs(path: string): number {
  const { mtimeMs } = statSync(path);
  if (!statSync(path).isDirectory()) return mtimeMs;
  return Math.max(mtimeMs, ...readdirSync(path).map((name) => newestChangeMs(join(path, name))));
}

function isBuilt(): boolean {
  const page = join(DIST, 'index.html');
  if (!existsSync(page)) return false;
  const sources = SOURCES.map((name) => join(ROOT, name)).filter((path) => existsSync(path));
  return Math.max(...sources.map(newestChangeMs)) <= statSync(page).mtimeMs;
}

async function buildIfNeeded(): Promise<void> {
  if (isBuilt()) return;
  console.log('Building ...');
  await build({ root: ROOT, logLevel: 'warn' });
}

async function serve({ port, host }: Wish): Promise<PreviewServer> {
  const where = host ? { host: true, allowedHosts: true as const } : { host: 'localhost' };
  // A port that was asked for is that port or an error; the default moves on to the next free one.
  const door = { port: port ?? DEFAULT_PORT, strictPort: port !== undefined };
  return preview({ root: ROOT, logLevel: 'warn', preview: { ...where, ...door } });
}

/** The address by which the network knows this computer. */
function networkAddress(): string {
  const addresses = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  return addresses.find(({ family, internal }) => family === 'IPv4' && !internal)?.address ?? 'THIS-COMPUTER';
}

function boundPort(server: PreviewServer): number {
  const address = server.httpServer.address();
  return typeof address === 'object' && address ? address.port : DEFAULT_PORT;
}

/** How a phone on the same network gets the app: over HTTPS, else it gives no microphone. */
function wayForPhone(isSecure: boolean, port: number): string {
  const phone = networkAddress();
  if (isSecure) return `On a phone of the same network (with --host): https://${phone}:${port}/`;
  return [
    `A phone's microphone needs HTTPS. Once: mkcert -install; mkcert -cert-file cert.pem -key-file key.pem ${phone}; put rootCA.pem (mkcert -CAROOT) on the phone and trust it.`,
    `Then: npm start -- --host --https --cert cert.pem --key key.pem; open https://${phone}:${port}/ on the phone, on the same network.`,
  ].join('\n');
}

function tell(server: PreviewServer): void {
  const isSecure = Boolean(server.config.preview.https);
  const port = boundPort(server);
  // performance.now() starts with the process.
  const seconds = (performance.now() / 1000).toFixed(1);
  console.log(`Stillbeat: ${isSecure ? 'https' : 'http'}://localhost:${port}/  (ready in ${seconds} s; Ctrl-C stops it)\n`);
  console.log(wayForPhone(isSecure, port));
}

function stopOnSignal(server: PreviewServer): void {
  const stop = () => server.close().finally(() => process.exit(0));
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
}

function explain(error: unknown): string {
  if (error instanceof Refusal) return error.message;
  const { message } = error as Error;
  if (/Port \d+ is already in use/.test(message)) return `${message}. Try another with --port, or leave it out.`;
  if (/PEM|SSL routines|key values mismatch/i.test(message)) return `The certificate or its key cannot be used: ${message}`;
  return `The app could not be built or served.\n${message}`;
}

async function main(): Promise<void> {
  const wish = read(process.argv.slice(2));
  if (wish.help) return console.log(HELP);
  await buildIfNeeded();
  const server = await serve(wish);
  stopOnSignal(server);
  tell(server);
}

try {
  await main();
} catch (error) {
  console.error(explain(error));
  process.exitCode = 2;
}
