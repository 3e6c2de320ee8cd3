import { readFileSync } from 'node:fs';
import { cp } from 'node:fs/promises';
import { resolve } from 'node:path';
import { defineConfig, type Plugin } from 'vite';
import { walkShell } from './vite.shell.ts';

/** For the foot of visit sheets. */
const { version: VERSION } = JSON.parse(readFileSync(resolve(import.meta.dirname, 'package.json'), 'utf8'));
const SAMPLE = resolve(import.meta.dirname, '../../sample-geo');

/** The invented sample town goes with the page, so that it can be tried without a server that has a project. */
const sampleTown: Plugin = {
  name: 'sample-town',
  apply: 'build',
  writeBundle: ({ dir }) => {
    const layers = /\.(geojson|csv|tif)$|project\.json$|LICENSE$/;
    return cp(SAMPLE, resolve(dir ?? 'dist', 'demo'), {
      recursive: true,
      filter: (path) => path === SAMPLE || layers.test(path),
    });
  },
};

/** No module of ours, nor of the Parquet readers, does anything when it is imported: what is not used can go. */
const rolldownOptions = {
  treeshake: { moduleSideEffects: (id: string) => !/\/packages\/|\/hyparquet/.test(id) },
};

export default defineConfig({
  root: import.meta.dirname,
  define: { 'import.meta.env.CROWNFALL_VERSION': JSON.stringify(VERSION) },
  plugins: [sampleTown, walkShell],
  resolve: { alias: { hysnappy: resolve(import.meta.dirname, 'src/reckoning/snappy.ts') } },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 2000,
    assetsInlineLimit: 0,
    rolldownOptions: {
      ...rolldownOptions,
      // The desk, and the walk for the phone, which loads far less.
      input: { index: resolve(import.meta.dirname, 'index.html'), walk: resolve(import.meta.dirname, 'walk.html') },
    },
  },
  // MapLibre ships its worker as an ES module of its own.
  worker: { format: 'es', rolldownOptions },
  server: { proxy: { '/api': 'http://127.0.0.1:8137' } },
});
