/** Homework as a file and as a link: whole on the other side, or refused with what is wrong. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HANDLED_AREAS, POSITIONS, readyLadder } from '../../src/core/ladders.ts';
import { halfStep, insertBefore, type Step } from '../../src/core/plan.ts';
import { type HomeworkRead, homeworkText, parseHomework } from '../../src/store/homework-file.ts';
import { homeworkCode, parseHomeworkCode } from '../../src/store/homework-link.ts';
import { HOMEWORK, homework } from '../core/handover/homework-sample.ts';

const whole = { ok: true, homework: HOMEWORK };
const refusalOf = (read: HomeworkRead) => (read.ok ? 'fine' : read.refusal);

/** A file whose digest is right, whatever it says. */
const fileOf = (value: unknown): Promise<string> => homeworkText(value as typeof HOMEWORK);

describe('a file', () => {
  test('says on the other side what it said here', async () => {
    expect(await parseHomework(await homeworkText(HOMEWORK))).toEqual(whole);
  });

  test('may be written in another order and with other spaces: it says the same', async () => {
    const { homework: held, ...head } = JSON.parse(await homeworkText(HOMEWORK));
    const turned = Object.fromEntries(Object.entries(held).toReversed());
    expect(await parseHomework(JSON.stringify({ homework: turned, ...head }))).toEqual(whole);
  });

  test('in which a single second was changed is refused', async () => {
    const text = (await homeworkText(HOMEWORK)).replace('"holdForS": 3', '"holdForS": 30');
    expect(refusalOf(await parseHomework(text))).toEqual({ kind: 'changed-on-the-way' });
  });

  test('of a newer app is refused as such, whatever else it says', async () => {
    const text = (await homeworkText(HOMEWORK)).replace('"version": 1', '"version": 2');
    expect(refusalOf(await parseHomework(text))).toEqual({ kind: 'newer', version: 2 });
  });

  test('of something else names what was expected', async () => {
    const damage = { path: 'file › format', expected: '"stillbeat homework"', got: '"stillbeat events"' };
    const read = await parseHomework('{"format":"stillbeat events"}');
    expect(refusalOf(read)).toMatchObject({ kind: 'not-homework', damage });
    for (const text of ['', 'null', '[', 'x'.repeat(1_000_001), '['.repeat(500_000)])
      expect(refusalOf(await parseHomework(text))).toMatchObject({ kind: 'not-homework' });
  });

  test('that is whole and cannot be practised names path, bound and value', async () => {
    const unfit = async (changed: object) => refusalOf(await parseHomework(await fileOf({ ...HOMEWORK, ...changed })));
    const damage = (path: string, expected: string, got: string) => ({ kind: 'unfit', damage: { path, expected, got } });
    expect(await unfit({ sessionsAWeek: 0 })).toMatchObject(
      damage('homework › sessionsAWeek', 'a whole number from 1 to 21', '0'),
    );
    expect(await unfit({ note: 'x'.repeat(2001) })).toMatchObject({
      damage: { path: 'homework › note', expected: 'text of at most 2000 characters' },
    });
    expect(await unfit({ steps: [] })).toMatchObject({ damage: { path: 'homework › steps', expected: 'at least one step' } });
    const [first, second, ...others] = HOMEWORK.steps;
    expect(await unfit({ steps: [second, first, ...others] })).toMatchObject(
      damage('homework › steps[1].holdForS', 'more than 1, the step below', '0'),
    );
  });

  test('with a step at the face needs its caution, as any plan does', async () => {
    const eye = { kind: 'handling', id: 'eye', title: 'Touch the lid', area: 'eyes', extent: 'one finger', forS: 1 } as const;
    const read = await parseHomework(await homeworkText(homework({ steps: [eye] })));
    expect(refusalOf(read)).toMatchObject({
      kind: 'unfit',
      damage: { path: 'homework › steps[0].caution', expected: 'a sentence that names the veterinarian' },
    });
  });
});

