/** Sorts the tests into four projects: plain Node, a simulated page, a real browser, and the built app end to end. */
import react from '@vitejs/plugin-react';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { launchOptions } from './tests/support/chromium.ts';

const DOM = 'tests/**/*.dom.test.{ts,tsx}';
const BROWSER = 'tests/**/*.browser.test.{ts,tsx}';
const E2E = 'tests/e2e/**/*.e2e.test.ts';

const BUNDLED_FIRST = [
  ...['react', 'react/jsx-runtime', 'react/jsx-dev-runtime', 'react-dom', 'react-dom/client', '@testing-library/react'],
  ...['howler', 'dexie', 'zustand', 'wouter', 'valibot', 'fft.js', 'd3-scale', 'd3-shape', 'axe-core'],
];

export default defineConfig({
  plugins: [react()],
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: [DOM, BROWSER, E2E],
          // Some start a program; on two busy cores that takes longer than the usual 5 s.
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'dom',
          environment: 'jsdom',
          include: [DOM],
          setupFiles: ['tests/support/quiet-console.ts', 'tests/support/empty-page.ts'],
        },
      },
      {
        extends: true,
        // Bundled before the first test: one found on the way would reload the page under a running test.
        optimizeDeps: { include: BUNDLED_FIRST },
        test: {
          name: 'browser',
          include: [BROWSER],
          setupFiles: ['tests/support/quiet-console.ts', 'tests/support/empty-page.ts'],
          // One group after the other: sound that is timed must not share two cores with everything else.
          sequence: { groupOrder: 1 },
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({ launchOptions: launchOptions() }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
      {
        extends: true,
        test: {
          name: 'e2e',
          environment: 'node',
          include: [E2E],
          globalSetup: ['tests/support/built-app.ts'],
          // A spoken session plays in real time.
          testTimeout: 120_000,
          hookTimeout: 60_000,
          // Two at a time: a spoken session plays in real time and leaves room for another beside it.
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
