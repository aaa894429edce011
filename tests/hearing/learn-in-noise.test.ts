/** Learning by an ear that takes the noise out, in quiet and in noise: what it weighs is judged again as it was weighed live. Words are made by code. */
import { describe, expect, test } from 'vitest';
import { loadWeights } from '../../src/command/ear-weights.ts';
import type { Hearing } from '../../src/hearing/decide.ts';
import { enrol, type Model, type Teaching } from '../../src/hearing/enrol.ts';
import { type Terms, weighScores } from '../../src/hearing/evidence.ts';
import { compareModels, createJudge, type Known } from '../../src/hearing/learn.ts';
import { createListener } from '../../src/hearing/listen.ts';
import type { Kept } from '../../src/hearing/memory.ts';
import type { NetworkWeights } from '../../src/hearing/weights/shape.ts';
import { type GlideName, room, say } from './sounds.ts';

const RATE_HZ = 16_000;
const loaded = loadWeights();

const takesOf = (name: GlideName) => [1, 2, 3].map((seed) => ({ samples: say(name, seed), sampleRateHz: RATE_HZ }));
const TEACHING: Teaching = {
  words: { hold: takesOf('hold'), mark: takesOf('mark'), lifted: takesOf('lifted') },
  talk: takesOf('good'),
};

interface Thought {
  readonly startedAtS: number;
  readonly margin: number;
  readonly terms: Terms | null;
}

const SAID = (['hold', 'mark', 'lifted', 'come', 'name', 'good', 'mark'] as const).map((name, i) => ({
  ...{ name, atS: 1 + 2 * i, seed: 40 + i },
}));

describe.skipIf(!loaded.ok)('what an ear keeps that takes the noise out', () => {
  const weights = (loaded as { weights: NetworkWeights }).weights;

  function modelOf(teaching: Teaching): Model {
    const enrolled = enrol(teaching, { weights });
    if (!enrolled.ok) throw new Error(JSON.stringify(enrolled.problems));
    return enrolled.model;
  }

  const model = loaded.ok ? modelOf(TEACHING) : null;

  /** Words, words of nobody's teaching, and a word that is talk, in a room of that much hiss. */
  function hear(hiss: number): { heard: readonly (Hearing & { readonly kept: Kept })[]; thoughts: readonly Thought[] } {
    const thoughts: Thought[] = [];
    const trace = (line: unknown) => thoughts.push(line as Thought);
    const listener = createListener(model as Model, { sampleRateHz: RATE_HZ, weights, keep: { sound: false }, trace });
    const track = room(16, SAID, RATE_HZ, hiss);
    const heard: Hearing[] = [];
    for (let at = 0; at < track.length; at += 320) heard.push(...listener.push(track.subarray(at, at + 320)));
    listener.close();
    return { heard: heard.flatMap((each) => (each.kept ? [{ ...each, kept: each.kept }] : [])), thoughts };
  }

  const termsOf = ({ thoughts }: ReturnType<typeof hear>, { startedAtS }: Hearing): Terms =>
    thoughts.find((thought) => thought.startedAtS === startedAtS)?.terms as Terms;
  const nearestOf = (hearing: Hearing) =>
    hearing.kind === 'word' ? hearing : (hearing.nearest[0] as { word: string; confidence: number });

  const LOUD_ROOM = 0.09;

  test('in a loud room what the templates of quiet rooms told may teach, and what they did not tell at all may not', () => {
    const loud = hear(LOUD_ROOM);
    const kinds = loud.heard.map((each) => each.kept.stretch.features);
    expect(kinds).toEqual(loud.heard.map((each) => (termsOf(loud, each).inQuiet > 0 ? 'cleaned' : 'cleaned, loud')));
    expect(new Set(kinds).size).toBe(2);
    const learned = loud.heard.map(({ kept: { stretch } }, i) => ({ of: `${i}`, word: 'hold', stretch }));
    const takes = modelOf({ ...TEACHING, learned }).templates.filter(({ learnedOf }) => learnedOf !== undefined);
    expect(new Set(takes.map(({ learnedOf }) => learnedOf)).size).toBe(kinds.filter((kind) => kind === 'cleaned').length);
  }, 60_000);

  test('what the scores spoke for live, they speak for when the kept stretch is judged again', () => {
    const judge = createJudge(model as Model);
    for (const hiss of [0.004, 0.07, LOUD_ROOM, 0.12]) {
      const all = hear(hiss);
      expect(all.heard.length).toBeGreaterThan(3);
      for (const hearing of all.heard) {
        const { inQuiet, lesser, mean } = termsOf(all, hearing);
        const live = weighScores({ inQuiet, inLoud: lesser, mean });
        const again = judge(hearing.kept.stretch, null)?.get(nearestOf(hearing).word) as number;
        // In a loud room the mean is of all templates live, and of those of quiet rooms again where these told it too.
        expect(Math.abs(again - live)).toBeLessThan(hearing.kept.stretch.features === 'cleaned' ? 0.6 : 0.01);
      }
    }
  }, 60_000);

  test('an ear that has not changed changes nothing of what it heard in any room, and nothing is left out', () => {
    for (const hiss of [0.004, LOUD_ROOM]) {
      const { heard } = hear(hiss);
      const known = heard.map((each, i): Known => {
        const { word: nearest, confidence } = nearestOf(each);
        const told = each.kind === 'word' ? nearest : null;
        return { of: `${i}`, stretch: each.kept.stretch, heard: told, nearest, confidence, truth: told };
      });
      const words = known.filter(({ truth }) => truth !== null).length;
      expect(compareModels(model as Model, model as Model, known)).toEqual({
        ...{ words, others: known.length - words, leftOut: 0, lost: 0, won: 0, falseBefore: 0, falseAfter: 0 },
      });
    }
  }, 60_000);

  test('what is far under the threshold is thought about, and how loud the handler speaks is known after three words', () => {
    const { thoughts } = hear(0.05);
    expect(Math.min(...thoughts.map(({ margin }) => margin))).toBeLessThan(-1.5);
    const unlike = thoughts.flatMap(({ terms }) => terms?.unlike ?? []);
    expect(unlike.slice(0, 3)).toEqual([0, 0, 0]);
    expect(Math.max(...unlike.slice(3))).toBeGreaterThan(0);
  }, 60_000);
});
