/**
 * Makes the invented town's project anew: `npx tsx sample-geo/generator/index.ts`. Seeded; the same files to
 * the byte each time.
 */
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { quadratNotes } from './life/field-notes.ts';
import { truthOf } from './life/truth.ts';
import { aerialPicture } from './picture/aerial.ts';
import { builtTown } from './town/town.ts';
import { layerFiles } from './write-layers.ts';
import { truthFile } from './write-truth.ts';

const folder = dirname(dirname(fileURLToPath(import.meta.url)));
const town = builtTown();
const truth = truthOf(town.trees);
const quadrats = quadratNotes(town, truth);
for (const [name, text] of layerFiles(town, truth, quadrats)) writeFileSync(join(folder, name), text);
const picture = aerialPicture(town, truth);
writeFileSync(join(folder, 'aerial.tif'), picture.bytes);
writeFileSync(join(folder, 'truth.json'), truthFile(truth, quadrats, picture));
