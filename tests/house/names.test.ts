/** Keeps one machine's paths and one registry's hosts out of the project: a clone works anywhere. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT, trackedFiles } from './tracked-files.ts';

// Put together from halves, so that this file passes its own test.
const MACHINE_PATHS = ['work', 'root', 'home'].map((name) => `/${name}/`);
const REGISTRY_HOSTS = [
  ['registry.', 'npmjs'],
  ['registry.', 'yarnpkg'],
  ['npm', 'mirror.com'],
  ['deb.', 'debian.org'],
  ['arti', 'factory'],
].map((halves) => halves.join(''));

/** A path starts a word: `https://example.org/home/` is no machine path. */
const MACHINE_PATH = new RegExp(`(?<![\\w.~-])(?:${MACHINE_PATHS.join('|')})\\w`);
const REGISTRY = new RegExp(REGISTRY_HOSTS.map((host) => host.replaceAll('.', '\\.')).join('|'), 'i');

function isText(bytes: Buffer): boolean {
  return !bytes.subarray(0, 8000).includes(0);
}

function linesThatName(pattern: RegExp): string[] {
  return trackedFiles().flatMap((file) => {
    const bytes = readFileSync(join(ROOT, file));
    if (!isText(bytes)) return [];
    const lines = bytes.toString('utf8').split('\n');
    return lines.flatMap((line, at) => (pattern.test(line) ? [`${file}:${at + 1}: ${line.trim().slice(0, 120)}`] : []));
  });
}

test('no file names a path of one machine', () => {
  expect(linesThatName(MACHINE_PATH)).toEqual([]);
});

test('no file names a package registry', () => {
  expect(linesThatName(REGISTRY)).toEqual([]);
});

test('such names would be found', () => {
  for (const path of MACHINE_PATHS) expect(`see "${path}main"`).toMatch(MACHINE_PATH);
  for (const host of REGISTRY_HOSTS) expect(`https://${host}/x`).toMatch(REGISTRY);
});
