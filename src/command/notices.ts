/** The licence texts of what ends up in the built app without being bundled into the page: threads, service worker, fonts and the ear's networks. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CLEANER_SOURCE, WEIGHTS_SOURCE } from '../hearing/weights/pack.ts';
import { packageFolder } from './ear-weights.ts';

const BESIDE_THE_PAGE = [
  'fft.js',
  'pitchy',
  'workbox-core',
  'workbox-precaching',
  '@fontsource-variable/atkinson-hyperlegible-next',
  WEIGHTS_SOURCE.package,
  CLEANER_SOURCE.package,
];

interface About {
  readonly version: string;
  readonly license: string;
}

/** The package's own text: its licence file, or what its README says under that head, or nothing. */
function licenceText(folder: string): string {
  const file = readdirSync(folder).find((name) => /^licen[cs]e/i.test(name));
  if (file) return readFileSync(join(folder, file), 'utf8');
  const readme = readFileSync(join(folder, 'README.md'), 'utf8');
  const below = readme.split(/^#+ licen[cs]e$/im)[1] ?? '';
  // Up to the next head, or to the addresses at the end.
  return below.split(/^[#[]/m)[0] as string;
}

function noticeOf(name: string): string {
  const folder = packageFolder(name);
  // What is not installed is not built in either.
  if (!folder) return '';
  const { version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as About;
  return `## ${name} - ${version} (${license})\n\n${licenceText(folder).trim()}\n`;
}

/** In Markdown, a head for each package. */
export function noticesBesideThePage(): string {
  const networks = readFileSync(join(dirname(fileURLToPath(import.meta.url)), '../hearing/weights/notices.md'), 'utf8');
  return [...BESIDE_THE_PAGE.map(noticeOf).filter((text) => text !== ''), networks].join('\n');
}
