/** Adds a dog of the handler's own, and leads on to its first plan. */
import { type FormEvent, useState } from 'react';
import { useLocation } from 'wouter';
import { t } from '../../core/language.ts';
import { useIntents } from '../app-context.tsx';
import { CareFields, readCare } from './care-fields.tsx';
import css from './dogs.module.css';

export function AddDog() {
  const { saveDog, newId } = useIntents();
  const [, go] = useLocation();
  const [open, setOpen] = useState(false);
  const add = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const name = String(form.get('name') ?? '')
      .trim()
      .normalize('NFC');
    if (!name) return;
    await saveDog({ id: newId(), name, notes: '', invented: false, ...readCare(form) });
    go('/plan/new');
  };
  if (!open)
    return (
      <div>
        <button type="button" onClick={() => setOpen(true)}>
          {t('Add your dog')}
        </button>
      </div>
    );
  return (
    <form className="stack" onSubmit={(event) => void add(event)}>
      <h2>{t('Your dog')}</h2>
      <div className={css.fields}>
        <label>
          {t('Name')}
          <input name="name" required maxLength={60} autoComplete="off" />
        </label>
        <CareFields />
      </div>
      <p className="soft">
        {t(
          'A dog that has begun to refuse a touch, or flinches, may be in pain: ask your veterinarian before you practise there.',
        )}
      </p>
      <div className="row">
        <button type="submit" className="primary">
          {t('Add, and choose a plan')}
        </button>
        <button type="button" onClick={() => setOpen(false)}>
          {t('Not now')}
        </button>
      </div>
    </form>
  );
}