describe('a link', () => {
  test('says on the other side what it said here, in letters and digits alone', async () => {
    const code = (await homeworkCode(HOMEWORK)) ?? '';
    expect(code).toMatch(/^[A-Z2-7]+$/);
    expect(await parseHomeworkCode(code)).toEqual(whole);
    expect(await parseHomeworkCode(code.toLowerCase())).toEqual(whole);
  });

  test('that was cut, mistyped or made by a newer app is refused', async () => {
    const code = (await homeworkCode(HOMEWORK)) ?? '';
    const kinds = async (text: string) => {
      const read = await parseHomeworkCode(text);
      return read.ok ? 'fine' : read.refusal.kind;
    };
    expect(await kinds(code.slice(0, -20))).toBe('changed-on-the-way');
    expect(await kinds(`${code.slice(0, 300)}${code[300] === 'A' ? 'B' : 'A'}${code.slice(301)}`)).toBe('changed-on-the-way');
    // The first five bits of the first byte: version 9 to 15.
    expect(await kinds(`B${code.slice(1)}`)).toBe('newer');
    expect(await kinds('not a homework!')).toBe('not-homework');
    expect(await kinds('')).toBe('not-homework');
  });

  test('that would unpack to more than any homework is refused before it fills the memory', async () => {
    const much = homework({ note: ' '.repeat(3_000_000) });
    const code = (await homeworkCode(much)) ?? '';
    expect(code.length).toBeLessThan(10_000);
    expect(refusalOf(await parseHomeworkCode(code))).toEqual({ kind: 'changed-on-the-way' });
  });

  test('carries half steps, half-ways, cautions and rules', async () => {
    const [below, above] = [HOMEWORK.steps[4], HOMEWORK.steps[5]] as [Step, Step];
    const steps = insertBefore(HOMEWORK.steps, above.id, halfStep(below, above, 'half') as Step);
    const given = homework({ steps, rule: { kind: 'k-of-m', kept: 9, of: 10, window: 'blocks' } });
    expect(await parseHomeworkCode((await homeworkCode(given)) ?? '')).toEqual({ ok: true, homework: given });
  });

  // 1,380 letters beside an address of 60 fill a version 25 at level M (ISO 18004, capacity 1,000 bytes; C).
  test.each(HANDLED_AREAS.flatMap((area) => POSITIONS.map((position) => [area, position] as const)))(
    'of a ready ladder (%s, %s) with a note is small enough for a code',
    async (area, position) => {
      const given = homework({ steps: readyLadder(position, area) });
      const code = (await homeworkCode(given)) ?? '';
      expect(code.length).toBeLessThan(1_380);
    },
  );
});

test('any homework comes through both ways, and no damage to either is taken for whole', async () => {
  const text = fc.string({ maxLength: 60, unit: 'grapheme' });
  const any = fc.record({ trainer: text, ownerName: text, dogName: text, note: text, revision: fc.integer({ min: 1, max: 99 }) });
  await fc.assert(
    fc.asyncProperty(any, fc.nat(), fc.nat(), async (changed, at, by) => {
      const given = homework(changed);
      const file = await homeworkText(given);
      const read = await parseHomework(file);
      // A grapheme may be many characters: too long is refused, and nothing else is.
      if (!read.ok)
        return expect(read.refusal).toMatchObject({ kind: 'unfit', damage: { expected: expect.stringMatching('at most 60') } });
      expect(read.homework).toEqual(given);
      const code = (await homeworkCode(given)) ?? '';
      expect(await parseHomeworkCode(code)).toEqual(read);
      const bent = bentAt(file, at, by);
      const again = await parseHomework(bent);
      if (again.ok) expect(again.homework).toEqual(given);
      const bentCode = bentAt(code, at, by);
      const opened = await parseHomeworkCode(bentCode);
      if (opened.ok) expect(opened.homework).toEqual(given);
    }),
    { numRuns: 300 },
  );
});

function bentAt(text: string, at: number, by: number): string {
  const place = at % text.length;
  return text.slice(0, place) + String.fromCharCode(33 + (by % 90)) + text.slice(place + 1);
}
