/** Draws docs/pictures/town.svg, the README's picture, from the reckoned demo: `npx tsx scripts/draw-readme-map.ts`. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { assess, isStopped } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { svgText, townMap } from '@crownfall/sheets';
import { readSurvey } from '@crownfall/survey';

const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const input = await readProject(at('sample-geo'));
const outcome = assess(input);
if (isStopped(outcome)) throw new Error('the demo project has errors: run crownfall check sample-geo');
const { survey } = readSurvey(input);
const drawing = townMap(outcome, {
  water: survey.water.map((each) => each.geometry),
  streets: survey.streets,
  numbered: 20,
});
writeFileSync(at('docs/pictures/town.svg'), svgText(drawing));
