/** Starts a worker of the crownfall command from its TypeScript source. */
import { register } from 'tsx/esm/api';

register();
const { drawInWorker } = await import('../src/jobs/draw-worker.ts');
drawInWorker();
