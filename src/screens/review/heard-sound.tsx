/** Plays what was heard, where the handler wished its sound kept; else nothing is drawn. */
import { useEffect, useState } from 'react';
import { t } from '../../core/language.ts';
import { useIntents } from '../app-context.tsx';

export function HeardSound({ eventId }: { eventId: string }) {
  const { hasHeardSound, playHeardSound } = useIntents();
  const [has, setHas] = useState(false);
  useEffect(() => {
    let wanted = true;
    void hasHeardSound(eventId).then((found) => wanted && setHas(found));
    return () => {
      wanted = false;
    };
  }, [eventId, hasHeardSound]);
  return has ? (
    <button type="button" onClick={() => void playHeardSound(eventId)}>
      {t('Hear it')}
    </button>
  ) : null;
}
