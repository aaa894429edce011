/** Hands the app down to the screens. */
import { createContext, useContext } from 'react';
import type { App } from '../session/app.ts';
import type { AppState } from '../session/app-state.ts';

const AppContext = createContext<App | null>(null);

export const AppProvider = AppContext.Provider;

function useWholeApp(): App {
  const app = useContext(AppContext);
  if (!app) throw new Error('screens: drawn outside of the app');
  return app;
}

/** One part of the state; the screen is drawn again only when that part changes. */
export function useApp<T>(select: (state: AppState) => T): T {
  return useWholeApp()(select);
}

export function useIntents(): App['intents'] {
  return useWholeApp().intents;
}
