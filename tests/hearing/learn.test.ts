/** Learning from corrections: what a heard word leaves behind, what becomes of it, and what that changes. Words are made by code. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Hearing } from '../../src/hearing/decide.ts';
import { enrol, type Model, type Teaching } from '../../src/hearing/enrol.ts';
import { compareModels, createJudge, type Known, type Learned, newestOf } from '../../src/hearing/learn.ts';
import { createListener } from '../../src/hearing/listen.ts';
import { pack, unpack } from '../../src/hearing/stretch.ts';
import { type GlideName, room, say } from './sounds.ts';

const takesOf = (name: GlideName, seeds: readonly number[]) =>
  seeds.map((seed) => ({ samples: say(name, seed), sampleRateHz: 16_000 }));

/** No talk is taught: that is how false triggers come about. */
const TEACHING: Teaching = {
  words: { hold: takesOf('hold', [1, 2, 3]), mark: takesOf('mark', [1, 2, 3]), lifted: takesOf('lifted', [1, 2, 3]) },
  talk: [],
};

function modelOf(teaching: Teaching): Model {
  const enrolled = enrol(teaching);
  if (!enrolled.ok) throw new Error(JSON.stringify(enrolled.problems));
  return enrolled.model;
}

const MODEL = modelOf(TEACHING);

function hear(samples: Float32Array, model = MODEL, keep: { sound: boolean } | null = { sound: false }): readonly Hearing[] {
  const listener = createListener(model, { sampleRateHz: 16_000, keep: keep ?? undefined });
  const heard: Hearing[] = [];
  for (let at = 0; at < samples.length; at += 333) heard.push(...listener.push(samples.subarray(at, at + 333)));
  return [...heard, ...listener.flush()];
}

const SAID = [
  { name: 'hold', atS: 1, seed: 31 },
  { name: 'mark', atS: 3, seed: 32 },
  { name: 'hold', atS: 5, seed: 34 },
  { name: 'lifted', atS: 7.2, seed: 35 },
] as const;
const HEARD = hear(room(9, SAID));
const kept = ({ kept: of }: Hearing) => {
  if (!of) throw new Error('a hearing without its stretch');
  return of;
};
const wordOf = (hearing: Hearing) => (hearing.kind === 'word' ? hearing.word : null);
const nearestOf = (hearing: Hearing) => {
  const { word: nearest, confidence } =
    hearing.kind === 'word' ? hearing : (hearing.nearest[0] as { word: string; confidence: number });
  return { nearest, confidence };
};
const nameOf = (hearing: Hearing) => (hearing.kind === 'word' ? hearing.word : hearing.kind);

test('features are packed to within half a step of their range, and their size is a quarter', () => {
  const rows = fc.array(fc.array(fc.float({ min: -1000, max: 1000, noNaN: true }), { minLength: 3, maxLength: 3 }), {
    minLength: 3,
    maxLength: 9,
  });
  fc.assert(
    fc.property(rows, (values) => {
      const given = values.map((row) => Float32Array.from(row));
      const stretch = pack({ features: 'cepstra', rows: given, from: 0, to: given.length });
      unpack(stretch).forEach((row, step) => {
        row.forEach((x, d) => {
          const range = Math.max(...given.map((each) => each[d] as number)) - Math.min(...given.map((each) => each[d] as number));
          expect(Math.abs(x - (given[step]?.[d] as number))).toBeLessThanOrEqual(range / 510 + 1e-3);
        });
      });
    }),
  );
});

test('every heard word leaves a stretch that holds the word, and nothing is kept unasked', () => {
  expect(HEARD.map(nameOf)).toEqual(SAID.map(({ name }) => name));
  for (const hearing of HEARD) {
    const { stretch, sound } = kept(hearing);
    expect(stretch.to - stretch.from).toBeGreaterThan(5);
    expect(stretch.to).toBeLessThanOrEqual(stretch.steps);
    expect(stretch.bytes).toHaveLength(stretch.steps * stretch.dims);
    expect(sound).toBeUndefined();
  }
  expect(hear(room(9, SAID), MODEL, null).some(({ kept: of }) => of)).toBe(false);
});

test('where the handler wishes it, a second and a half of sound is kept, and the word is in it', () => {
  const [first] = hear(room(9, SAID), MODEL, { sound: true });
  const { sound } = kept(first as Hearing);
  expect(sound).toHaveLength(24_000);
  expect(Math.max(...(sound ?? []))).toBeGreaterThan(2_000);
});

const bestOf = (worths: ReadonlyMap<string, number> | null) => [...(worths ?? [])].sort((a, b) => b[1] - a[1])[0]?.[0];

test('of a kept stretch the word that was heard is the best, judged anew', () => {
  const judge = createJudge(MODEL);
  for (const hearing of HEARD) expect(bestOf(judge(kept(hearing).stretch, null))).toBe(nameOf(hearing));
});

test('a stretch of another kind of ear is nothing, neither judged nor learnt', () => {
  const other = { ...kept(HEARD[0] as Hearing).stretch, features: 'fused' };
  expect(createJudge(MODEL)(other, null)).toBeNull();
  expect(modelOf({ ...TEACHING, learned: [{ of: 'a', word: undefined, stretch: other }] })).toEqual(MODEL);
});

test('a stretch becomes a take of its word without being heard again, numbered after the taught ones', () => {
  const learned: Learned[] = [{ of: 'dev:7', word: 'hold', stretch: kept(HEARD[0] as Hearing).stretch }];
  const model = modelOf({ ...TEACHING, learned });
  expect(model.templates.filter(({ learnedOf }) => learnedOf === 'dev:7')).toMatchObject([{ word: 'hold', take: 3 }]);
  // A word that nobody has taught cannot be learnt from corrections alone.
  expect(modelOf({ ...TEACHING, learned: [{ ...learned[0], word: 'undo' } as Learned] })).toEqual(MODEL);
});

