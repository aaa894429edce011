/** Makes every sound of the app and writes it beside this script: `npm run sounds`. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { RECIPES } from './recipes.ts';
import { SAMPLE_RATE_HZ, synthesise } from './synth.ts';
import { wavBytes } from './wav.ts';

for (const [name, recipe] of Object.entries(RECIPES)) {
  const bytes = wavBytes(synthesise(recipe), SAMPLE_RATE_HZ);
  writeFileSync(fileURLToPath(new URL(`${name}.wav`, import.meta.url)), bytes);
  console.log(`${name}.wav  ${bytes.length} bytes`);
}
