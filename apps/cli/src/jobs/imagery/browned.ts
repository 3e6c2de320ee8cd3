/** Suggests browned shares from aerial images: rows in the form of ratings, which count once a person has confirmed them. */
import { basename, dirname } from 'node:path';
import { writeCsv } from '@crownfall/exchange';
import { readProject, writeFiles } from '@crownfall/exchange/node';
import { crownOutline, crownShapeInPlane, equalAreaPlane, type Finding } from '@crownfall/geometry';
import {
  brownedShare,
  crownWindows,
  type FoliageHistogram,
  type FoliageSeparation,
  foliageOfCrowns,
  type Imagery,
  imageQuality,
  type MarkedCrown,
  markedPixels,
  type QualityFlag,
  regionInPixels,
  SUGGESTION_COLUMNS,
  type SuggestionRow,
  separateByMarks,
  separateByOtsu,
  suggestionRow,
  type VegetationIndex,
} from '@crownfall/imagery';
import { readSurvey, type Tree } from '@crownfall/survey';
import { findingsReport } from '../../reports/findings-report.ts';
import { EXIT } from '../../terminal/failure.ts';
import { type Progress, progressOn } from '../../terminal/progress.ts';
import type { CommonOptions } from '../job-options.ts';
import { forImages, type ImageChoice, type OpenImage } from './project-images.ts';

export interface BrownedOptions extends CommonOptions, ImageChoice {
  readonly out: string;
  /** Day the image was flown. */
  readonly flown: string;
  readonly index: VegetationIndex;
  readonly seed: number;
  readonly sound?: readonly string[];
  readonly browned?: readonly string[];
}

/** What was found in one image. */
interface ImageReport {
  readonly image: string;
  readonly crowns: number;
  readonly suggested: number;
  readonly refused: Readonly<Record<string, number>>;
  readonly quality: readonly QualityFlag[];
  /** How sound and browned leaves were told apart, or why they could not be. */
  readonly separation: string;
}

