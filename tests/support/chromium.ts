/** Finds a Chromium for the tests, installs one when it may, and keeps the flags it is started with in one place. */
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright';

/** No sandbox, because containers run as root; the rest keeps the browser off the network. */
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // The one without windows would else round every letter to whole pixels, and so print wider lines than people get.
  '--font-render-hinting=none',
];

/** Sound may start before a tap: a test has no finger. */
const SOUND_FLAGS = ['--autoplay-policy=no-user-gesture-required'];

/** What a person does about a missing browser. */
export function whatToDo(): string {
  const named = process.env.CHROMIUM_PATH;
  return [
    named ? `CHROMIUM_PATH names no program that can be run: ${named}` : 'No Chromium was found, and none could be installed.',
    'Do one of these, then run the tests again:',
    '  - Debian or Ubuntu:  sudo apt-get update && sudo apt-get install -y chromium chromium-headless-shell',
    '  - elsewhere:         npx playwright install chromium',
    '  - already have one:  CHROMIUM_PATH=/path/to/chromium npm test',
  ].join('\n');
}

function runs(path: string | undefined): path is string {
  if (!path || !existsSync(path)) return false;
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

const WHOLE = '/usr/bin/chromium';

/** Debian's same engine without windows: it opens the app in two thirds of the time, and has no recogniser and no lock on its profile. */
const SHELL = '/usr/bin/chromium-headless-shell';

/** How the browser is started: `microphoneWav` plays once as if spoken into the microphone; `shell` is faster where Debian's is there. */
export interface Launch {
  readonly microphoneWav?: string;
  readonly shell?: boolean;
}

/** The browser to use: the one named in CHROMIUM_PATH, Debian's, or Playwright's own. */
export function findChromium({ shell = false }: Launch = {}): string | undefined {
  const named = process.env.CHROMIUM_PATH;
  if (named) return runs(named) ? named : undefined;
  return [...(shell ? [SHELL] : []), WHOLE, chromium.executablePath()].find(runs);
}

function mayInstall(): boolean {
  return process.platform === 'linux' && process.getuid?.() === 0 && runs('/usr/bin/apt-get') && !process.env.CHROMIUM_PATH;
}

function apt(...words: string[]): boolean {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  return spawnSync('apt-get', words, { env, stdio: ['ignore', 'ignore', 'inherit'] }).status === 0;
}

/** Finds a browser, or installs Debian's when run as root there; undefined when neither works. The shell saves time alone: without it, it goes. */
export function findOrInstallChromium(): string | undefined {
  const found = findChromium();
  if (found || !mayInstall()) return found;
  console.log('No Chromium yet: installing it with apt-get (a minute or two) ...');
  const install = () => apt('install', '-y', 'chromium', 'chromium-headless-shell') || apt('install', '-y', 'chromium');
  return install() || (apt('update') && install()) ? findChromium() : undefined;
}

/** What Playwright needs to start the browser. */
export function launchOptions(how: Launch = {}): { executablePath?: string; args: string[] } {
  const executablePath = findChromium(how);
  const microphone = [
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    ...(how.microphoneWav ? [`--use-file-for-fake-audio-capture=${how.microphoneWav}%noloop`] : []),
  ];
  return { ...(executablePath && { executablePath }), args: [...FLAGS, ...SOUND_FLAGS, ...microphone] };
}

/** Starts a headless browser. Throws, with what to do, where there is none. */
export async function launchChromium(how: Launch = {}): Promise<Browser> {
  const options = launchOptions(how);
  if (!options.executablePath) throw new Error(whatToDo());
  return chromium.launch(options);
}
