/** Owns what the page is told of itself: hidden, shown, going away. */
import { type LanguageTag, nearestLanguage, speak } from '../core/language.ts';
import type { Timers } from './timers.ts';
import type { Web } from './web.ts';

export interface PageEvents {
  readonly onHidden: () => void;
  readonly onShown: () => void;
}

/** Calls with whatever nobody caught; until the returned function is called. */
export function watchErrors(onError: (error: unknown) => void): () => void {
  const thrown = ({ error, message }: ErrorEvent) => onError(error ?? message);
  const rejected = ({ reason }: PromiseRejectionEvent) => onError(reason);
  addEventListener('error', thrown);
  addEventListener('unhandledrejection', rejected);
  return () => {
    removeEventListener('error', thrown);
    removeEventListener('unhandledrejection', rejected);
  };
}

/** Null: the language that the browser wishes, as near as there is one. The page tells it to screen readers and voices. */
export async function speakOnPage(chosen: LanguageTag | null): Promise<LanguageTag> {
  const tag = chosen ?? nearestLanguage(navigator.languages);
  await speak(tag);
  document.documentElement.lang = tag;
  return tag;
}

/** A hidden page paints nothing, ms. */
const PAINTS_WITHIN_MS = 200;

/** Resolves when what was drawn before can be seen. */
export function painted({ after }: Pick<Timers, 'after'>): Promise<void> {
  return new Promise((seen) => {
    requestAnimationFrame(() => after(0, seen));
    after(PAINTS_WITHIN_MS, seen);
  });
}

export const reloadPage = (): void => location.reload();

/** Past the service worker, which may go on handing out a version of which a part is gone. Without a network nothing is given up. */
export async function loadNewestPage({ fetch: ask }: Pick<Web, 'fetch'>): Promise<void> {
  const isThere = await ask('./index.html?newest', { cache: 'reload' }).then(
    ({ ok }) => ok,
    () => false,
  );
  const workers = isThere ? await navigator.serviceWorker?.getRegistrations() : [];
  for (const worker of workers ?? []) await worker.unregister();
  reloadPage();
}

/** Listens until the returned function is called. */
export function watchPage({ onHidden, onShown }: PageEvents): () => void {
  const look = () => (document.visibilityState === 'hidden' ? onHidden() : onShown());
  document.addEventListener('visibilitychange', look);
  return () => document.removeEventListener('visibilitychange', look);
}
