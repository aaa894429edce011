/** Hands homework out: as a file, as a code for the owner's camera, as a link, and as a sheet of paper. */
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import type { Homework } from '../../core/handover/homework.ts';
import { t } from '../../core/language.ts';
import type { Intents } from '../../session/app.ts';
import { useIntents } from '../app-context.tsx';
import { saveFile } from '../parts/save-file.ts';
import { sayDay } from '../parts/when.ts';
import { addressOf, isOnlyHere } from './address.ts';
import { CodePicture } from './code.tsx';
import css from './handover.module.css';
import { modulesOf } from './qr-modules.ts';

type Handed = Awaited<ReturnType<Intents['handOut']>>;

/** @param isNew false: it was given before, and is handed out once more. */
export function HandOut({ homework, isNew }: { homework: Homework; isNew: boolean }) {
  const { handOut, after } = useIntents();
  const [handed, setHanded] = useState<Handed | null>(null);
  const [said, setSaid] = useState('');
  useEffect(() => {
    let here = true;
    void handOut(homework).then((ready) => here && setHanded(ready));
    return () => {
      here = false;
    };
  }, [homework, handOut]);
  const { revision, dogName, givenAt, id } = homework;
  const save = async ({ file }: Handed) => {
    const done = await saveFile({ name: file.name, content: file.text, type: 'application/json' }, after);
    setSaid(
      done === 'called-off'
        ? ''
        : t('{file} is handed out. The owner opens it in Stillbeat, under Homework.', { file: file.name }),
    );
  };
  return (
    <section className="stack">
      <h2>
        {isNew
          ? t('Version {n} for {dog} is ready', { n: revision, dog: dogName })
          : t('Version {n} for {dog}, given on {day}', { n: revision, dog: dogName, day: sayDay(givenAt) })}
      </h2>
      <div className="row">
        <button
          type="button"
          className={isNew ? 'primary' : undefined}
          disabled={!handed}
          onClick={() => handed && void save(handed)}
        >
          {t('Save or share the file')}
        </button>
        <Link href={`/sheet/${encodeURIComponent(id)}`} className="button">
          {t('A sheet of paper')}
        </Link>
        <Link href="/desk" className="button">
          {t('To the desk')}
        </Link>
      </div>
      {said ? <p role="status">{said}</p> : null}
      {handed ? <Code code={handed.code} dogName={dogName} /> : null}
      <p className="soft">
        {t(
          'A digest in it shows damage on the way. It is no signature: that it is from you, the owner knows only by the way it comes. Nothing of it goes to a server: the link carries it in its last part, which browsers keep to themselves.',
        )}
      </p>
    </section>
  );
}

function Code({ code, dogName }: { code: string | null; dogName: string }) {
  const [said, setSaid] = useState('');
  if (code === null) return <p>{t('This browser cannot pack it into a code: use the file.')}</p>;
  const address = addressOf();
  const modules = modulesOf(address, code);
  const copy = async () => {
    const done = await navigator.clipboard.writeText(address + code).then(
      () => true,
      () => false,
    );
    setSaid(done ? t('The link is copied.') : t('This browser does not let a page copy. Use the file.'));
  };
  return (
    <>
      {modules ? (
        <figure className={css.code}>
          <CodePicture modules={modules} label={t('QR code of the homework for {dog}', { dog: dogName })} />
          <figcaption className="small soft">
            {t('The owner points the phone’s camera at it: Stillbeat opens there and shows this homework first.')}
          </figcaption>
        </figure>
      ) : (
        <p>
          {t('It is too much for a code that a camera reads easily. Use the file or the link, or shorten the plan or the note.')}
        </p>
      )}
      {isOnlyHere() ? (
        <p>{t('This page’s address is only known to this computer: another phone cannot open its links. Use the file.')}</p>
      ) : null}
      <div className="row">
        <button type="button" onClick={() => void copy()}>
          {t('Copy the link')}
        </button>
        <span role="status">{said}</span>
      </div>
    </>
  );
}
