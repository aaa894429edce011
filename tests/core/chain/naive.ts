/** A second way, written apart from the machines: rules as plain questions to the whole history, all outcomes tried. */

/** Outcomes on a step, oldest first, K kept and L lifted; answers by looking at the whole history. */
export type NaiveRule = (history: string) => 'stay' | 'raise' | 'return';

const lifts = (text: string) => text.split('L').length - 1;

/** The default: nine kept and at most one lift within the last ten (nine straight is enough), back on two running or three in five. */
export const naiveSteady: NaiveRule = (history) => {
  const ten = history.slice(-10);
  if (ten.length - lifts(ten) >= 9 && lifts(ten) <= 1) return 'raise';
  if (history.endsWith('LL') || lifts(history.slice(-5)) >= 3) return 'return';
  return 'stay';
};

/** On duration steps the first five all kept raise as well. */
export const naiveSteadyDuration: NaiveRule = (history) => (history === 'KKKKK' ? 'raise' : naiveSteady(history));

export const naiveCautious: NaiveRule = (history) => {
  const verdict = naiveSteady(history);
  return verdict !== 'raise' && lifts(history.slice(-4)) >= 2 ? 'return' : verdict;
};

/** Chance to have raised, and to have returned, within n trials: adds up every one of the 2^n outcomes, each cut where the rule decides. */
export function enumerate(rule: NaiveRule, p: number, n: number): { raised: number; returned: number } {
  const sum = { raised: 0, returned: 0 };
  for (let code = 0; code < 2 ** n; code++) {
    const outcomes = Array.from({ length: n }, (_, i) => ((code >> i) & 1 ? 'K' : 'L')).join('');
    const verdict = firstVerdict(rule, outcomes);
    const chance = p ** (n - lifts(outcomes)) * (1 - p) ** lifts(outcomes);
    if (verdict === 'raise') sum.raised += chance;
    if (verdict === 'return') sum.returned += chance;
  }
  return sum;
}

function firstVerdict(rule: NaiveRule, outcomes: string): 'stay' | 'raise' | 'return' {
  for (let n = 1; n <= outcomes.length; n++) {
    const verdict = rule(outcomes.slice(0, n));
    if (verdict !== 'stay') return verdict;
  }
  return 'stay';
}