export async function browned(project: string, options: BrownedOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Reading ${project}`, 0);
  const input = await readProject(project);
  const { survey, findings } = readSurvey(input);
  if (survey.trees.length === 0) {
    progress.end();
    tell(project, options, [...input.findings, ...findings], []);
    return EXIT.dataStops;
  }
  checkMarks(survey.trees, options);
  const rows = new Map<string, SuggestionRow>();
  const reports: ImageReport[] = [];
  const found = await forImages(project, input.imagery, options, async (open) => {
    reports.push(await suggestFrom(open, survey.trees, options, progress, rows));
  }).finally(progress.end);
  const ordered = survey.trees.map(({ treeId }) => rows.get(treeId)).filter((row) => row !== undefined);
  if (ordered.length > 0) {
    const text = writeCsv(SUGGESTION_COLUMNS, ordered);
    await writeFiles(dirname(options.out), [{ name: basename(options.out), text }]);
  }
  tell(project, options, found.findings, reports);
  return ordered.length > 0 ? EXIT.done : EXIT.dataStops;
}

function checkMarks(trees: readonly Tree[], { sound, browned: marked }: BrownedOptions): void {
  const known = new Set(trees.map(({ treeId }) => treeId));
  const stray = [...(sound ?? []), ...(marked ?? [])].find((id) => !known.has(id));
  if (stray !== undefined) throw new RangeError(`--sound, --browned: expected ids of trees with a crown, got ${stray}`);
  if ((sound === undefined) !== (marked === undefined)) {
    throw new RangeError('--sound, --browned: expected both or neither; two crowns of each at least');
  }
}

async function suggestFrom(
  { name, image }: OpenImage,
  trees: readonly Tree[],
  options: BrownedOptions,
  progress: Progress,
  rows: Map<string, SuggestionRow>,
): Promise<ImageReport> {
  const open = trees.filter(({ treeId }) => !rows.has(treeId));
  const regions = regionsOf(image, open);
  progress.stage(`Looking at the crowns in ${basename(name)}`, 0.2);
  const marks: MarkedCrown[] = [];
  const { histogram, crowns } = await foliageOfCrowns(image, regions, {
    index: options.index,
    onCrown: (crown, window, cover) => {
      const mark = markOf(open[crown].treeId, options);
      if (mark !== null) marks.push({ mark, pixels: markedPixels(window, cover) });
    },
  });
  const quality = imageQuality(histogram);
  const separation = separated(histogram, marks, options);
  const report = { image: basename(name), crowns, quality };
  if ('separable' in separation) {
    return { ...report, suggested: 0, refused: {}, separation: separation.because };
  }
  progress.stage(`Judging the crowns in ${basename(name)}`, 0.6);
  const refused: Record<string, number> = {};
  let suggested = 0;
  for await (const { window, crowns: inWindow, covers } of crownWindows(image, regions)) {
    inWindow.forEach((crown, k) => {
      const share = brownedShare(window, covers[k], separation, { seed: options.seed });
      if (share.suggested) {
        suggested++;
        const { treeId } = open[crown];
        const facts = { flown: options.flown, image: basename(name), quality };
        rows.set(treeId, suggestionRow(treeId, share, separation, facts));
      } else refused[share.because] = (refused[share.because] ?? 0) + 1;
    });
  }
  return { ...report, suggested, refused, separation: separation.rule.by };
}

function regionsOf(image: Imagery, trees: readonly Tree[]): readonly (readonly Float64Array[])[] {
  const plane = equalAreaPlane(trees.map(({ at }) => [at.lon, at.lat]));
  return trees.map(({ crown }) => regionInPixels(image, plane, crownOutline(crownShapeInPlane(crown, plane)).region));
}

function markOf(treeId: string, { sound, browned: marked }: BrownedOptions): MarkedCrown['mark'] | null {
  if (sound?.includes(treeId)) return 'sound';
  return marked?.includes(treeId) ? 'browned' : null;
}

function separated(
  histogram: FoliageHistogram,
  marks: readonly MarkedCrown[],
  { sound }: BrownedOptions,
): FoliageSeparation | { readonly separable: false; readonly because: string } {
  if (sound !== undefined) {
    return separateByMarks(marks, histogram.white) ?? { separable: false, because: 'too-few-marks' };
  }
  const found = separateByOtsu(histogram);
  return found.separable ? { rule: found.rule, gate: found.gate, white: found.white } : found;
}

const WHY: Readonly<Record<string, string>> = {
  'no-pixels': 'no crown lies in the image',
  'leaf-off': 'hardly any leaf is green: flown out of leaf?',
  'one-kind': 'all leaves look alike; mark two sound and two browned crowns with --sound and --browned',
  'too-few-marks': 'fewer than two marked crowns of a kind lie in the image',
};

function tell(
  project: string,
  options: BrownedOptions,
  findings: readonly Finding[],
  reports: readonly ImageReport[],
): void {
  const suggested = reports.reduce((sum, report) => sum + report.suggested, 0);
  const written = suggested > 0 ? options.out : null;
  if (options.json) {
    process.stdout.write(`${JSON.stringify({ written, suggested, images: reports, findings }, null, 2)}\n`);
    return;
  }
  const lines = findings.length > 0 ? [findingsReport(project, findings, { all: false }), ''] : [];
  if (reports.length === 0)
    lines.push('No image could be looked at. Name one under "imagery" in project.json, or with --image.');
  for (const report of reports) lines.push(...inWords(report));
  lines.push(
    written === null
      ? 'Nothing was written.'
      : `Written to ${written}: ${suggested} suggestions. None counts as a rating before a person has looked at the crown and filled in confirmed_by.`,
  );
  process.stdout.write(`${lines.join('\n')}\n`);
}

function inWords({ image, crowns, suggested, refused, quality, separation }: ImageReport): readonly string[] {
  const why = WHY[separation];
  if (why !== undefined) return [`${image}: ${crowns} crowns, no suggestion: ${why}.`];
  const left = Object.entries(refused).map(([reason, count]) => `${count} ${reason}`);
  const flags = quality.length > 0 ? `; mind: ${quality.join(', ')}` : '';
  const rest = left.length > 0 ? ` (${left.join(', ')})` : '';
  return [`${image}: ${suggested} of ${crowns} crowns${rest}, told apart by ${separation}${flags}.`];
}
