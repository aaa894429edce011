/** Finds the network's weights in the installed package, checks them by hash and packs them for the ear. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { CLEANER_SOURCE, packWeights, WEIGHTS_SOURCE } from '../hearing/weights/pack.ts';
import { type NetworkWeights, readWeights } from '../hearing/weights/shape.ts';

/** `without`: why the noise is not taken out. */
export type PackedWeights =
  | { readonly ok: true; readonly file: Uint8Array; readonly without?: string }
  | { readonly ok: false; readonly wrong: string };

/** Climbs from this file to the folder that holds an installed package. */
export function packageFolder(name: string = WEIGHTS_SOURCE.package): string | undefined {
  for (let at = dirname(fileURLToPath(import.meta.url)); ; at = dirname(at)) {
    const folder = join(at, 'node_modules', name);
    if (existsSync(folder)) return folder;
    if (dirname(at) === at) return undefined;
  }
}

/** The packed weights, as they are served to the browser and read by the command line. */
export function packInstalledWeights(folder = process.env.STILLBEAT_EAR_PACKAGE ?? packageFolder()): PackedWeights {
  const name = `${WEIGHTS_SOURCE.package} ${WEIGHTS_SOURCE.version}`;
  if (!folder) return { ok: false, wrong: `${name} is not installed` };
  const [mel, embedding] = WEIGHTS_SOURCE.files.map((file) => checked(folder, name, file));
  for (const file of [mel, embedding]) if (typeof file === 'string') return { ok: false, wrong: file };
  const cleaner = installedCleaner();
  const kept = typeof cleaner === 'string' ? undefined : cleaner;
  const file = packWeights(mel as Uint8Array, embedding as Uint8Array, kept);
  return typeof cleaner === 'string' ? { ok: true, file, without: cleaner } : { ok: true, file };
}

/** The bytes of one file of a package, or what is wrong with it. */
function checked(folder: string, name: string, { path, sha256 }: { path: string; sha256: string }): Uint8Array | string {
  const full = join(folder, path);
  if (!existsSync(full)) return `${path} is missing from ${name}`;
  const bytes = new Uint8Array(readFileSync(full));
  const isChecked = createHash('sha256').update(bytes).digest('hex') === sha256;
  return isChecked ? bytes : `${path} of ${name} is not the file that was checked`;
}

/** What takes the noise out, or why the ear does without. */
function installedCleaner(): Uint8Array | string {
  const name = `${CLEANER_SOURCE.package} ${CLEANER_SOURCE.version}`;
  const folder = packageFolder(CLEANER_SOURCE.package);
  return folder ? checked(folder, name, CLEANER_SOURCE.file) : `${name} is not installed`;
}

export type Weights = { readonly ok: true; readonly weights: NetworkWeights } | { readonly ok: false; readonly wrong: string };

export function loadWeights(): Weights {
  const packed = packInstalledWeights();
  if (!packed.ok) return packed;
  const read = readWeights(packed.file);
  return read.ok ? read : { ok: false, wrong: read.problem };
}
