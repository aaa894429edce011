/** Compares the spectrum of every sound with a short golden file that one can read. */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { RECIPES, type RecipeName } from '../../sounds/recipes.ts';
import { readPlainWav, shareDb } from './measure.ts';

const GOLDEN = new URL('../golden/sounds/spectra.json', import.meta.url);

/** Edges of the bands, Hz: about thirds of an octave where the sounds live, wide above. */
const EDGES_HZ = [0, 200, 350, 400, 450, 500, 560, 630, 710, 800, 900, 1000, 1250, 1600, 2000, 4000, 22_050];

/** Below this the last bit of the file decides, dB. */
const FLOOR_DB = -60;

type Bands = Record<string, number>;

/** Share of the energy in each band, whole dB. */
function bands(name: RecipeName): Bands {
  const sound = readPlainWav(readFileSync(new URL(`../../sounds/${name}.wav`, import.meta.url)));
  const rows = EDGES_HZ.slice(1).map((toHz, i) => {
    const fromHz = EDGES_HZ[i] ?? 0;
    return [`${fromHz}-${toHz} Hz`, Math.max(FLOOR_DB, Math.round(shareDb(sound, fromHz, toHz)))] as const;
  });
  return Object.fromEntries(rows);
}

const found = Object.fromEntries((Object.keys(RECIPES) as RecipeName[]).map((name) => [name, bands(name)]));
// A recipe was changed on purpose: GOLDEN=write npx vitest run --project node tests/sounds, then look at the difference.
if (process.env.GOLDEN === 'write') writeFileSync(GOLDEN, `${JSON.stringify(found, null, 1)}\n`);
const golden: Record<string, Bands> = JSON.parse(readFileSync(GOLDEN, 'utf8'));

test.each(Object.keys(RECIPES))('%s has the colour it had when somebody last listened to it', (name) => {
  expect(Object.keys(golden[name] ?? {})).toEqual(Object.keys(found[name] ?? {}));
  for (const [band, levelDb] of Object.entries(golden[name] ?? {})) {
    // One dB of rounding on either side.
    expect(Math.abs((found[name]?.[band] ?? 0) - levelDb), band).toBeLessThanOrEqual(1);
  }
});
