/**
 * Writes to a project without end until it is killed: `node --import tsx store-crash-writer.ts FILE SEED`. Prints one line
 * per edit once the store has acknowledged it, so that whoever kills this program knows what must be in the file.
 */
import { writeSync } from 'node:fs';
// Not through the door, which would load every format there is before each kill.
import { openProjectStore } from '../../packages/exchange/src/node/store/open-project-store.ts';
import { acknowledged, crashEdits } from './store-crash-edits.ts';

const [file, seed] = process.argv.slice(2);
const { store } = await openProjectStore(file);
if (store === null) throw new Error('the store does not open');
writeSync(1, 'open\n');
for (const edits of crashEdits(Number(seed))) {
  const { records } = await store.records('crowns', { limit: 50 });
  const answer = await store.applyEdits(edits(records), { author: `run ${seed}`, at: '2026-05-20T10:00:00.000Z' });
  // Not through the stream, whose lines could be lost with the process.
  writeSync(1, `${acknowledged(answer)}\n`);
  if (answer.step !== null && answer.step % 7 === 0) {
    await store.undo({ author: `run ${seed}`, at: '2026-05-20T10:01:00.000Z' });
    writeSync(1, `${JSON.stringify({ undone: answer.step })}\n`);
  }
}
