/** Makes an examination's list into a ladder. Apart from the list itself: the first screen knows that, and needs no cautions yet. */
import { cautionFor } from '../ladders.ts';
import type { Step } from '../plan.ts';
import type { ExamPlan } from './exam.ts';

/** So that an examination is a session like any other: the same words, the same log, the same picture. */
export function stepsOf({ items }: Pick<ExamPlan, 'items'>): readonly Step[] {
  return items.map(({ id, area, what, forS }): Step => {
    if (area === 'position') return { kind: 'duration', id, title: what, holdForS: forS };
    return { kind: 'handling', id, title: what, area, extent: '', forS, caution: cautionFor(area) };
  });
}
