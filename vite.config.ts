/** Tells vite how the app is built and served, and which few things the page may do in a browser. */
import { readFileSync } from 'node:fs';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { packInstalledWeights } from './src/command/ear-weights.ts';
import { noticesBesideThePage } from './src/command/notices.ts';
import { GERMAN_HOME } from './src/core/languages/german-home.ts';
import { INTRODUCTION, TITLE } from './src/screens/home/introduction.ts';

/** The page talks to its own origin and to nobody else; nothing inline runs. */
const CONTENT_POLICY = {
  'default-src': "'self'",
  'script-src': "'self'",
  'worker-src': "'self'",
  'style-src': "'self'",
  'img-src': "'self' blob:",
  'font-src': "'self'",
  'media-src': "'self' blob:",
  'connect-src': "'self'",
  'manifest-src': "'self'",
  'object-src': "'none'",
  'base-uri': "'none'",
  'form-action': "'none'",
} as const;

/**
 * What the server adds: threads take their policy from the answer that carries them, and the listening worker compiles its
 * kernel. The page itself still may not, because the policy written into it is the stricter one and both hold.
 */
const SERVED_POLICY = { ...CONTENT_POLICY, 'script-src': "'self' 'wasm-unsafe-eval'" };

/** Hot reloading injects inline scripts and styles, so only the development server allows them. */
const DEVELOPMENT_POLICY = {
  ...SERVED_POLICY,
  'script-src': "'self' 'wasm-unsafe-eval' 'unsafe-inline'",
  'style-src': "'self' 'unsafe-inline'",
};

/** What the app uses. Sharing a backup from a phone is left at its default: not every Chromium knows its name. */
const ALLOWED_FEATURES = ['microphone', 'screen-wake-lock', 'autoplay'];

/** What it never uses. Only names that browsers know: an unknown one is a warning on every page. */
const REFUSED_FEATURES = [
  'accelerometer',
  'camera',
  'clipboard-read',
  'display-capture',
  'encrypted-media',
  'fullscreen',
  'geolocation',
  'gyroscope',
  'hid',
  'idle-detection',
  'local-fonts',
  'magnetometer',
  'midi',
  'payment',
  'picture-in-picture',
  'publickey-credentials-get',
  'serial',
  'usb',
  'window-management',
  'xr-spatial-tracking',
];

function policyText(policy: Record<string, string>): string {
  return Object.entries(policy)
    .map(([directive, sources]) => `${directive} ${sources}`)
    .join('; ');
}

function headers(policy: Record<string, string>): Record<string, string> {
  return {
    'Content-Security-Policy': policyText({ ...policy, 'frame-ancestors': "'none'" }),
    'Permissions-Policy': [
      ...ALLOWED_FEATURES.map((name) => `${name}=(self)`),
      ...REFUSED_FEATURES.map((name) => `${name}=()`),
    ].join(', '),
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
  };
}

/** Writes the policy into the built page too, so that it holds on a static host that sends no headers. */
function policyInPage(): Plugin {
  return {
    name: 'stillbeat:policy-in-page',
    apply: 'build',
    transformIndexHtml: () => [
      // frame-ancestors is left out: browsers ignore it in a meta element, and say so on the console.
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: policyText(CONTENT_POLICY) },
        injectTo: 'head-prepend',
      },
    ],
  };
}

/** The first words are text of the page itself: they are read while the app is still on its way. `first.js` shows those of one language. */
function firstWordsInPage(): Plugin {
  const said = (language: string, title: string, words: string): string =>
    `<section id="first-${language}" lang="${language}" class="stack" hidden><h1>${title}</h1><p>${words}</p></section>`;
  const english = said('en', TITLE, INTRODUCTION);
  const german = said('de', GERMAN_HOME[TITLE], GERMAN_HOME[INTRODUCTION]);
  return {
    name: 'stillbeat:first-words-in-page',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: 'src/screens/home/first.ts', fileName: 'first.js' });
    },
    transformIndexHtml: {
      order: 'post',
      handler(html) {
        // What the words need is asked for before the app, which would fill every connection.
        const [sheet = ''] = html.match(/<link rel="stylesheet"[^>]*>/) ?? [];
        const early = `${sheet}<link rel="preload" as="script" href="./first.js">`;
        return html
          .replace(sheet, '')
          .replace('<script type="module"', `${early}$&`)
          .replace('<div id="root">', `<div id="first">${english}${german}</div><script src="./first.js"></script>$&`);
      },
    },
  };
}

