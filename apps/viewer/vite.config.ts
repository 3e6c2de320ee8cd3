import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  build: { outDir: 'dist', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1500, assetsInlineLimit: 0 },
  // MapLibre ships its worker as an ES module of its own.
  worker: { format: 'es' },
  server: { proxy: { '/api': 'http://127.0.0.1:8137' } },
});
