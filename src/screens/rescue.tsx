/** Catches a screen that breaks: says so, keeps the session running underneath, and offers to draw it again. */
import { Component, type ReactNode } from 'react';
import css from './rooms.module.css';

interface Broken {
  readonly what: string | null;
}

export class Rescue extends Component<{ children: ReactNode }, Broken> {
  override state: Broken = { what: null };

  static getDerivedStateFromError(error: unknown): Broken {
    return { what: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    if (this.state.what === null) return this.props.children;
    return (
      <main className={css.alone}>
        <h1>This screen broke</h1>
        <p>What you have said so far is kept, and the keys still work. ({this.state.what})</p>
        <div className="row">
          <button type="button" className="primary" onClick={() => this.setState({ what: null })}>
            Show it again
          </button>
        </div>
      </main>
    );
  }
}
