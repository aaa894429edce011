/** Keeps time and chance out of the pure rooms: there they are arguments. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const FORBIDDEN =
  /\bDate\.now\b|\bnew Date\s*\(\s*\)|\bDate\s*\(\s*\)|\bMath\.random\b|\bperformance\.now\b|\bcrypto\.(?:randomUUID|getRandomValues)\b/;

/** The lines that ask for the time or for a die, as `line: text`. Comments may speak of them. */
function asksForTimeOrChance(text: string): string[] {
  const lines = text.replace(/\/\*[\s\S]*?\*\//g, (comment) => comment.replace(/[^\n]/g, '')).split('\n');
  return lines.map((line, at) => `${at + 1}: ${line.replace(/\/\/.*/, '').trim()}`).filter((line) => FORBIDDEN.test(line));
}

function sourcesOf(room: string): string[] {
  const names = readdirSync(join(ROOT, room), { recursive: true, encoding: 'utf8' });
  return names.filter((name) => /\.tsx?$/.test(name)).map((name) => join(room, name));
}

describe('the pure rooms take time and chance as arguments', () => {
  test.each([...sourcesOf('src/core'), ...sourcesOf('src/hearing')])('%s', (file) => {
    expect(asksForTimeOrChance(readFileSync(join(ROOT, file), 'utf8'))).toEqual([]);
  });
});

test.each([
  'const at = Date.now();',
  'const at = new Date();',
  'const at = Date();',
  'const die = Math.random();',
  'const at = performance.now();',
  'const id = crypto.randomUUID();',
])('"%s" would be found', (line) => {
  expect(asksForTimeOrChance(`/** Date.now() */\n${line}`)).toEqual([`2: ${line}`]);
});

test('a comment may speak of them, and a given time may be read', () => {
  expect(asksForTimeOrChance('// Never Date.now().\n/* Math.random() */\nconst at = new Date(ms);')).toEqual([]);
});
