/** Catches a screen that breaks: says so, keeps the session running underneath, and offers to try again, save the data, copy a report. */
import { Component, type ReactNode, useState } from 'react';
import { t } from '../core/language.ts';
import { useIntents } from './app-context.tsx';
import css from './rooms.module.css';

interface Broken {
  readonly error: unknown;
  readonly isBroken: boolean;
}

class Boundary extends Component<{ children: ReactNode; onBroken: (error: unknown) => void }, Broken> {
  override state: Broken = { error: null, isBroken: false };

  static getDerivedStateFromError(error: unknown): Broken {
    return { error, isBroken: true };
  }

  override componentDidCatch(error: unknown): void {
    this.props.onBroken(error);
  }

  override render(): ReactNode {
    if (!this.state.isBroken) return this.props.children;
    return <BrokenScreen error={this.state.error} onAgain={() => this.setState({ error: null, isBroken: false })} />;
  }
}

export function Rescue({ children }: { children: ReactNode }) {
  const { noteBroken } = useIntents();
  return <Boundary onBroken={noteBroken}>{children}</Boundary>;
}

/** A chunk of an older version that is no longer on the server: only a fresh page helps. */
const isGone = (what: string): boolean =>
  /dynamically imported module|Importing a module script failed|error loading|Unable to preload CSS/i.test(what);

function BrokenScreen({ error, onAgain }: { error: unknown; onAgain: () => void }) {
  const intents = useIntents();
  const { report, reload } = intents;
  const [said, setSaid] = useState('');
  const what = error instanceof Error ? error.message : String(error);
  const save = async () => {
    // What saves a copy may be gone with the rest of an older version.
    const copy = await import('./parts/save-copy.ts').then(({ saveCopy }) => saveCopy(intents)).catch(() => null);
    if (copy?.kind === 'called-off') return setSaid('');
    setSaid(
      copy?.kind === 'handed-out'
        ? t('Your data is saved as a file.')
        : t('Your data cannot be read right now. Nothing was deleted.'),
    );
  };
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(report());
      setSaid(t('Copied. It holds no names and no sound; read it before you give it to anyone.'));
    } catch {
      setSaid(report());
    }
  };
  return (
    <main className={css.alone}>
      <h1>{t('This screen broke')}</h1>
      <p>{t('What you have said so far is kept, and the keys still work. ({what})', { what })}</p>
      <div className="row">
        <button type="button" className="primary" onClick={isGone(what) ? () => void reload() : onAgain}>
          {isGone(what) ? t('Load the page again') : t('Try again')}
        </button>
        <button type="button" onClick={() => void save()}>
          {t('Save my data')}
        </button>
        <button type="button" onClick={() => void copy()}>
          {t('Copy the report')}
        </button>
      </div>
      {said ? (
        <p role="status" className="pre">
          {said}
        </p>
      ) : null}
    </main>
  );
}
