/** Tells what an adjusted homework changes: step by step against the plan as it stands on the owner's device, the rest against the sending before. */
import { areaOf, criterionS, type HandlingStep, type Plan, type Step } from '../plan.ts';
import { ruleOf, type SessionRule, sameRule } from '../rule.ts';
import { HOMEWORK_WORDS, type Homework, type HomeworkWord } from './homework.ts';

/** What of a step may be other than it was. */
export type StepPart = 'title' | 'seconds' | 'place' | 'extent' | 'caution' | 'halfway';

export type HomeworkChange =
  /** `below`: the step under it; null: it is the easiest. */
  | { readonly kind: 'step-added'; readonly step: Step; readonly below: Step | null }
  | { readonly kind: 'step-removed'; readonly step: Step }
  | { readonly kind: 'step-moved'; readonly step: Step; readonly below: Step | null }
  | { readonly kind: 'step-changed'; readonly step: Step; readonly was: Step; readonly parts: readonly StepPart[] }
  | { readonly kind: 'rule'; readonly to: SessionRule }
  | { readonly kind: 'title' | 'position' | 'caution' | 'note'; readonly to: string }
  | { readonly kind: 'word'; readonly word: HomeworkWord; readonly to: string }
  | { readonly kind: 'sessions'; readonly from: number; readonly to: number };

/** In the order in which a trainer would say it: the steps from the easiest up, then how they are judged, then the rest. */
export function homeworkChanges(plan: Pick<Plan, 'steps' | 'rule'>, before: Homework, now: Homework): readonly HomeworkChange[] {
  const rule = ruleOf(now.rule);
  const texts = (['title', 'position', 'caution', 'note'] as const).filter((kind) => before[kind] !== now[kind]);
  return [
    ...stepChanges(plan.steps, now.steps),
    ...(sameRule(ruleOf(plan.rule), rule) ? [] : [{ kind: 'rule', to: rule } as const]),
    ...(before.sessionsAWeek === now.sessionsAWeek
      ? []
      : [{ kind: 'sessions', from: before.sessionsAWeek, to: now.sessionsAWeek } as const]),
    ...HOMEWORK_WORDS.filter((word) => before.words[word] !== now.words[word]).map(
      (word) => ({ kind: 'word', word, to: now.words[word] }) as const,
    ),
    ...texts.map((kind) => ({ kind, to: now[kind] }) as const),
  ];
}

function stepChanges(before: readonly Step[], now: readonly Step[]): readonly HomeworkChange[] {
  const was = new Map(before.map((step) => [step.id, step]));
  const isStill = new Set(now.map(({ id }) => id));
  const inPlace = keptInOrder(before, now);
  const there = now.flatMap((step, at): readonly HomeworkChange[] => {
    const below = now[at - 1] ?? null;
    const old = was.get(step.id);
    if (!old) return [{ kind: 'step-added', step, below }];
    const parts = partsChanged(old, step);
    return [
      ...(inPlace.has(step.id) ? [] : [{ kind: 'step-moved', step, below } as const]),
      ...(parts.length > 0 ? [{ kind: 'step-changed', step, was: old, parts } as const] : []),
    ];
  });
  const gone = before.filter(({ id }) => !isStill.has(id)).map((step) => ({ kind: 'step-removed', step }) as const);
  return [...there, ...gone];
}

/** As many steps as can be said to have stayed where they were: the longest run of ids that both ladders hold in one order. */
function keptInOrder(before: readonly Step[], now: readonly Step[]): ReadonlySet<string> {
  // [i][j]: the longest from step i of the one and step j of the other on. Sixty steps at most.
  const longest = Array.from({ length: before.length + 1 }, () => new Array<number>(now.length + 1).fill(0));
  const at = (i: number, j: number): number => longest[i]?.[j] ?? 0;
  for (let i = before.length - 1; i >= 0; i--)
    for (let j = now.length - 1; j >= 0; j--)
      (longest[i] as number[])[j] = before[i]?.id === now[j]?.id ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  const kept = new Set<string>();
  for (let i = 0, j = 0; i < before.length && j < now.length; ) {
    const id = before[i]?.id as string;
    if (id === now[j]?.id) {
      kept.add(id);
      i++;
      j++;
    } else if (at(i + 1, j) >= at(i, j + 1)) i++;
    else j++;
  }
  return kept;
}

function partsChanged(was: Step, is: Step): readonly StepPart[] {
  const differs: Readonly<Record<StepPart, boolean>> = {
    title: was.title !== is.title,
    seconds: criterionS(was) !== criterionS(is),
    place: areaOf(was) !== areaOf(is),
    extent: extentOf(was) !== extentOf(is),
    caution: (was.caution ?? '') !== (is.caution ?? ''),
    halfway: halfwayOf(was) !== halfwayOf(is),
  };
  return (Object.keys(differs) as StepPart[]).filter((part) => differs[part]);
}

const extentOf = (step: Step): string => (step.kind === 'handling' ? step.extent : '');

function halfwayOf(step: Step): string {
  const { halfway } = step as Partial<HandlingStep>;
  return halfway ? JSON.stringify([halfway.title, halfway.extent, halfway.forS]) : '';
}
