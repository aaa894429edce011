/** Serves the built app on this computer, building it first when the sources are newer, and tells how a phone reaches it. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { build, type PreviewServer, type ProxyOptions, preview } from 'vite';

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
  --key FILE     its key (or STILLBEAT_KEY)
  --sync URL     lead the path /sync/ to a CouchDB there, for the optional sync: http://127.0.0.1:5984`;

interface Wish {
  readonly port: number | undefined;
  readonly host: boolean;
  /** The origin of a CouchDB; null: none. */
  readonly sync: string | null;
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
      sync: { type: 'string' },
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

function serverFrom(text: string | undefined): string | null {
  if (text === undefined) return null;
  const url = URL.canParse(text) ? new URL(text) : null;
  const isServer = url !== null && /^https?:$/.test(url.protocol) && !url.username && !url.search;
  if (!isServer)
    throw new Refusal(`--sync: expected an address as http://127.0.0.1:5984, without a name or password, got "${text}".`);
  return url.href.replace(/\/$/, '');
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
  return { port: portFrom(values.port), host: values.host, sync: serverFrom(values.sync), help: values.help };
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

/** The page may talk to its own address alone, so its server passes on what goes to /sync/, and nothing else of the other server. */
function wayToServer(sync: string | null): { proxy?: Record<string, ProxyOptions> } {
  if (sync === null) return {};
  const strip = (path: string) => path.replace(/^\/sync/, '');
  return { proxy: { '^/sync/': { target: sync, changeOrigin: true, rewrite: strip } } };
}

async function serve({ port, host, sync }: Wish): Promise<PreviewServer> {
  const where = host ? { host: true, allowedHosts: true as const } : { host: 'localhost' };
  // A port that was asked for is that port or an error; the default moves on to the next free one.
  const door = { port: port ?? DEFAULT_PORT, strictPort: port !== undefined };
  return preview({ root: ROOT, logLevel: 'warn', preview: { ...where, ...door, ...wayToServer(sync) } });
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

function tell(server: PreviewServer, { sync }: Wish): void {
  const isSecure = Boolean(server.config.preview.https);
  const port = boundPort(server);
  // performance.now() starts with the process.
  const seconds = (performance.now() / 1000).toFixed(1);
  console.log(`Stillbeat: ${isSecure ? 'https' : 'http'}://localhost:${port}/  (ready in ${seconds} s; Ctrl-C stops it)\n`);
  if (sync !== null) console.log(`/sync/ leads to ${sync}. In the app: Settings, More than one device.\n`);
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
  tell(server, wish);
}

try {
  await main();
} catch (error) {
  console.error(explain(error));
  process.exitCode = 2;
}
