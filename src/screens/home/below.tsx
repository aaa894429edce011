/** What stands under the dogs on the first screen: homework and the desk, the sound check, the copy, another dog. */
import { Link } from 'wouter';
import { t } from '../../core/language.ts';
import { useApp } from '../app-context.tsx';
import { AddDog } from '../dogs/add-dog.tsx';
import { OnHome } from '../handover/on-home.tsx';
import { Rich } from '../parts/rich.tsx';
import { CopyNudge } from './copy-nudge.tsx';

/** @param fresh nothing was practised yet. */
export function Below({ fresh }: { fresh: boolean }) {
  // Working the takes out takes seconds: until then, that there are takes is answer enough.
  const taught = useApp(({ taught: worked, library }) => (worked ? worked.enrolled.ok : library.sounds.length > 0));
  const dogs = useApp((state) => state.library.dogs);
  return (
    <>
      <OnHome />
      {taught ? (
        <Link href="/sound">{t('Sound check')}</Link>
      ) : (
        <p>
          <Rich
            say="It does not know your voice yet: practise by buttons and keys now, or {teach} (two minutes)."
            with={{ teach: <Link href="/sound">{t('teach it your three words')}</Link> }}
          />
        </p>
      )}
      <AddDog />
      <Link href="/dogs">
        {dogs.some(({ archived }) => archived) ? t('Dogs, handlers, places, and who was put away') : t('Dogs, handlers, places')}
      </Link>
      {fresh ? null : <CopyNudge />}
    </>
  );
}
