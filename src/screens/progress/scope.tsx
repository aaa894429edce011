/** Lets the handler choose what progress is asked of: a plan, a body area or a step, a place, a person. */
import { useState } from 'react';
import type { Dog } from '../../core/event.ts';
import { type Message, t } from '../../core/language.ts';
import { BODY_AREAS, type BodyArea } from '../../core/plan.ts';
import { ANY, type Choice, valuesOf } from '../../core/progress/choice.ts';
import type { SessionDigest } from '../../core/progress/digest.ts';
import css from './progress.module.css';
import { personName, placeName } from './words.ts';

/** Dogs that have sessions; the one practised with last comes first. */
export function dogsIn(digests: readonly SessionDigest[], dogs: readonly Dog[]): readonly { id: string; name: string }[] {
  const newestFirst = digests.toSorted((a, b) => b.atMs - a.atMs);
  const name = (id: string) => dogs.find((dog) => dog.id === id)?.name ?? t('A dog that is not on this device');
  return valuesOf(newestFirst, ({ dogId }) => dogId).map((id) => ({ id, name: name(id) }));
}

export interface ScopeChoice {
  readonly choice: Choice;
  readonly planId: string | null;
  set(part: Partial<Choice>): void;
}

/** Begins with the plan that was practised last, whole. */
export function useScope(digests: readonly SessionDigest[]): ScopeChoice {
  const latest = digests.reduce<SessionDigest | null>(
    (last, digest) => (!last || digest.atMs >= last.atMs ? digest : last),
    null,
  );
  const [choice, setChoice] = useState<Choice>({ ...ANY, planId: latest?.planId ?? null });
  return { choice, planId: choice.planId, set: (part) => setChoice((before) => ({ ...before, ...part })) };
}

interface ChoicesProps {
  readonly digests: readonly SessionDigest[];
  readonly ladder: readonly { readonly id: string }[];
  readonly scope: ScopeChoice;
}

export function Choices({ digests, ladder, scope: { choice, set } }: ChoicesProps) {
  const plans = new Map(digests.map(({ planId, planTitle }) => [planId, planTitle]));
  const ofPlan = choice.planId === null ? digests : digests.filter(({ planId }) => planId === choice.planId);
  const places = valuesOf(ofPlan, ({ place }) => place);
  const people = valuesOf(ofPlan, ({ handler }) => handler);
  return (
    <div className={css.choices}>
      {plans.size > 1 ? (
        <Pick
          label={t('Plan')}
          all={t('all plans')}
          value={choice.planId}
          options={[...plans]}
          onPick={(planId) => set({ planId, stepId: null, area: null, place: null, handler: null })}
        />
      ) : null}
      <Pick
        label={t('What')}
        all={t('all steps')}
        value={whatOf(choice)}
        options={whatOptions(ofPlan, ladder, choice.planId)}
        onPick={(value) => set(partOf(value))}
      />
      {places.length > 1 ? (
        <Pick
          label={t('Where')}
          all={t('everywhere')}
          value={choice.place}
          options={places.map((place) => [place, placeName(place)])}
          onPick={(place) => set({ place })}
        />
      ) : null}
      {people.length > 1 ? (
        <Pick
          label={t('With')}
          all={t('everybody')}
          value={choice.handler}
          options={people.map((handler) => [handler, personName(handler)])}
          onPick={(handler) => set({ handler })}
        />
      ) : null}
    </div>
  );
}

const whatOf = ({ area, stepId }: Choice): string | null => (area ? `area ${area}` : stepId === null ? null : `step ${stepId}`);

function partOf(value: string | null): Partial<Choice> {
  const area = BODY_AREAS.find((one) => value === `area ${one}`) ?? null;
  return { area, stepId: area || value === null ? null : value.slice('step '.length) };
}

/** Areas first, then steps as on the ladder. Over all plans there are no steps: their names are a plan's own. */
function whatOptions(
  digests: readonly SessionDigest[],
  ladder: readonly { readonly id: string }[],
  planId: string | null,
): readonly (readonly [string, string])[] {
  const areas = new Set<BodyArea>();
  const steps = new Map<string, string>();
  for (const digest of digests)
    for (const { area, stepId, title } of digest.steps) {
      areas.add(area);
      steps.set(stepId, title);
    }
  const order = new Map(ladder.map(({ id }, nth) => [id, nth]));
  const inOrder = [...steps].sort(([a], [b]) => (order.get(a) ?? 1000) - (order.get(b) ?? 1000));
  return [
    ...BODY_AREAS.filter((area) => areas.has(area) && areas.size > 1).map((area) => [`area ${area}`, nameArea(area)] as const),
    ...(planId === null ? [] : inOrder.map(([id, title]) => [`step ${id}`, title] as const)),
  ];
}

interface PickProps {
  readonly label: string;
  readonly all: string;
  readonly value: string | null;
  readonly options: readonly (readonly [value: string, name: string])[];
  readonly onPick: (value: string | null) => void;
}

const nameArea = (area: BodyArea): string => t(AREAS[area]);

const AREAS = {
  position: 'position',
  ears: 'ears',
  eyes: 'eyes',
  mouth: 'mouth',
  paws: 'paws',
  'collar-and-neck': 'collar and neck',
  'coat-and-tail': 'coat and tail',
} as const satisfies Readonly<Record<BodyArea, Message>>;

/** No place and no plan is called this. */
const ALL = '\u0000';

function Pick({ label, all, value, options, onPick }: PickProps) {
  return (
    <label className={css.pick}>
      <span>{label}</span>
      <select value={value ?? ALL} onChange={({ target }) => onPick(target.value === ALL ? null : target.value)}>
        <option value={ALL}>{all}</option>
        {options.map(([one, name]) => (
          <option key={one} value={one}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
