/** A dog's treats: what the estimate is made of, and what may be given in a day and in a session. */
import { useEffect, useState } from 'react';
import type { Dog } from '../../core/event.ts';
import { type Message, t } from '../../core/language.ts';
import { settingsOf } from '../../core/settings.ts';
import { type TreatBound, type TreatBudget, treatBound, treatBudget, treatsLeftToday } from '../../core/treats.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { Rich } from '../parts/rich.tsx';
import css from './dogs.module.css';

export function TreatFields({ dog }: { dog: Dog }) {
  return (
    <>
      <label>
        {t('Weight, kg')}
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
        <legend>{t('Neutered')}</legend>
        {NEUTERED.map(([value, says]) => (
          <label key={value}>
            <input type="radio" name="neutered" value={value} defaultChecked={value === sayNeutered(dog)} />
            {t(says)}
          </label>
        ))}
      </fieldset>
      <label>
        {t('kcal in one treat')}
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
        {t('Treats in one session, at most (empty: what the day has left)')}
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
  return (
    <>
      {budget ? (
        <Budget {...{ dog, budget, given }} />
      ) : (
        <p className="soft">
          {t(
            'With its weight, and the kcal printed on the bag of treats, this tells how many treats a day and a session may have.',
          )}
        </p>
      )}
      {given === null ? null : <NextSession {...{ dog, given }} />}
    </>
  );
}

function Budget({ dog, budget, given }: { dog: Dog; budget: TreatBudget; given: number | null }) {
  const { dailyKcal, restingKcal, treatsADay } = budget;
  return (
    <div className={css.estimate} role="status">
      <p>
        <Rich
          say="About {daily} a day ({resting} at rest). At most a tenth of it in treats: {treats}."
          with={{ daily: kcal(dailyKcal), resting: kcal(restingKcal), treats: <strong>{sayTreats(budget)}</strong> }}
        />
      </p>
      {treatsADay === null || given === null ? null : <p>{sayToday(dog, given)}</p>}
      <p className="small soft">
        {t(
          'An estimate for a healthy adult: dogs of one weight differ up to threefold. What you pay comes off its meals. For a puppy, or a dog that is ill or should lose weight, ask your veterinarian.',
        )}
      </p>
    </div>
  );
}

/** Which of the bounds the next session counts down from: three can stand at once, and the least wins. */
function NextSession({ dog, given }: { dog: Dog; given: number }) {
  const atHand = useApp(({ library }) => settingsOf(library).limits.treats);
  const bound = treatBound(dog, atHand, given);
  if (!bound) return <p>{t('Nothing bounds the treats of a session yet: they are not counted.')}</p>;
  return (
    <p role="status">
      {t(COUNTS_FROM[bound.by], { n: bound.treats })}{' '}
      <span className="soft">
        {t('The least of three wins: what the day has left, what you set for one session, what the settings have at hand.')}
      </span>
    </p>
  );
}

const COUNTS_FROM = {
  day: 'The next session counts down from {n}: that is what the day has left.',
  session: 'The next session counts down from {n}: that is what you set for one session.',
  'at-hand': 'The next session counts down from {n}: that is what the settings have at hand.',
} as const satisfies Readonly<Record<TreatBound['by'], Message>>;

const kcal = (amount: number): string => t('{n} kcal', { n: Math.round(amount) });

function sayTreats({ treatsKcal, treatsADay }: TreatBudget): string {
  return treatsADay === null
    ? t('{kcal} a day', { kcal: kcal(treatsKcal) })
    : t('{n} treats a day, {kcal}', { n: treatsADay, kcal: kcal(treatsKcal) });
}

function sayToday(dog: Dog, given: number): string {
  return t('Given in practice today: {given}, left: {left}.', { given, left: treatsLeftToday(dog, given) ?? 0 });
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
