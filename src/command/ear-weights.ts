/** Finds the network's weights in the installed package, checks them by hash and packs them for the ear. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { packWeights, WEIGHTS_SOURCE } from '../hearing/weights/pack.ts';
import { type NetworkWeights, readWeights } from '../hearing/weights/shape.ts';

export type PackedWeights = { readonly ok: true; readonly file: Uint8Array } | { readonly ok: false; readonly wrong: string };

/** Climbs from this file to the folder that holds the installed package. */
export function packageFolder(): string | undefined {
  for (let at = dirname(fileURLToPath(import.meta.url)); ; at = dirname(at)) {
    const folder = join(at, 'node_modules', WEIGHTS_SOURCE.package);
    if (existsSync(folder)) return folder;
    if (dirname(at) === at) return undefined;
  }
}

/** The packed weights, as they are served to the browser and read by the command line. */
export function packInstalledWeights(folder = process.env.STILLBEAT_EAR_PACKAGE ?? packageFolder()): PackedWeights {
  const name = `${WEIGHTS_SOURCE.package} ${WEIGHTS_SOURCE.version}`;
  if (!folder) return { ok: false, wrong: `${name} is not installed` };
  const files: Uint8Array[] = [];
  for (const { path, sha256 } of WEIGHTS_SOURCE.files) {
    const full = join(folder, path);
    if (!existsSync(full)) return { ok: false, wrong: `${path} is missing from ${name}` };
    const bytes = readFileSync(full);
    if (createHash('sha256').update(bytes).digest('hex') !== sha256)
      return { ok: false, wrong: `${path} of ${name} is not the file that was checked` };
    files.push(bytes);
  }
  return { ok: true, file: packWeights(files[0] as Uint8Array, files[1] as Uint8Array) };
}

export type Weights = { readonly ok: true; readonly weights: NetworkWeights } | { readonly ok: false; readonly wrong: string };

export function loadWeights(): Weights {
  const packed = packInstalledWeights();
  if (!packed.ok) return packed;
  const read = readWeights(packed.file);
  return read.ok ? read : { ok: false, wrong: read.problem };
}
