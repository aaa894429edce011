/** Deletes a dog, or everything, from this device for good: asked twice, with a copy offered first. */
import { useRef, useState } from 'react';
import { useApp, useIntents } from '../app-context.tsx';
import css from './settings.module.css';

type Target = { readonly kind: 'dog'; readonly id: string; readonly name: string } | { readonly kind: 'everything' };

export function Erase() {
  const dogs = useApp((state) => state.library.dogs);
  const heads = useApp((state) => state.heads);
  const { eraseDog, eraseEverything } = useIntents();
  const [target, setTarget] = useState<Target | null>(null);
  const [said, setSaid] = useState('');
  const dialog = useRef<HTMLDialogElement>(null);
  const ask = (asked: Target) => {
    setTarget(asked);
    dialog.current?.showModal();
  };
  const erase = async () => {
    dialog.current?.close();
    if (!target) return;
    const problem = target.kind === 'dog' ? await eraseDog(target.id) : await eraseEverything();
    setSaid(
      problem ? `Nothing was deleted. ${problem}` : target.kind === 'dog' ? `${target.name} is deleted from this device.` : '',
    );
  };
  const sessions = target?.kind === 'dog' ? heads.filter(({ started }) => started.body.dogId === target.id).length : heads.length;
  const whose =
    target?.kind === 'dog' ? `${target.name}, with every plan and` : 'Everything: dogs, plans, taught words, settings and';
  return (
    <section className="stack">
      <h2>Delete</h2>
      <p>Deleted is deleted: there is no way back but a copy you saved.</p>
      <div className="row">
        {dogs.map(({ id, name }) => (
          <button type="button" key={id} onClick={() => ask({ kind: 'dog', id, name })}>
            Delete {name}…
          </button>
        ))}
        <button type="button" onClick={() => ask({ kind: 'everything' })}>
          Delete everything…
        </button>
      </div>
      {said ? <p role="status">{said}</p> : null}
      <dialog ref={dialog} className={css.dialog} aria-labelledby="erase-title">
        <h3 id="erase-title">Delete for good?</h3>
        <p>
          {whose} {sessions === 1 ? '1 session' : `${sessions} sessions`} will be gone from this device.
        </p>
        <div className="row">
          <button type="button" onClick={() => dialog.current?.close()}>
            Keep it
          </button>
          <button type="button" onClick={() => void erase()}>
            Delete
          </button>
        </div>
      </dialog>
    </section>
  );
}
