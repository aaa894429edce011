/** Builds the app once into a folder of its own, serves it on a free port, and hands the end-to-end tests its address. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build, preview } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the built app is served, with a slash at the end. */
    appUrl: string;
  }
}

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  // Not dist: somebody may be serving that one.
  const outDir = mkdtempSync(join(tmpdir(), 'stillbeat-e2e-'));
  await build({ logLevel: 'warn', mode: 'production', build: { outDir, emptyOutDir: true } });
  const server = await preview({ logLevel: 'warn', build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('The preview server has no port.');
  project.provide('appUrl', `http://127.0.0.1:${address.port}/`);
  return async () => {
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
}
