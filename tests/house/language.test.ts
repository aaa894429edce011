/** Keeps the catalogues whole: each sentence stands once, is said somewhere, and has the same holes in every language. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';
import { fixed, nearestLanguage, speak, t } from '../../src/core/language.ts';
import { GERMAN } from '../../src/core/languages/german.ts';
import { englishIn } from './english-words.ts';
import { ROOT, trackedFiles } from './tracked-files.ts';

const CATALOGUES = 'src/core/languages';

const holes = (sentence: string): string[] => [...sentence.matchAll(/\{(\w+)\}/g)].map(([, name]) => name ?? '').toSorted();

describe('a translated sentence', () => {
  test.each(Object.entries(GERMAN))('%s', (english, german) => {
    expect([...new Set(holes(german))]).toEqual([...new Set(holes(english))]);
    expect(german.trim()).not.toBe('');
    expect(englishIn(german)).toEqual([]);
    expect(german, 'a mark for translators is no part of a sentence').not.toMatch(/\w#\w/);
  });
});

test('a sentence stands in one part of the catalogue only', async () => {
  const parts = readdirSync(join(ROOT, CATALOGUES)).filter((name) => name.startsWith('german-'));
  const all = await Promise.all(
    parts.map(async (name) =>
      Object.values(await import(/* @vite-ignore */ pathToFileURL(join(ROOT, CATALOGUES, name)).href)).flatMap((part) =>
        Object.keys(part as object),
      ),
    ),
  );
  const keys = all.flat();
  expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
});

test('every sentence of the catalogue is said somewhere', () => {
  const sources = trackedFiles().filter((file) => /^(?:src|demo)\/.*\.tsx?$/.test(file) && !file.startsWith(CATALOGUES));
  const text = sources.map((file) => readFileSync(join(ROOT, file), 'utf8')).join('\n');
  const isSaid = (english: string) => text.includes(`'${english.replaceAll("'", "\\'")}'`) || text.includes(`"${english}"`);
  expect(Object.keys(GERMAN).filter((english) => !isSaid(english))).toEqual([]);
});

describe('what is said', () => {
  afterEach(() => speak('en'));

  test('is the English sentence, until another language is chosen', async () => {
    expect(t('Settings')).toBe('Settings');
    await speak('de');
    expect(t('Settings')).toBe('Einstellungen');
  });

  test('has its numbers as the language writes them', async () => {
    expect(fixed(1.5, 1)).toBe('1.5');
    await speak('de');
    expect(fixed(1.5, 1)).toBe('1,5');
  });

  test('sets a name that runs from right to left apart, so that the number after it stays after it', () => {
    const hebrew = '\u05db\u05dc\u05d1';
    expect(t('A note on rep {n}', { n: 3 })).toBe('A note on rep 3');
    expect(t('{title}, as a table', { title: 'Lie flat' })).toBe('Lie flat, as a table');
    expect(t('{title}, as a table', { title: hebrew })).toBe(`\u2068${hebrew}\u2069, as a table`);
  });

  test('comes nearest to what the browser wishes', () => {
    expect(nearestLanguage(['de-CH', 'en'])).toBe('de');
    expect(nearestLanguage(['fr', 'de'])).toBe('de');
    expect(nearestLanguage(['fr-CA'])).toBe('en');
    expect(nearestLanguage(['constructor'])).toBe('en');
  });
});
