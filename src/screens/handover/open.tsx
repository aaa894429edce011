/** Opens homework from a link: what it says, then for which dog, then it is there to practise. */
import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import { t } from '../../core/language.ts';
import type { Intents } from '../../session/app.ts';
import { useIntents } from '../app-context.tsx';
import { Arrived } from './arrived.tsx';

type Opened = Awaited<ReturnType<Intents['openHomework']>>;

/** @param code what follows `#/homework/` in the link. */
export function OpenScreen({ code }: { code: string }) {
  const { openHomework } = useIntents();
  const [, go] = useLocation();
  const [opened, setOpened] = useState<Opened | null>(null);
  useEffect(() => {
    let here = true;
    void openHomework({ code }).then((read) => here && setOpened(read));
    return () => {
      here = false;
    };
  }, [code, openHomework]);
  if (!opened) return <h1 aria-busy="true">{t('Homework')}</h1>;
  // In place of the link: the way back must not accept it again.
  return (
    <Arrived
      opened={opened}
      onAccepted={() => go('/homework', { replace: true })}
      onLeave={() => go('/homework', { replace: true })}
    />
  );
}
