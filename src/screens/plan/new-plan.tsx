/** A new plan from a ready ladder: which dog, which position, which place. */
import { type FormEvent, useState } from 'react';
import { Link, useLocation } from 'wouter';
import {
  areaName,
  cautionFor,
  HANDLED_AREAS,
  type HandledArea,
  POSITIONS,
  type Position,
  positionWords,
  readyPlan,
} from '../../core/ladders.ts';
import { t } from '../../core/language.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { Rich } from '../parts/rich.tsx';
import css from './plan.module.css';

export function NewPlan() {
  const dogs = useApp((state) => state.library.dogs);
  const { savePlan, newId } = useIntents();
  const [, go] = useLocation();
  const [position, setPosition] = useState<Position>('chin-on-lap');
  const [area, setArea] = useState<HandledArea>('ears');
  const [dogId, setDogId] = useState<string | null>(null);
  const forDog = dogId ?? dogs.at(-1)?.id ?? '';
  const plan = readyPlan('', forDog, position, area);
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    const id = newId();
    await savePlan({ ...plan, id });
    go(`/plan/${encodeURIComponent(id)}`);
  };
  return (
    <form className="stack wide" onSubmit={(event) => void keep(event)}>
      <header className="stack">
        <h1>{t('A new plan')}</h1>
        <p>{t('Choose how your dog holds still and what you want to do. Every step can be changed afterwards.')}</p>
      </header>
      {dogs.length > 1 ? (
        <label className={css.field}>
          {t('Dog')}
          <select value={forDog} onChange={(event) => setDogId(event.target.value)}>
            {dogs.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      <Choices
        legend={t('Position')}
        options={POSITIONS.map((key) => [key, positionWords(key).name] as const)}
        value={position}
        onChoose={setPosition}
      />
      <Choices
        legend={t('Body area')}
        options={HANDLED_AREAS.map((key) => [key, areaName(key)] as const)}
        value={area}
        onChoose={setArea}
      />
      <section className="stack">
        <p>
          <Rich
            say="{n} steps, from {first} to {last}."
            with={{ n: plan.steps.length, first: <q>{plan.steps[0]?.title}</q>, last: <q>{plan.steps.at(-1)?.title}</q> }}
          />
        </p>
        <p>{cautionFor(area)}</p>
        <button type="submit" className="primary" disabled={forDog === ''}>
          {t('Keep this plan')}
        </button>
        <Link href="/settings">{t('Add a plan from a file: in the settings, under Your data')}</Link>
      </section>
    </form>
  );
}

interface ChoicesProps<K extends string> {
  readonly legend: string;
  readonly options: readonly (readonly [K, string])[];
  readonly value: K;
  readonly onChoose: (key: K) => void;
}

function Choices<K extends string>({ legend, options, value, onChoose }: ChoicesProps<K>) {
  return (
    <fieldset className={css.choices}>
      <legend>{legend}</legend>
      {options.map(([key, name]) => (
        <label key={key} className={css.choice}>
          <input type="radio" name={legend} value={key} checked={key === value} onChange={() => onChoose(key)} />
          {name}
        </label>
      ))}
    </fieldset>
  );
}
