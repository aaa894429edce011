/** Draws a part of the app whose code is fetched when it is first asked for. */
import { type ComponentType, type ReactNode, useEffect, useState } from 'react';

interface Code<P> {
  readonly load: () => Promise<ComponentType<P>>;
  here: ComponentType<P> | null;
}

/**
 * Nothing stands in its place meanwhile, and it stands as soon as its code is here. React's own `lazy` holds back what comes within
 * 300 ms after a gap was shown, even code that is here long since: every first tap on a place would take that long.
 * What cannot be fetched is thrown, as an error of drawing.
 */
export function fetched<P extends object>(load: Code<P>['load']): (props: P) => ReactNode {
  const code: Code<P> = { load, here: null };
  return (props) => <Fetched code={code} given={props} />;
}

function Fetched<P extends object>({ code, given }: { code: Code<P>; given: P }) {
  const [Part, setPart] = useState(() => code.here);
  const [failed, setFailed] = useState<{ readonly error: unknown } | null>(null);
  useEffect(() => {
    if (Part) return;
    let shown = true;
    code.load().then(
      (part) => {
        code.here = part;
        if (shown) setPart(() => part);
      },
      (error: unknown) => shown && setFailed({ error }),
    );
    return () => {
      shown = false;
    };
  }, [code, Part]);
  if (failed) throw failed.error;
  return Part ? <Part {...given} /> : null;
}
