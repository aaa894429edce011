/** Deletes a dog, or everything, from this device for good: asked twice, with a copy offered first. */
import { useRef, useState } from 'react';
import { t } from '../../core/language.ts';
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
      problem
        ? t('Nothing was deleted. {why}', { why: problem })
        : target.kind === 'dog'
          ? t('{dog} is deleted from this device.', { dog: target.name })
          : '',
    );
  };
  const sessions = target?.kind === 'dog' ? heads.filter(({ started }) => started.body.dogId === target.id).length : heads.length;
  return (
    <section className="stack">
      <h2>{t('Delete')}</h2>
      <p>{t('Deleted is deleted: there is no way back but a copy you saved.')}</p>
      <div className="row">
        {dogs.map(({ id, name }) => (
          <button type="button" key={id} onClick={() => ask({ kind: 'dog', id, name })}>
            {t('Delete {name}…', { name })}
          </button>
        ))}
        <button type="button" onClick={() => ask({ kind: 'everything' })}>
          {t('Delete everything…')}
        </button>
      </div>
      {said ? <p role="status">{said}</p> : null}
      <dialog ref={dialog} className={css.dialog} aria-labelledby="erase-title">
        <h3 id="erase-title">{t('Delete for good?')}</h3>
        <p>{target ? sayGone(target, sessions) : ''}</p>
        <div className="row">
          <button type="button" onClick={() => dialog.current?.close()}>
            {t('Keep it')}
          </button>
          <button type="button" onClick={() => void erase()}>
            {t('Delete')}
          </button>
        </div>
      </dialog>
    </section>
  );
}

function sayGone(target: Target, sessions: number): string {
  if (target.kind === 'dog')
    return sessions === 1
      ? t('{dog}, with every plan and 1 session will be gone from this device.', { dog: target.name })
      : t('{dog}, with every plan and {n} sessions will be gone from this device.', { dog: target.name, n: sessions });
  return sessions === 1
    ? t('Everything: dogs, plans, taught words, settings and 1 session will be gone from this device.')
    : t('Everything: dogs, plans, taught words, settings and {n} sessions will be gone from this device.', { n: sessions });
}
