/** The reckoning thread, straight from its TypeScript source. */
import { register } from 'tsx/esm/api';

register();
await import('../src/reckoning/thread.ts');
