/** Sends sessions on a homework back to the trainer, as a file from the owner's own hand. */
import { useEffect, useRef, useState } from 'react';
import type { Homework } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { saveFile } from '../parts/save-file.ts';

interface SendBackProps {
  readonly homework: Homework;
  /** Sessions that the trainer has not seen as they are now. */
  readonly due: number;
  /** The owner came for it: it is brought into sight. */
  readonly isAskedFor: boolean;
}

export function SendBack({ homework, due, isAskedFor }: SendBackProps) {
  const { returnHomework, noteReturned, after } = useIntents();
  const hasReturned = useApp((state) => state.library.homework.returned).some(({ homeworkId }) => homeworkId === homework.id);
  const [said, setSaid] = useState('');
  const part = useRef<HTMLElement>(null);
  useEffect(() => {
    if (!isAskedFor) return;
    part.current?.focus({ preventScroll: true });
    part.current?.scrollIntoView?.({ block: 'center' });
  }, [isAskedFor]);
  const send = async (again: boolean) => {
    const back = await returnHomework(homework.id, again);
    if (!back) return setSaid(t('There is nothing to send yet.'));
    const done = await saveFile({ name: back.file.name, content: back.file.text, type: 'application/json' }, after);
    if (done === 'called-off') return setSaid('');
    await noteReturned(homework.id, back.sessions);
    setSaid(sayDone(back.sessions.length, back.file.name));
  };
  return (
    <section ref={part} className="stack" tabIndex={-1}>
      <h3>{t('Send back to your trainer')}</h3>
      <p>{due === 0 ? sayNothing(hasReturned) : sayDue(due)}</p>
      <div className="row">
        {due > 0 ? (
          <button type="button" className={isAskedFor ? 'primary' : undefined} onClick={() => void send(false)}>
            {t('Send what is new')}
          </button>
        ) : null}
        {hasReturned ? (
          <button type="button" className="plain" onClick={() => void send(true)}>
            {t('Send all of it once more')}
          </button>
        ) : null}
      </div>
      <p role="status">{said}</p>
      <p className="soft small">
        {t(
          'The file holds these sessions, this plan, and what you noted of this dog, its pain too. No recordings of your words, no other dog.',
        )}
      </p>
    </section>
  );
}

const sayNothing = (hasReturned: boolean): string =>
  hasReturned ? t('Nothing new since you last sent.') : t('After your first session it can be sent from here.');

function sayDue(n: number): string {
  return n === 1
    ? t('1 session that your trainer has not seen yet.')
    : t('{n} sessions that your trainer has not seen yet.', { n });
}

function sayDone(n: number, file: string): string {
  return n === 1
    ? t('{file} is handed out, with 1 session. Send it to your trainer.', { file })
    : t('{file} is handed out, with {n} sessions. Send it to your trainer.', { file, n });
}
