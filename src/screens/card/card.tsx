/** The card for whoever examines a dog: the sheet, its print, and the two things that only the handler can fill in. */
import { type FormEvent, useMemo, useState } from 'react';
import { Link } from 'wouter';
import { cardOf } from '../../core/card/card.ts';
import type { Dog } from '../../core/event.ts';
import { t } from '../../core/language.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { useProgress } from '../compare/use-progress.ts';
import { CardFields, readCare } from '../dogs/care-fields.tsx';
import { withNamesNow } from '../progress/named-digests.ts';
import css from './card.module.css';
import { Sheet } from './sheet.tsx';

export function CardScreen({ dogId }: { dogId: string }) {
  const library = useApp((state) => state.library);
  const progress = useProgress();
  const dog = library.dogs.find(({ id }) => id === dogId);
  const card = useMemo(() => {
    if (!dog || !progress) return null;
    const { digests, exams, today } = progress;
    return cardOf({ dog, library, digests: withNamesNow(digests, library), exams: withNamesNow(exams, library), today });
  }, [dog, library, progress]);
  if (!dog)
    return (
      <div className="stack">
        <h1>{t('This dog is not on this device')}</h1>
        <Link href="/">{t('All dogs')}</Link>
      </div>
    );
  if (!card || !progress) return <h1 aria-busy="true">{dog.name}</h1>;
  return (
    <div className="stack wide">
      <div className={`row ${css.tools}`}>
        <button type="button" className="primary" onClick={() => print()}>
          {t('Print')}
        </button>
        <Link href={`/exam/${encodeURIComponent(dog.id)}`} className="button">
          {t('Plan an examination')}
        </Link>
        {progress.unread > 0 ? (
          <p>{t('Sessions that cannot be read and are not counted here: {n}.', { n: progress.unread })}</p>
        ) : null}
      </div>
      <Sheet card={card} />
      <FillIn key={dog.id} dog={dog} />
    </div>
  );
}

function FillIn({ dog }: { dog: Dog }) {
  const { saveDog } = useIntents();
  const [said, setSaid] = useState('');
  const save = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { signs: _, callWhom: __, ...others } = dog;
    await saveDog({ ...others, ...readCare(new FormData(event.currentTarget)) });
    setSaid(t('Saved.'));
  };
  return (
    <form className={`stack ${css.tools}`} onSubmit={(event) => void save(event)} onChange={() => setSaid('')}>
      <h2>{t('Fill in')}</h2>
      <div className={css.fields}>
        <CardFields dog={dog} />
      </div>
      <div className="row">
        <button type="submit">{t('Save')}</button>
        <Link href={`/dogs/${encodeURIComponent(dog.id)}`}>{t('About {dog}: notes and treats', { dog: dog.name })}</Link>
        <span role="status">{said}</span>
      </div>
    </form>
  );
}
