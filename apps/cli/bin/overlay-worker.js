/** Starts a thread of the overlay from its TypeScript source. */
import { register } from 'tsx/esm/api';

register();
const { answerShares } = await import('../src/jobs/overlay/overlay-worker.ts');
answerShares();
