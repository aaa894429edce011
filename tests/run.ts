/** Runs everything that guards the app, tool by tool and test by test, and ends in one line of counts. */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { startVitest, type TestModule, type Vitest } from 'vitest/node';
import { findOrInstallChromium, whatToDo } from './support/chromium.ts';

const ROOT = join(import.meta.dirname, '..');
const BIN = join(ROOT, 'node_modules/.bin');
const NEEDS_CHROMIUM = /\.(browser|e2e)\.test\.tsx?$/;

interface Count {
  readonly passed: number;
  readonly failed: number;
  /** Each skipped test with its reason, so that none is out of sight. */
  readonly skipped: readonly string[];
}

interface Check {
  readonly name: string;
  readonly command: readonly [tool: string, ...words: string[]];
}

const CHECKS: readonly Check[] = [
  { name: 'format, lint and walls (biome)', command: ['biome', 'check', '.'] },
  { name: 'types, a room at a time (tsc)', command: ['tsc', '-b'] },
  { name: 'nothing unused (knip)', command: ['knip', '--no-progress'] },
  { name: 'build (vite)', command: ['vite', 'build', '--logLevel', 'warn'] },
  { name: 'weight (size-limit)', command: ['size-limit'] },
];

function secondsSince(startMs: number): string {
  return `${((performance.now() - startMs) / 1000).toFixed(1)} s`;
}

function check({ name, command: [tool, ...words] }: Check): Count {
  const startMs = performance.now();
  const run = spawnSync(join(BIN, tool), words, { cwd: ROOT, encoding: 'utf8' });
  const passed = run.status === 0;
  console.log(`${passed ? 'ok    ' : 'FAILED'}  ${name}  ${secondsSince(startMs)}`);
  if (!passed) console.log(`${run.stdout ?? ''}${run.stderr ?? ''}${run.error?.message ?? ''}`);
  return { passed: passed ? 1 : 0, failed: passed ? 0 : 1, skipped: [] };
}

function countModule(module: TestModule): Count {
  const file = relative(ROOT, module.moduleId);
  const tests = [...module.children.allTests()].map((test) => ({ name: test.fullName, result: test.result() }));
  const skipped = tests.filter(({ result }) => result.state === 'skipped' || result.state === 'pending');
  const failed = tests.filter(({ result }) => result.state === 'failed').length;
  // A file that could not be read, or whose own set-up failed, holds no failed test and has failed all the same.
  const brokenFile = failed === 0 && module.state() === 'failed' ? 1 : 0;
  return {
    passed: tests.length - skipped.length - failed,
    failed: failed + brokenFile,
    skipped: skipped.map(({ name, result }) => `${file} > ${name}: ${('note' in result && result.note) || 'no reason given'}`),
  };
}

function countTests(vitest: Vitest): Count[] {
  const strays = vitest.state.getUnhandledErrors().length;
  return [...vitest.state.getTestModules().map(countModule), { passed: 0, failed: strays, skipped: [] }];
}

/** Without a browser the tests that need one have failed; they are not quietly left out. */
function withoutChromium(): Count {
  const files = readdirSync(join(ROOT, 'tests'), { recursive: true, encoding: 'utf8' }).filter((name) =>
    NEEDS_CHROMIUM.test(name),
  );
  console.log(`FAILED  ${files.length} test files need Chromium:\n  ${files.join('\n  ')}\n\n${whatToDo()}\n`);
  return { passed: 0, failed: Math.max(files.length, 1), skipped: [] };
}

async function runTests(): Promise<Count[]> {
  const startMs = performance.now();
  const hasChromium = findOrInstallChromium() !== undefined;
  const project = hasChromium ? [] : ['node', 'dom'];
  try {
    const vitest = await startVitest('test', [], { watch: false, root: ROOT, project });
    const counts = countTests(vitest);
    await vitest.close();
    console.log(`tests (vitest)  ${secondsSince(startMs)}`);
    return hasChromium ? counts : [...counts, withoutChromium()];
  } catch (error) {
    console.log('FAILED  tests (vitest) could not start', error);
    return [{ passed: 0, failed: 1, skipped: [] }];
  }
}

function sum(counts: readonly Count[]): Count {
  return {
    passed: counts.reduce((total, { passed }) => total + passed, 0),
    failed: counts.reduce((total, { failed }) => total + failed, 0),
    skipped: counts.flatMap(({ skipped }) => skipped),
  };
}

async function main(): Promise<number> {
  const startMs = performance.now();
  const total = sum([...CHECKS.map(check), ...(await runTests())]);
  for (const line of total.skipped) console.log(`skipped  ${line}`);
  console.log(`\nAll of it took ${secondsSince(startMs)}.`);
  console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped.length} skipped`);
  return total.failed === 0 && total.passed > 0 ? 0 : 1;
}

process.exit(await main());
