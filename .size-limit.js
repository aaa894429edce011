/** Says how heavy the app may be, gzipped: what the first screen loads, each worker, each worklet, and all that is kept for use without a network. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';

const page = readFileSync('dist/index.html', 'utf8');
const assets = existsSync('dist/assets') ? readdirSync('dist/assets') : [];
const ears = existsSync('src/ears') ? readdirSync('src/ears') : [];

/** Exactly the scripts that the page itself asks for. */
const firstScreen = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map((match) => `dist/${match[1]}`);

/** One limit a file. None built is an error (a path that matches nothing) once the ears have such a thread. */
function threads(kind, limit) {
  const built = assets.filter((name) => name.includes(`.${kind}-`) && name.endsWith('.js'));
  const wanted = ears.some((name) => name.includes(`.${kind}.`));
  const names = built.length > 0 || !wanted ? built : [`*.${kind}-*.js`];
  return names.map((name) => ({ name, path: `dist/assets/${name}`, gzip: true, limit }));
}

/** All that is fetched for use without a network, weights and sounds too, as the service worker lists it. */
const precached = [...readFileSync('dist/sw.js', 'utf8').matchAll(/\{url:"([^"]+)"/g)].map(([, url]) => `dist/${url}`);

export default [
  { name: 'first screen', path: firstScreen, gzip: true, limit: '140 kB' },
  ...threads('worker', '60 kB'),
  ...threads('worklet', '5 kB'),
  {
    name: 'precache, not packed',
    path: precached.length > 0 ? precached : 'dist/no precache',
    gzip: false,
    brotli: false,
    limit: '4 MB',
  },
];
