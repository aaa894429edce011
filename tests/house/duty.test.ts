/** Keeps the house in order: duties, lengths, names of files and folders, and what may lie at the top. */
import { readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT, trackedFiles } from './tracked-files.ts';

/** Longer than this is allowed, with a reason at the top. */
const LONG_LINES = 400;

/** The owner's top level, and the files that tools insist on finding there. */
const TOP_LEVEL = [
  ...['README.md', 'DEVELOPERS.md', 'package.json', 'tsconfig.json', 'index.html', 'src', 'sounds', 'tests', 'demo'],
  ...['CHANGELOG.md', 'package-lock.json', 'biome.json', 'knip.json', 'vite.config.ts', 'vitest.config.ts'],
  ...['.ci', '.gitignore', '.npmrc', '.size-limit.js'],
];

const files = trackedFiles();
const sources = files.filter((file) => /^(src|sounds|demo|tests)\/.*\.tsx?$/.test(file) || /^[^/]+\.ts$/.test(file));

function read(file: string): string {
  return readFileSync(join(ROOT, file), 'utf8');
}

/** The comment that a file opens with, without its stars. */
function duty(text: string): string | undefined {
  const comment = /^(?:#!.*\n)?\/\*\*([\s\S]*?)\*\//.exec(text)?.[1];
  return comment?.replace(/^\s*\*/gm, '').trim();
}

function isLongWithoutReason(text: string): boolean {
  return text.split('\n').length > LONG_LINES && !/\blong because\b/i.test(duty(text) ?? '');
}

describe('a file opens with its duty', () => {
  test.each(sources)('%s', (file) => {
    expect(duty(read(file)) ?? '', 'the file begins with /** What it does. */').toMatch(/^\S[\s\S]{14,}/);
  });
});

describe('a long file says at its top why it is long', () => {
  test('no file is long without its reason', () => {
    const silent = sources.filter((file) => isLongWithoutReason(read(file)));
    expect(silent, `over ${LONG_LINES} lines: the opening comment says "Long because ..."`).toEqual([]);
  });

  test('one line too many is caught, unless the opening comment says why; a reason further down is none', () => {
    const text = (opening: string, lines: number) => `/** ${opening} */\n${'x;\n'.repeat(lines - 2)}`;
    expect(isLongWithoutReason(text('Does it.', LONG_LINES))).toBe(false);
    expect(isLongWithoutReason(text('Does it.', LONG_LINES + 1))).toBe(true);
    expect(isLongWithoutReason(text('Does it. Long because it is a table.', LONG_LINES + 1))).toBe(false);
    expect(isLongWithoutReason(`${text('Does it.', LONG_LINES + 1)}// long because of this`)).toBe(true);
  });
});

test('no file is a barrel and none is a drawer for odds and ends', () => {
  const odd = sources.filter(
    (file) => /^index\.tsx?$/.test(basename(file)) || /(^|\/)(utils?|helpers?|misc|common)(\/|\.)/.test(file),
  );
  expect(odd).toEqual([]);
});

test('the top level holds what the owner allows, and nothing else', () => {
  const top = new Set(files.map((file) => file.split('/')[0] as string));
  expect([...top].filter((name) => !TOP_LEVEL.includes(name))).toEqual([]);
});

test('every room is type-checked by a settings file of its own, and the root builds it', () => {
  const rooms = sources.filter((file) => /^src\/[^/]+\//.test(file)).map((file) => file.split('/').slice(0, 2).join('/'));
  const built = JSON.parse(read('tsconfig.json')).references.map(({ path }: { path: string }) => path);
  expect([...new Set(rooms)].filter((room) => !built.includes(room))).toEqual([]);
});

test('tests lie in the room that they test', () => {
  const rooms = [
    'core',
    'hearing',
    'audio',
    'store',
    'ears',
    'session',
    'screens',
    'command',
    'sounds',
    'demo',
    'e2e',
    'house',
    'bench',
  ];
  const tests = files.filter((file) => /\.test\.tsx?$/.test(file));
  expect(tests.filter((file) => !rooms.includes(dirname(file).split('/')[1] ?? ''))).toEqual([]);
});
