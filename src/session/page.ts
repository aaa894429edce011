/** Owns what the page is told of itself: hidden, shown, going away. */

export interface PageEvents {
  readonly onHidden: () => void;
  readonly onShown: () => void;
}

export const reloadPage = (): void => location.reload();

/** Listens until the returned function is called. */
export function watchPage({ onHidden, onShown }: PageEvents): () => void {
  const look = () => (document.visibilityState === 'hidden' ? onHidden() : onShown());
  document.addEventListener('visibilitychange', look);
  return () => document.removeEventListener('visibilitychange', look);
}
