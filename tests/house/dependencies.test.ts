/** What the app is built on is told with its licence and its reason, package by package. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from './tracked-files.ts';

const read = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
const wanted = Object.keys(JSON.parse(read('package.json')).dependencies);
const told = [...read('DEVELOPERS.md').matchAll(/^\| `([@\w./-]+)` \| ([\w.-]+) \| (?:yes|no) \| .+ \|$/gm)].map(
  ([, name, licence]) => ({
    name: name as string,
    licence: licence as string,
  }),
);

test('every package that the app needs stands in the table, and none that it no longer needs', () => {
  expect(told.map(({ name }) => name).toSorted()).toEqual(wanted.toSorted());
});

test('each licence in the table is the one that its package names, and one that may be handed on', () => {
  for (const { name, licence } of told) {
    expect(JSON.parse(read(`node_modules/${name}/package.json`)).license, name).toBe(licence);
    expect(['MIT', 'ISC', 'Apache-2.0', 'OFL-1.1', 'Unlicense', 'BSD-3-Clause', '0BSD'], name).toContain(licence);
  }
});
