/** Lists the files that belong to the project, as git knows them, for the tests that look at all of them. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

export const ROOT = join(import.meta.dirname, '../..');

/** Paths from the root. New files count before they are committed; ignored and deleted ones do not. */
export function trackedFiles(): string[] {
  const words = ['ls-files', '--cached', '--others', '--exclude-standard', '-z'];
  const listing = execFileSync('git', words, { cwd: ROOT, encoding: 'utf8', maxBuffer: 64 << 20 });
  return [...new Set(listing.split('\0'))].filter((file) => file !== '' && existsSync(join(ROOT, file))).sort();
}
