import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { build, defineConfig, type Plugin } from 'vite';

const root = join(import.meta.dirname, '..', '..');

/** Files of the repository that the viewer ships beside its own: the demo and the typeface of the sheet. */
const SHIPPED: Readonly<Record<string, string>> = {
  'demo/tender-7.job.json': 'docs/examples/tender-7/tender-7.job.json',
  'demo/first-try.job.json': 'docs/examples/tender-7/first-try.job.json',
  'fonts/DejaVuSansCondensed.ttf': 'apps/cli/fonts/DejaVuSansCondensed.ttf',
  'fonts/DejaVuSansCondensed-Bold.ttf': 'apps/cli/fonts/DejaVuSansCondensed-Bold.ttf',
};

const shipped = (): Plugin => ({
  name: 'shipped-files',
  configureServer(server) {
    server.middlewares.use((request, response, next) => {
      const from = SHIPPED[(request.url ?? '').split('?')[0]!.slice(1)];
      if (from === undefined) return next();
      response.end(readFileSync(join(root, from)));
    });
  },
  generateBundle() {
    for (const [fileName, from] of Object.entries(SHIPPED))
      this.emitFile({ type: 'asset', fileName, source: readFileSync(join(root, from)) });
  },
});

/** What the built page may run, show and call: only what lies beside it. The pages of `runback view` say the same. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

const policy = (): Plugin => ({
  name: 'policy',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
      injectTo: 'head-prepend',
    },
  ],
});

const WORKER = 'sw.js';

/** Every file of a built site, with `/` between, and a version that changes with any of them. */
function filesOf(site: string): { files: readonly string[]; version: string } {
  const hash = createHash('sha256');
  const files = readdirSync(site, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(site, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((name) => name !== WORKER && !name.endsWith('.map'))
    .sort();
  for (const name of files) hash.update(`${name}\0`).update(readFileSync(join(site, name)));
  return { files, version: hash.digest('hex').slice(0, 16) };
}

/** Builds the service worker once all else is written, with the list of what it keeps. */
const offline = (): Plugin => {
  let site = '';
  return {
    name: 'offline',
    apply: 'build',
    configResolved({ root: viewer, build: { outDir } }) {
      site = resolve(viewer, outDir);
    },
    writeBundle: {
      order: 'post',
      sequential: true,
      handler: async () => {
        await build({
          configFile: false,
          publicDir: false,
          logLevel: 'warn',
          define: { KEPT: JSON.stringify(filesOf(site)) },
          build: {
            target: 'es2022',
            outDir: site,
            emptyOutDir: false,
            copyPublicDir: false,
            lib: {
              entry: join(import.meta.dirname, 'src/offline/sw.ts'),
              formats: ['iife'],
              name: 'worker',
              fileName: () => WORKER,
            },
          },
        });
      },
    },
  };
};

export default defineConfig({
  base: './',
  resolve: { conditions: ['@runback/source', 'browser', 'import', 'module', 'default'] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [shipped(), policy(), offline()],
  worker: { format: 'es' },
  build: { target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
});
