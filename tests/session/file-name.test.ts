/** What a handler typed never becomes more than a name in a list of files. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fileName, forFileName } from '../../src/session/file-name.ts';

test.each([
  ['Left ear: drops!', 'Left-ear-drops'],
  ['../../etc/passwd', 'etc-passwd'],
  ['<img src=x onerror=alert(1)>', 'img-src-x-onerror-alert-1'],
  ['=1+1', '1-1'],
  ['Noor Ä. 🐕 日本', 'Noor-Ä-日本'],
  ['\u202Egnp.exe', 'gnp-exe'],
  ['…', ''],
])('%s is %s', (typed, name) => {
  expect(forFileName(typed)).toBe(name);
});

test('a name without a letter is left out, a long one cut', () => {
  expect(fileName(['plan', '???'], '2026-03-02', 'json')).toBe('stillbeat-plan-2026-03-02.json');
  expect(forFileName('a b'.repeat(99)).length).toBeLessThanOrEqual(40);
});

test('whatever is typed, the name has letters, digits and hyphens only', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (typed) => {
      expect(fileName(['words', typed], '2026-03-02', 'json')).toMatch(
        /^stillbeat-words-([\p{L}\p{M}\p{N}-]+-)?2026-03-02\.json$/u,
      );
    }),
    { seed: 20261126, numRuns: 500 },
  );
});
