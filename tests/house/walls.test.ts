/** Proves that the walls hold: every bad fixture is refused with the message that helps, every good one passes. */
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const FIXTURES = join(ROOT, 'tests/fixtures/walls');
const BIOME = join(ROOT, 'node_modules/.bin/biome');

interface Fixture {
  readonly file: string;
  readonly text: string;
  /** What the lint must say, or undefined for a file that must pass. */
  readonly refused: string | undefined;
}

const fixtures: Fixture[] = readdirSync(FIXTURES, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.txt'))
  .sort()
  .map((name) => {
    const text = readFileSync(join(FIXTURES, name), 'utf8');
    return { file: name.replace(/\.txt$/, ''), text, refused: /^\/\/ refused: (.+)/.exec(text)?.[1] };
  });

/** What the lint said of each file. */
const said = new Map<string, string[]>();
let house: string;

/** A house of fixtures only, under the real lint rules. */
function build(): string {
  const folder = mkdtempSync(join(tmpdir(), 'stillbeat-walls-'));
  cpSync(join(ROOT, 'biome.json'), join(folder, 'biome.json'));
  cpSync(join(ROOT, 'tests/house'), join(folder, 'tests/house'), { recursive: true });
  for (const { file, text } of fixtures) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  }
  execFileSync('git', ['init', '-q'], { cwd: folder });
  return folder;
}

function lint(folder: string): void {
  const words = ['lint', '--reporter=json', '--max-diagnostics=none', 'src'];
  const { stdout } = spawnSync(BIOME, words, { cwd: folder, encoding: 'utf8', maxBuffer: 64 << 20 });
  const report = JSON.parse(stdout);
  for (const diagnostic of report.diagnostics) {
    const file = diagnostic.location.path;
    said.set(file, [...(said.get(file) ?? []), `${diagnostic.category}: ${diagnostic.message}`]);
  }
}

beforeAll(() => {
  house = build();
  lint(house);
});

afterAll(() => rmSync(house, { recursive: true, force: true }));

describe('a file that breaks a wall is refused', () => {
  test.each(fixtures.filter((fixture) => fixture.refused))('$file: "$refused"', ({ file, refused }) => {
    expect(said.get(file) ?? []).toEqual(expect.arrayContaining([expect.stringContaining(refused as string)]));
  });
});

describe('a file that keeps to the walls passes', () => {
  test.each(fixtures.filter((fixture) => !fixture.refused))('$file', ({ file }) => {
    expect(said.get(file) ?? []).toEqual([]);
  });
});

/** Every message that a wall can give, read from the rules themselves. */
function messages(): string[] {
  const owners = readFileSync(join(ROOT, 'tests/house/owners.grit'), 'utf8');
  const rooms = readFileSync(join(ROOT, 'biome.json'), 'utf8');
  return [...owners.matchAll(/message="([^"]+)"/g), ...rooms.matchAll(/"message": "([^"]+)"/g)].map(
    (match) => match[1] as string,
  );
}

describe('a wall has a fixture that proves it', () => {
  test.each(messages())('%s', (message) => {
    expect([...said.values()].flat().some((line) => line.includes(message))).toBe(true);
  });
});
