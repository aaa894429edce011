/** Owns what the page is told of itself: hidden, shown, going away. */

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

export const reloadPage = (): void => location.reload();

/** Listens until the returned function is called. */
export function watchPage({ onHidden, onShown }: PageEvents): () => void {
  const look = () => (document.visibilityState === 'hidden' ? onHidden() : onShown());
  document.addEventListener('visibilitychange', look);
  return () => document.removeEventListener('visibilitychange', look);
}
