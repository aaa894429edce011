/** A dog's treats: what the estimate is made of, and what may be given in a day and in a session. */
import { useEffect, useState } from 'react';
import type { Dog } from '../../core/event.ts';
import { type TreatBudget, treatBudget, treatsForSession, treatsLeftToday } from '../../core/treats.ts';
import { useApp, useIntents } from '../app-context.tsx';
import css from './dogs.module.css';

export function TreatFields({ dog }: { dog: Dog }) {
  return (
    <>
      <label>
        Weight, kg
        <input
          className={css.short}
          name="weightKg"
          type="number"
          inputMode="decimal"
          step="any"
          min="0.1"
          max="150"
          defaultValue={dog.weightKg}
        />
      </label>
      <fieldset className={css.choices}>
        <legend>Neutered</legend>
        {NEUTERED.map(([value, says]) => (
          <label key={value}>
            <input type="radio" name="neutered" value={value} defaultChecked={value === sayNeutered(dog)} />
            {says}
          </label>
        ))}
      </fieldset>
      <label>
        kcal in one treat
        <input
          className={css.short}
          name="kcalPerTreat"
          type="number"
          inputMode="decimal"
          step="any"
          min="0.1"
          max="500"
          defaultValue={dog.kcalPerTreat}
        />
      </label>
      <label>
        Treats in one session, at most (empty: what the day has left)
        <input
          className={css.short}
          name="treatsPerSession"
          type="number"
          inputMode="numeric"
          min="1"
          max="500"
          defaultValue={dog.treatsPerSession}
        />
      </label>
    </>
  );
}

const NEUTERED = [
  ['yes', 'yes'],
  ['no', 'no'],
  ['', 'not said'],
] as const;

function sayNeutered({ neutered }: Dog): string {
  if (neutered === undefined) return '';
  return neutered ? 'yes' : 'no';
}

/** @param dog as it is typed at this moment. */
export function Estimate({ dog }: { dog: Dog }) {
  const given = useGivenToday(dog.id);
  const budget = treatBudget(dog);
  if (!budget)
    return (
      <p className="soft">
        With its weight, and the kcal printed on the bag of treats, this tells how many treats a day and a session may have.
      </p>
    );
  return (
    <div className={css.estimate} role="status">
      <p>
        About {kcal(budget.dailyKcal)} a day ({kcal(budget.restingKcal)} at rest). At most a tenth of it in treats:{' '}
        <strong>{sayTreats(budget)}</strong>.
      </p>
      {budget.treatsADay === null || given === null ? null : <p>{sayToday(dog, given)}</p>}
      <p className="small soft">
        An estimate for a healthy adult: dogs of one weight differ up to threefold. What you pay comes off its meals. For a puppy,
        or a dog that is ill or should lose weight, ask your veterinarian.
      </p>
    </div>
  );
}

const kcal = (amount: number): string => `${Math.round(amount)} kcal`;

function sayTreats({ treatsKcal, treatsADay }: TreatBudget): string {
  return treatsADay === null ? `${kcal(treatsKcal)} a day` : `${treatsADay} treats a day, ${kcal(treatsKcal)}`;
}

function sayToday(dog: Dog, given: number): string {
  const left = treatsLeftToday(dog, given);
  const next = treatsForSession(dog, null, given);
  return `Given in practice today: ${given}, left: ${left}. The next session counts down from ${next}.`;
}

/** Null until it is counted; counted again after every session. */
function useGivenToday(dogId: string): number | null {
  const { treatsGivenToday } = useIntents();
  const heads = useApp((state) => state.heads);
  const [given, setGiven] = useState<number | null>(null);
  useEffect(() => {
    let wanted = heads.length >= 0;
    void treatsGivenToday(dogId).then((count) => wanted && setGiven(count));
    return () => {
      wanted = false;
    };
  }, [dogId, heads, treatsGivenToday]);
  return given;
}
