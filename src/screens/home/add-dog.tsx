/** Adds a dog of the handler's own, with a ready ladder that can be changed later. */
import { type FormEvent, useState } from 'react';
import { useApp, useIntents } from '../app-context.tsx';
import css from './home.module.css';

export function AddDog() {
  const { saveDog, savePlan, newId } = useIntents();
  const ready = useApp((state) => state.library.plans[0]);
  const [open, setOpen] = useState(false);
  const add = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const name = String(form.get('name') ?? '')
      .trim()
      .normalize('NFC');
    if (!name || !ready) return;
    const id = newId();
    await saveDog({ id, name, notes: String(form.get('notes') ?? '').trim(), invented: false });
    await savePlan({ ...ready, id: newId(), dogId: id });
    setOpen(false);
  };
  if (!open)
    return (
      <div>
        <button type="button" onClick={() => setOpen(true)}>
          Add your dog
        </button>
      </div>
    );
  return (
    <form className="stack" onSubmit={(event) => void add(event)}>
      <h2>Your dog</h2>
      <div className={css.fields}>
        <label>
          Name
          <input name="name" required maxLength={60} autoComplete="off" />
        </label>
        <label>
          Worth knowing: pain, a veterinarian’s advice, food, what scares it
          <textarea name="notes" rows={3} maxLength={2000} />
        </label>
      </div>
      <p className="soft">
        A dog that has begun to refuse a touch, or flinches, may be in pain: ask your veterinarian before you practise there.
      </p>
      <div className="row">
        <button type="submit" className="primary">
          Add, with the ladder “{ready?.title}”
        </button>
        <button type="button" onClick={() => setOpen(false)}>
          Not now
        </button>
      </div>
    </form>
  );
}
