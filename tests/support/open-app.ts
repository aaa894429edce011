/** Opens the built app in a real browser for an end-to-end test, and notes whatever it should not have said or asked for. */
import type { Browser, BrowserContext, Page } from 'playwright';
import { expect, inject } from 'vitest';
import { launchChromium } from './chromium.ts';

export interface Wish {
  /** A recording that is spoken once into the microphone, from the moment at which the page opens it. */
  readonly microphoneWav?: string;
  /** Default: a phone held upright, 390 by 844. */
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly colorScheme?: 'light' | 'dark';
  /** The browser's language, BCP 47. Default: what the browser came with, English. */
  readonly locale?: string;
  /** Where in the app to begin, as in `#/review`. */
  readonly at?: string;
}

export interface OpenedApp {
  readonly browser: Browser;
  readonly context: BrowserContext;
  readonly page: Page;
  /** Warnings, errors and foreign requests so far. A test that expects one takes it out. */
  readonly complaints: string[];
  /** Opens another page of the same browser profile, watched in the same way. */
  another(): Promise<Page>;
  /** Closes the browser, and fails when there were complaints. */
  close(): Promise<void>;
}

/** Writes down what no page of ours should do. */
export function watch(page: Page, origin: string, complaints: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'warning' || message.type() === 'error')
      complaints.push(`console.${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`uncaught: ${error.message}`));
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (url.origin !== origin && url.protocol.startsWith('http')) complaints.push(`foreign request: ${request.url()}`);
    // The app reads its own files and does nothing else, unless sync is switched on.
    else if (request.method() !== 'GET' || /^\/sync\//.test(url.pathname))
      complaints.push(`unasked request: ${request.method()} ${url.pathname}`);
  });
}

export async function openApp(wish: Wish = {}): Promise<OpenedApp> {
  const appUrl = inject('appUrl');
  const { origin } = new URL(appUrl);
  const complaints: string[] = [];
  const browser = await launchChromium({ shell: true, ...(wish.microphoneWav && { microphoneWav: wish.microphoneWav }) });
  const context = await browser.newContext({
    viewport: wish.viewport ?? { width: 390, height: 844 },
    colorScheme: wish.colorScheme ?? 'light',
    permissions: ['microphone'],
    ...(wish.locale === undefined ? {} : { locale: wish.locale }),
  });
  const another = async () => {
    const page = await context.newPage();
    watch(page, origin, complaints);
    await page.goto(appUrl + (wish.at ?? ''));
    return page;
  };
  const close = async () => {
    await browser.close();
    expect(complaints, 'nothing unexpected on the console or on the network').toEqual([]);
  };
  return { browser, context, page: await another(), complaints, another, close };
}
