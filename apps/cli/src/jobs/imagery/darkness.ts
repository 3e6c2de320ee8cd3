/** How dark visible pavement is in the crowns' fallout zones, by kind and surface, from the project's aerial images. */
import { basename } from 'node:path';
import { isStopped, placeProject } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { darknessJson, darknessReport, type ImageDarkness } from '../../reports/darkness-report.ts';
import { reportStopped } from '../../reports/stopped-report.ts';
import { EXIT } from '../../terminal/failure.ts';
import { progressOn } from '../../terminal/progress.ts';
import type { CommonOptions } from '../job-options.ts';
import { darknessOfImage } from './darkness-of-image.ts';
import { forImages, type ImageChoice } from './project-images.ts';

export interface DarknessOptions extends CommonOptions, ImageChoice {}

export async function darkness(project: string, options: DarknessOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Reading ${project}`, 0);
  const input = await readProject(project);
  const placed = placeProject(input);
  if (isStopped(placed)) {
    progress.end();
    return reportStopped(input.title || project, placed.findings, options);
  }
  const images: ImageDarkness[] = [];
  const { findings } = await forImages(project, input.imagery, options, async ({ name, image }) => {
    const surfaces = await darknessOfImage(image, placed, (share) =>
      progress.stage(`Looking at the pavement in ${basename(name)}`, share),
    );
    images.push({ image: basename(name), surfaces });
  }).finally(progress.end);
  const told = { project: input.title || project, units: input.units, images, findings };
  process.stdout.write(`${options.json ? darknessJson(told) : darknessReport(told)}\n`);
  const judged = images.some(({ surfaces }) => surfaces.some((surface) => surface.judged !== null));
  return judged ? EXIT.done : EXIT.dataStops;
}
