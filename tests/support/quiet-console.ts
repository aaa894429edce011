/** Fails a test that warned or complained on the console, unless the test said that it would. */
import { afterEach, beforeEach, expect } from 'vitest';

type Level = 'warn' | 'error';
const said: string[] = [];
const expected: RegExp[] = [];
const real = { warn: console.warn, error: console.error };

/** Declares that this test will warn or complain; the message is then required, not just allowed. */
export function expectConsole(pattern: RegExp): void {
  expected.push(pattern);
}

function listenTo(level: Level): void {
  console[level] = (...words: unknown[]) => {
    const line = `console.${level}: ${words.map(String).join(' ')}`;
    said.push(line);
    if (!expected.some((pattern) => pattern.test(line))) real[level](...words);
  };
}

beforeEach(() => {
  said.length = 0;
  expected.length = 0;
  listenTo('warn');
  listenTo('error');
});

afterEach(() => {
  Object.assign(console, real);
  const unexpected = said.filter((line) => !expected.some((pattern) => pattern.test(line)));
  const missing = expected.filter((pattern) => !said.some((line) => pattern.test(line)));
  expect(unexpected, 'nothing unexpected on the console').toEqual([]);
  expect(missing.map(String), 'every declared console message was said').toEqual([]);
});
