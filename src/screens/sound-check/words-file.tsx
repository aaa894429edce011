/** One handler's words as a file: saved for another device, and added from one after a look at what it holds. */
import { type ChangeEvent, useState } from 'react';
import { t } from '../../core/language.ts';
import { TALK } from '../../core/word.ts';
import { useIntents } from '../app-context.tsx';
import { saveFile } from '../parts/save-file.ts';
import { sayDay } from '../parts/when.ts';
import { wordName } from '../parts/word-names.ts';
import css from './sound-check.module.css';

type Looked = Awaited<ReturnType<ReturnType<typeof useIntents>['lookAtWords']>>;
type Offer = Extract<Looked, { ok: true }>['offer'];

export function WordsFile({ any }: { any: boolean }) {
  const { exportWords, lookAtWords, after } = useIntents();
  const [said, setSaid] = useState('');
  const [offer, setOffer] = useState<Offer | null>(null);
  const save = async () => {
    const file = await exportWords();
    if (file) {
      const done = await saveFile({ name: file.name, content: file.text, type: 'application/json' }, after);
      setSaid(done === 'called-off' ? '' : t('Saved as {file}.', { file: file.name }));
    } else setSaid(t('They cannot be read right now. Nothing was changed.'));
  };
  const look = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const [file] = input.files ?? [];
    if (!file) return;
    setOffer(null);
    setSaid(t('Reading…'));
    const looked = await lookAtWords(await file.text());
    input.value = '';
    setSaid(looked.ok ? '' : t('Nothing was changed. {why}', { why: looked.why }));
    setOffer(looked.ok ? looked.offer : null);
  };
  const add = async (wanted: Offer, withSettings: boolean) => {
    setOffer(null);
    setSaid(t('Adding…'));
    const result = await wanted.add(withSettings);
    setSaid(
      result.ok
        ? t('Added. The ear listens to {name} now.', { name: wanted.name })
        : t('Nothing was changed. {why}', { why: result.why }),
    );
  };
  return (
    <section className="stack">
      <h2>{t('5 · On another device')}</h2>
      <p>
        {t('Your takes, your talk, what corrections taught and your keys go into one file. It holds recordings of your voice.')}
      </p>
      <div className="row">
        <button type="button" disabled={!any} onClick={() => void save()}>
          {t('Save my words')}
        </button>
        <label className="stack">
          {t('Add words from a file')}
          <input type="file" accept="application/json,.json" onChange={(event) => void look(event)} />
        </label>
      </div>
      {offer ? (
        <Preview offer={offer} onAdd={(withSettings) => void add(offer, withSettings)} onLeave={() => setOffer(null)} />
      ) : null}
      {said ? (
        <p role="status" className="pre">
          {said}
        </p>
      ) : null}
    </section>
  );
}

/** As many as a person reads; the rest is counted. */
const SHOWN = 10;

interface PreviewProps {
  readonly offer: Offer;
  readonly onAdd: (withSettings: boolean) => void;
  readonly onLeave: () => void;
}

function Preview({ offer, onAdd, onLeave }: PreviewProps) {
  const { name, exportedAt, fresh, freshTakes, known, forgotten, refused, others } = offer;
  const [withSettings, setWithSettings] = useState(false);
  return (
    <div className={css.preview} role="status">
      <h3>{t('Words of {name}, saved {day}', { name, day: sayDay(exportedAt) })}</h3>
      <ul>
        <li>{t('New: {what}', { what: fresh.length > 0 ? fresh.map(sayWord).join(', ') : t('nothing#new') })}</li>
        <li>{sayKnown(known, forgotten)}</li>
        <li>{t('Refused: {what}', { what: refused.length })}</li>
      </ul>
      {refused.length > 0 ? (
        <ul className={css.refused}>
          {refused.slice(0, SHOWN).map((why) => (
            <li key={why}>{why}</li>
          ))}
          {refused.length > SHOWN ? <li>{t('and {n} more', { n: refused.length - SHOWN })}</li> : null}
        </ul>
      ) : null}
      {others > 0 && freshTakes > 0 ? (
        <p className={css.trouble}>
          {others === 1
            ? t('{name} has 1 other take here, and these would join them. If this is somebody else, leave it.', { name })
            : t('{name} has {n} other takes here, and these would join them. If this is somebody else, leave it.', {
                ...{ name, n: others },
              })}
        </p>
      ) : null}
      <label className={css.echo}>
        <input type="checkbox" checked={withSettings} onChange={(event) => setWithSettings(event.target.checked)} />
        {t('Use its keys, cues and volume here too')}
      </label>
      <div className="row">
        <button type="button" className="primary" onClick={() => onAdd(withSettings)}>
          {freshTakes > 0 ? t('Add what is new') : t('Listen to {name}', { name })}
        </button>
        <button type="button" onClick={onLeave}>
          {t('Leave it')}
        </button>
      </div>
    </div>
  );
}

function sayWord({ word, takes, learned }: Offer['fresh'][number]): string {
  const parts = [takes > 0 ? `${takes}` : '', learned > 0 ? t('{n} learnt', { n: learned }) : ''].filter(Boolean);
  return `${word === TALK ? t('talk#what else is said') : wordName(word)} (${parts.join(', ')})`;
}

function sayKnown(known: number, forgotten: number): string {
  if (forgotten === 0) return t('Here already: {what}', { what: known });
  return forgotten === 1
    ? t('Here already: {n}, of which 1 was forgotten here and stays so', { n: known })
    : t('Here already: {n}, of which {forgotten} were forgotten here and stay so', { n: known, forgotten });
}