const knownOf = (hearing: Hearing, of: string, truth: string | null): Known => ({
  ...{ of, stretch: kept(hearing).stretch, heard: wordOf(hearing), truth },
  ...nearestOf(hearing),
});

/** Words that the model without talk takes wrongly: two mouths' worth of a look-alike. */
const CONFUSED = ['good', 'come', 'name'] as const;
const chatter = (seed: number) =>
  room(
    22,
    CONFUSED.flatMap((name, i) => [0, 1, 2, 3, 4].map((n) => ({ name, atS: 1 + 1.4 * (5 * i + n), seed: seed + 10 * i + n }))),
  );

test('false triggers that are corrected are fewer the next time, and no word is lost', () => {
  const triggers = hear(chatter(200));
  const wrong = triggers.filter(({ kind }) => kind === 'word').length;
  expect(wrong, 'without talk some of it is taken for words').toBeGreaterThan(1);
  const learned = triggers.map((hearing, i) => ({ of: `t${i}`, word: undefined, stretch: kept(hearing).stretch }));
  const after = modelOf({ ...TEACHING, learned });
  const again = hear(chatter(300)).filter(({ kind }) => kind === 'word').length;
  const less = hear(chatter(300), after).filter(({ kind }) => kind === 'word').length;
  expect(less).toBeLessThan(again);
  expect(hear(room(9, SAID), after).map(nameOf)).toEqual(SAID.map(({ name }) => name));

  const known = [
    ...triggers.map((hearing, i) => knownOf(hearing, `t${i}`, null)),
    ...HEARD.map((hearing, i) => knownOf(hearing, `h${i}`, wordOf(hearing))),
  ];
  const change = compareModels(MODEL, after, known);
  expect(change).toMatchObject({ words: HEARD.length, lost: 0, won: 0, falseBefore: wrong });
  expect([change.others, change.leftOut]).toEqual([triggers.length, 0]);
  expect(change.falseAfter).toBeLessThan(wrong);
});

test('an ear that has not changed changes nothing, whatever was heard and whatever the live ear knew besides', () => {
  const stretches = [...HEARD, ...hear(chatter(200))];
  const known = stretches.flatMap((hearing, i) =>
    ['hold', 'mark', 'lifted'].flatMap((nearest) =>
      [0, 0.001, 0.4, 0.51, 0.999, 1].map((confidence): Known => {
        const heard = confidence > 0.5 ? nearest : null;
        return { ...knownOf(hearing, `${i} ${nearest} ${confidence}`, 'hold'), nearest, heard, confidence };
      }),
    ),
  );
  // Two of three words, three of six confidences.
  const wrong = 2 * 3 * stretches.length;
  expect(compareModels(MODEL, MODEL, known)).toEqual({
    ...{ words: known.length, others: 0, leftOut: 0, lost: 0, won: 0, falseBefore: wrong, falseAfter: wrong },
  });
});

test('a stretch of a word that is no longer taught, and one of another ear, are left out of the count', () => {
  const known = HEARD.map((hearing, i) => ({ ...knownOf(hearing, `h${i}`, nameOf(hearing)), heard: 'undo', nearest: 'undo' }));
  const other = knownOf(HEARD[0] as Hearing, 'other', 'hold');
  const all = [...known, { ...other, stretch: { ...other.stretch, features: 'fused' } }];
  expect(compareModels(MODEL, MODEL, all)).toEqual({
    ...{ words: 0, others: 0, leftOut: HEARD.length + 1, lost: 0, won: 0, falseBefore: 0, falseAfter: 0 },
  });
});

test('a stretch that was just unsure is won by a take that is like it, one that was far from a word is not, and its own take counts for nothing', () => {
  const [first] = HEARD as [Hearing];
  const after = modelOf({ ...TEACHING, learned: [{ of: 'x', word: 'hold', stretch: kept(first).stretch }] });
  const unsure = { ...knownOf(first, 'h0', 'hold'), heard: null, confidence: 0.49 };
  expect(compareModels(MODEL, after, [unsure])).toMatchObject({ words: 1, won: 1, lost: 0 });
  expect(compareModels(MODEL, after, [{ ...unsure, confidence: 1e-4 }])).toMatchObject({ won: 0 });
  expect(compareModels(MODEL, after, [{ ...unsure, of: 'x' }])).toMatchObject({ won: 0 });
});

test('a stretch is held out of its own judgement: what was learnt by heart proves nothing', () => {
  const lone = kept(hear(chatter(200)).find(({ kind }) => kind === 'word') as Hearing).stretch;
  const after = modelOf({ ...TEACHING, learned: [{ of: 'x', word: undefined, stretch: lone }] });
  const most = (of: string | null) => Math.max(...(createJudge(after)(lone, of)?.values() ?? []));
  expect(most(null)).toBeLessThan(most('x'));
  const without = createJudge({ ...after, templates: after.templates.filter(({ learnedOf }) => learnedOf !== 'x') });
  expect(createJudge(after)(lone, 'x')).toEqual(without(lone, null));
});

test('of what was learnt the newest stand: six of a word, twenty of talk, in their order', () => {
  const many = Array.from({ length: 60 }, (_, n) => ({ n, word: n % 2 === 0 ? 'hold' : undefined }));
  const stand = newestOf(many);
  expect(stand.filter(({ word }) => word === 'hold').map(({ n }) => n)).toEqual([48, 50, 52, 54, 56, 58]);
  expect(stand.filter(({ word }) => word === undefined)).toHaveLength(20);
  expect(stand.map(({ n }) => n)).toEqual(stand.map(({ n }) => n).toSorted((a, b) => a - b));
});
