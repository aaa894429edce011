/** Reads the form of one dog. */
import type { Dog } from '../../core/event.ts';
import { readCare } from './care-fields.tsx';

/** The dog as typed; null: it has no name. What was left empty is not said of it. */
export function readDog(form: FormData, { id, invented, archived }: Dog): Dog | null {
  const text = (field: string) => String(form.get(field) ?? '').trim();
  const name = text('name').normalize('NFC');
  if (name === '') return null;
  const neutered = text('neutered');
  return {
    ...{ id, invented, name, notes: text('notes') },
    ...readCare(form),
    ...numberIn('weightKg', text('weightKg')),
    ...numberIn('kcalPerTreat', text('kcalPerTreat')),
    ...numberIn('treatsPerSession', text('treatsPerSession')),
    ...(neutered === '' ? {} : { neutered: neutered === 'yes' }),
    ...(archived === undefined ? {} : { archived }),
    ...(text('owner') === '' ? {} : { owner: text('owner').normalize('NFC') }),
  };
}

function numberIn(field: 'weightKg' | 'kcalPerTreat' | 'treatsPerSession', typed: string): Partial<Dog> {
  const value = Number(typed);
  return typed !== '' && Number.isFinite(value) && value > 0 ? { [field]: value } : {};
}
