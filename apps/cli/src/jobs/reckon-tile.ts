/** Reckons the overlay of one tile of a project and writes it down, for a later run that puts all tiles together. */
import { isStopped, placeProject, sceneOf } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { overlayJob, ShareReckoner, sharesOf } from '@crownfall/geometry';
import { reportStopped } from '../reports/stopped-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';
import { fingerprintOf, type Tile, writeTile } from './overlay/tile-file.ts';

export interface TileOptions extends CommonOptions {
  readonly out: string;
  readonly tile: Tile;
}

export async function reckonTile(project: string, options: TileOptions): Promise<number> {
  const { tile, out, json } = options;
  const progress = progressOn(process.stderr, options.quiet === true);
  try {
    progress.stage(`Reading ${project}`, 0);
    const input = await readProject(project);
    progress.stage('Drawing crowns, pavement and blocks', 0.3);
    const placed = placeProject(input);
    if (isStopped(placed)) {
      progress.end();
      return reportStopped(input.title || project, placed.findings, options);
    }
    progress.stage(`Laying crowns over pavement, tile ${tile.number} of ${tile.count}`, 0.5);
    const job = overlayJob(sceneOf(placed), false);
    const share = sharesOf(job, tile.count)[tile.number - 1] ?? new Int32Array(0);
    const path = await writeTile(out, tile, fingerprintOf(placed), new ShareReckoner(job).reckon(share));
    progress.end();
    const words = `Tile ${tile.number} of ${tile.count}: ${share.length} of ${job.order.length} pavement pieces, in ${path}.`;
    process.stdout.write(`${json ? JSON.stringify({ tile, pieces: share.length, file: path }) : words}\n`);
    return EXIT.done;
  } finally {
    progress.end();
  }
}
