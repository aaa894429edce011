/** The day and the place of an examination. */
import { type FormEvent, useId } from 'react';
import { type ExamPlan, isIsoDate } from '../../core/exam/exam.ts';
import { t } from '../../core/language.ts';
import { namedAs, placesIn } from '../../core/named.ts';
import { settingsOf } from '../../core/settings.ts';
import { useApp, useIntents } from '../app-context.tsx';
import css from './exam.module.css';

interface Props {
  readonly date: string;
  /** Its name. */
  readonly place: string;
  readonly says: string;
  readonly isPrimary?: boolean;
  readonly onSave: (when: Pick<ExamPlan, 'date' | 'place'>) => void;
}

export function WhenAndWhere({ date, place, says, isPrimary = false, onSave }: Props) {
  const library = useApp((state) => state.library);
  const { saveNamed, newId } = useIntents();
  const known = useId();
  const places = placesIn(library, settingsOf(library).place);
  const save = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const day = String(form.get('date'));
    const name = String(form.get('place')).trim().normalize('NFC');
    if (!isIsoDate(day)) return;
    if (name === '') return onSave({ date: day, place: '' });
    const named = namedAs(places, name, newId);
    if (!library.places.some(({ id }) => id === named.id)) await saveNamed('place', named);
    onSave({ date: day, place: named.id });
  };
  return (
    <form className={css.form} onSubmit={(event) => void save(event)}>
      <label>
        {t('The day')}
        <input name="date" type="date" required defaultValue={date} />
      </label>
      <label>
        {t('Where')}
        <input name="place" maxLength={60} autoComplete="off" list={known} defaultValue={place} />
        <datalist id={known}>
          {places.map(({ id, name }) => (
            <option key={id} value={name} />
          ))}
        </datalist>
      </label>
      <button type="submit" className={isPrimary ? 'primary' : undefined}>
        {says}
      </button>
    </form>
  );
}