/** Makes the app installable and whole without a network. An update waits until the person wants it. */
function offline(): Plugin[] {
  return VitePWA({
    registerType: 'prompt',
    // main.tsx registers it, by virtual:pwa-register: nothing is injected into the page.
    injectRegister: false,
    workbox: { globPatterns: ['**/*.{html,js,css,wav,woff2,svg,png,bin,txt}'], maximumFileSizeToCacheInBytes: 4 << 20 },
    manifest: {
      name: 'Stillbeat',
      short_name: 'Stillbeat',
      description: 'Practise holding still by voice. Everything stays on this device.',
      id: './',
      start_url: './',
      scope: './',
      display: 'standalone',
      background_color: '#f5f7f6',
      theme_color: '#0f766e',
      icons: [
        { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
        { src: 'icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
        { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
        { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      ],
    },
  });
}

/** The name under which the page asks for the network of the ear. */
const EAR_MODULE = 'virtual:ear-weights';

/** Takes the ear's network out of its package, checked by hash, and serves it as one file. Without it the ear works on cepstra. */
function earWeights(): Plugin {
  const packed = packInstalledWeights();
  let building = false;
  return {
    name: 'stillbeat:ear-weights',
    configResolved: ({ command }) => {
      building = command === 'build';
    },
    resolveId: (id) => (id === EAR_MODULE ? `\0${EAR_MODULE}` : null),
    load(id) {
      if (id !== `\0${EAR_MODULE}`) return null;
      if (!packed.ok) this.warn(`the ear does without its network: ${packed.wrong}`);
      else if (packed.without) this.warn(`the ear does without what takes out the noise: ${packed.without}`);
      if (!packed.ok) return 'export default null';
      if (!building) return `export default '/${EAR_FILE}'`;
      const file = this.emitFile({ type: 'asset', name: EAR_FILE, source: packed.file });
      return `export default import.meta.ROLLUP_FILE_URL_${file}`;
    },
    configureServer: ({ middlewares }) => {
      middlewares.use(`/${EAR_FILE}`, (_, response) => void response.end(packed.ok ? packed.file : ''));
    },
  };
}

const EAR_FILE = 'ear-weights.bin';

/** Under which terms others let us use their work; the link is in the settings. */
const LICENCES_FILE = 'licences.txt';

/** Vite lists what is bundled into the page; threads, service worker, fonts and networks are added here. */
function moreLicences(): Plugin {
  return {
    name: 'stillbeat:more-licences',
    apply: 'build',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const listed = bundle[LICENCES_FILE];
        if (listed?.type !== 'asset') this.error(`${LICENCES_FILE} was not made`);
        // The mark at its beginning says UTF-8 where a host does not: names of authors would be read as another's.
        listed.source = `\uFEFF${listed.source}\n${noticesBesideThePage()}`;
      },
    },
  };
}

/** A certificate that the phone trusts, when both paths are given (see `npm start -- --help`). */
function certificate(): { https: { cert: Buffer; key: Buffer } } | undefined {
  const { STILLBEAT_CERT: cert, STILLBEAT_KEY: key } = process.env;
  return cert && key ? { https: { cert: readFileSync(cert), key: readFileSync(key) } } : undefined;
}

export default defineConfig({
  // Relative, so that the built folder works under any path of any static host. Screens are therefore routed by hash.
  base: './',
  plugins: [react(), earWeights(), policyInPage(), firstWordsInPage(), moreLicences(), offline()],
  // The top level has no public folder: what keeps its name in the build is the icons.
  publicDir: 'src/icons',
  build: {
    target: 'es2023',
    license: { fileName: LICENCES_FILE },
    // A worklet inlined as data: would break the policy above.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // A person who starts the app wants its address, not the build's diary.
    chunkSizeWarningLimit: 700,
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  worker: { format: 'es' },
  server: { headers: headers(DEVELOPMENT_POLICY), ...certificate() },
  preview: { headers: headers(SERVED_POLICY), ...certificate() },
});
