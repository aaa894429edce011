/** Rules as values: each judges, says itself in a sentence and a paragraph, and brings its evidence; what cannot judge is not offered. */
import { describe, expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { calls, events, open, sessionStart, type } from '../../demo/typed-session.ts';
import { chainOf } from '../../src/core/chain/automaton.ts';
import { visit } from '../../src/core/chain/visit.ts';
import { fold } from '../../src/core/fold.ts';
import {
  CHOICES,
  evidenceFor,
  explainRule,
  fewestToRaise,
  machineOf,
  nameRule,
  nextHold,
  type Rule,
  ruleKey,
  ruleOf,
  type SessionRule,
  STEADY,
  STEADY_AHEAD,
  sayRule,
  USUAL_PERCENTILE,
} from '../../src/core/rule.ts';
import type { Hold } from '../../src/core/statistics/hold-time.ts';
import { isStoredRule } from '../../src/core/stored-rule.ts';

const CAUTIOUS: SessionRule = { kind: 'cautious' };
const SEQUENTIAL: SessionRule = { kind: 'sequential' };
const slide = (kept: number, of: number): SessionRule => ({ kind: 'k-of-m', kept, of, window: 'sliding' });
const block = (kept: number, of: number): SessionRule => ({ kind: 'k-of-m', kept, of, window: 'blocks' });

/** Calls of a session that begins on the lowest step, under a rule. */
const under = (rule: SessionRule, reps: string) => calls(type(open({ ...sessionStart(DEMO_PLAN), rule }), reps));

describe('the session goes by the rule that it names', () => {
  test.each([
    ['steady rises on the first five of a hold', STEADY, 'kkkkk', ['raise hold-1']],
    ['cautious waits for nine', CAUTIOUS, 'kkkkk', []],
    ['cautious rises on nine', CAUTIOUS, 'kkkkkkkkk', ['raise hold-1']],
    ['sequential rises on six', SEQUENTIAL, 'kkkkkk', ['raise hold-1']],
    ['four of five rises in spite of a lift', slide(4, 5), 'klkkk', ['raise hold-1']],
    ['a block waits for its end', block(4, 5), 'kkkk', []],
    ['a block rises at its end', block(4, 5), 'kkkkk', ['raise hold-1']],
  ] as const)('%s', (_, rule, reps, called) => {
    expect(under(rule, reps)).toEqual(called);
  });

  test('a plan may name the usual rule that halves more, and no other way of halving', () => {
    expect(isStoredRule(STEADY_AHEAD)).toBe(true);
    expect(isStoredRule({ kind: 'steady', halving: 'always' })).toBe(false);
    expect(CHOICES).toContainEqual(STEADY_AHEAD);
    expect(CHOICES[0]).toEqual(STEADY);
  });

  test('cautious goes back on two lifts in four, steady does not yet', () => {
    expect(under(CAUTIOUS, 'h lkkl')).toEqual(['split hold-0~hold-1']);
    expect(under(STEADY, 'h lkkl')).toEqual([]);
  });

  test('a session of either way of halving folds to what was seen live', () => {
    for (const rule of [STEADY, STEADY_AHEAD]) {
      const played = type(open({ ...sessionStart(DEMO_PLAN), rule }), 'h ll kkkkk ll kkkkk kkkkk');
      const folded = fold(JSON.parse(JSON.stringify(events(played))));
      expect(folded.ok && folded.state).toEqual(played.state);
    }
  });

  test('a session that halved ahead while steady still did so folds as it went', () => {
    const played = type(open({ ...sessionStart(DEMO_PLAN), rule: STEADY_AHEAD }), 'h ll kkkkk ll');
    const then = events(played).map((event) =>
      event.type === 'session-started' ? { ...event, body: { ...event.body, rule: STEADY } } : event,
    );
    const folded = fold(then);
    expect(folded.ok && folded.state.standing.steps).toEqual(played.state.standing.steps);
  });

  test('a session from before there was a choice folds, and goes by steady', () => {
    const played = type(open({ ...sessionStart(DEMO_PLAN), rule: 'steady' }), 'kkkkk');
    const folded = fold(JSON.parse(JSON.stringify(events(played))));
    expect(folded.ok && folded.state.standing.rule).toEqual(STEADY);
    expect(ruleOf(undefined)).toEqual(STEADY);
  });
});

const ALL: readonly Rule[] = [...CHOICES, slide(8, 10), block(12, 20), USUAL_PERCENTILE];

describe.each(ALL.map((rule) => ({ name: nameRule(rule), rule })))('$name', ({ rule }) => {
  test('says itself in one sentence, and in a paragraph with its counts', () => {
    expect(sayRule(rule)).toMatch(/^[A-Z0-9][^.]*\.$/);
    expect(explainRule(rule)).toMatch(/\d/);
    expect(explainRule(rule).split('. ').length).toBeGreaterThan(1);
  });
});

test('no two rules share a name or a key', () => {
  expect(new Set(ALL.map(nameRule)).size).toBe(ALL.length);
  expect(new Set(ALL.map(ruleKey)).size).toBe(ALL.length);
});

test('the counts in the sentences are those of the machines', () => {
  expect(fewestToRaise(STEADY, 'duration')).toBe(5);
  expect(fewestToRaise(STEADY, 'handling')).toBe(9);
  expect(fewestToRaise(CAUTIOUS, 'duration')).toBe(9);
  expect(fewestToRaise(SEQUENTIAL, 'handling')).toBe(6);
  expect(fewestToRaise(slide(4, 5), 'handling')).toBe(5);
  expect(fewestToRaise(block(9, 10), 'handling')).toBe(10);
});

test('every rule on offer brings our row of evidence, those of the specification an earlier one, a rule of one’s own none', () => {
  for (const rule of CHOICES) {
    const [own, published] = evidenceFor(rule);
    expect(own?.from, nameRule(rule)).toBe('own');
    if (rule !== STEADY_AHEAD) expect(['confirmed', 'first'], nameRule(rule)).toContain(published?.from);
  }
  expect(evidenceFor(slide(8, 10))).toEqual([]);
  expect(evidenceFor(STEADY).map(({ dogs }) => dogs)).toEqual([2000, 4000]);
});

test('both comparisons agree that four of five is the quickest to raise too early and the hardest on the dog', () => {
  for (const from of [0, 1]) {
    const rows = CHOICES.flatMap((rule) => evidenceFor(rule)[from] ?? []);
    const fast = evidenceFor(slide(4, 5))[from];
    expect(rows.length).toBeGreaterThanOrEqual(CHOICES.length - 1);
    expect(Math.max(...rows.map(({ earlyRaises }) => earlyRaises))).toBe(fast?.earlyRaises);
    expect(Math.max(...rows.map(({ lifts }) => lifts))).toBe(fast?.lifts);
    expect(Math.min(...rows.map(({ reachTop }) => reachTop))).toBe(fast?.reachTop);
  }
});

test('the rule that halves ahead is better on the usual dogs than the default, and says what it does more', () => {
  const [ahead, usual] = [evidenceFor(STEADY_AHEAD)[0], evidenceFor(STEADY)[0]];
  expect(ahead?.lifts).toBeLessThan(usual?.lifts ?? 0);
  expect(sayRule(STEADY)).toContain('the first time the rise is halved');
  expect(explainRule(STEADY)).not.toContain('every return');
  expect(explainRule(STEADY_AHEAD)).toContain('at every return');
});

test('four of five raises a dog that truly keeps seven of ten twice as often as steady does', () => {
  const at = (rule: SessionRule) => visit(chainOf(machineOf(rule, 'handling')), 0.7).chanceToRaise;
  expect(at(slide(4, 5))).toBeGreaterThan(2 * at(STEADY));
});

describe('percentile', () => {
  const free = (...seconds: number[]): Hold[] => seconds.map((heldForS) => ({ heldForS, end: 'lifted' }));

  test('asks for more than the fifth lowest of the last ten: k is 5.5, the lower integer is easier', () => {
    expect(nextHold(USUAL_PERCENTILE, free(9, 1, 2, 3, 4, 5, 6, 7, 8, 10))).toEqual({ kind: 'beat', holdS: 5, rank: 5 });
  });

  test('looks at the last ten alone, and waits for ten', () => {
    expect(nextHold(USUAL_PERCENTILE, free(99, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10))).toEqual({ kind: 'beat', holdS: 5, rank: 5 });
    expect(nextHold(USUAL_PERCENTILE, free(1, 2))).toEqual({ kind: 'too-few', have: 2, need: 10 });
  });

  test('is refused as soon as one of those holds was marked: the marker ended it', () => {
    const holds: Hold[] = [...free(1, 2, 3, 4, 5, 6, 7, 8, 9), { heldForS: 3, end: 'marked' }];
    expect(nextHold(USUAL_PERCENTILE, holds)).toEqual({ kind: 'marked', marked: 1, of: 10 });
    expect(explainRule(USUAL_PERCENTILE)).toContain('not offered for marked holds');
  });

  test('cannot judge a session', () => {
    expect(isStoredRule(USUAL_PERCENTILE)).toBe(false);
    expect(CHOICES.map(({ kind }) => kind)).not.toContain('percentile');
  });
});

test.each([
  ['six of five', { kind: 'k-of-m', kept: 6, of: 5, window: 'sliding' }],
  ['a window of eleven that slides', { kind: 'k-of-m', kept: 9, of: 11, window: 'sliding' }],
  ['a window that neither slides nor blocks', { kind: 'k-of-m', kept: 4, of: 5, window: 'both' }],
  ['half a rep', { kind: 'k-of-m', kept: 4.5, of: 5, window: 'blocks' }],
  ['a name nobody knows', { kind: 'lucky' }],
  ['nothing', null],
])('%s is no rule that a session can run', (_, value) => {
  expect(isStoredRule(value)).toBe(false);
});
