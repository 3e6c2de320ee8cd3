/** Proposes crown outlines for the trees that are points, and writes them as a file to look through. */
import { basename, dirname } from 'node:path';
import { writeGeoJson } from '@crownfall/exchange';
import { readProject, writeFiles } from '@crownfall/exchange/node';
import type { Finding } from '@crownfall/geometry';
import type { RawFeature } from '@crownfall/survey';
import { findingsReport } from '../../reports/findings-report.ts';
import { EXIT } from '../../terminal/failure.ts';
import { progressOn } from '../../terminal/progress.ts';
import type { CommonOptions } from '../job-options.ts';
import { outlinesOfImage, type TreeOutline, type TreePoint } from './outlines-of-image.ts';
import { forImages, type ImageChoice } from './project-images.ts';

export interface OutlineJobOptions extends CommonOptions, ImageChoice {
  readonly out: string;
}

export async function outline(project: string, options: OutlineJobOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Reading ${project}`, 0);
  const input = await readProject(project);
  const features = input.layers.crowns?.features ?? [];
  const drawn = features.flatMap(({ geometry }) =>
    geometry.kind === 'area' ? geometry.polygons.map(([shell]) => shell) : [],
  );
  const points = features.flatMap(treePoint);
  const answers = new Map<string, TreeOutline>();
  const found = await forImages(project, input.imagery, options, async ({ name, image }) => {
    const open = points.filter(({ treeId }) => answers.get(treeId)?.answer.proposed !== true);
    const outlines = await outlinesOfImage(image, open, drawn, (share) =>
      progress.stage(`Outlining crowns in ${basename(name)}`, share),
    );
    for (const each of outlines) answers.set(each.treeId, each);
  }).finally(progress.end);
  const all = [...answers.values()];
  const proposed = all.filter(({ answer }) => answer.proposed);
  if (all.length > 0) {
    const text = writeGeoJson(all.map(outFeature));
    await writeFiles(dirname(options.out), [{ name: basename(options.out), text }]);
  }
  tell(project, options, [...input.findings, ...found.findings], { points: points.length, all, images: found.used });
  return proposed.length > 0 || (points.length === 0 && features.length > 0) ? EXIT.done : EXIT.dataStops;
}

/** A tree that is a point; its spread bounds the proposal. */
function treePoint({ geometry, properties, row }: RawFeature): readonly TreePoint[] {
  if (geometry.kind !== 'point') return [];
  const id = properties.tree_id;
  const named = (typeof id === 'string' && id.trim() !== '') || typeof id === 'number';
  const spreadM = Number(properties.spread_m);
  return [
    {
      treeId: named ? String(id).trim() : `#${row}`,
      lon: geometry.points[0],
      lat: geometry.points[1],
      ...(Number.isFinite(spreadM) && spreadM > 0 ? { spreadM } : {}),
    },
  ];
}

function outFeature({ treeId, answer, lonLatRing }: TreeOutline) {
  if (!answer.proposed) {
    return { geometry: { kind: 'none' as const }, properties: { tree_id: treeId, refused: answer.because } };
  }
  return {
    geometry: { kind: 'area' as const, polygons: [[lonLatRing]] },
    properties: {
      tree_id: treeId,
      outlined_by: 'imagery',
      confidence: answer.confidence,
      area_m2: Number(answer.areaM2.toFixed(2)),
      free_border_pct: Math.round(100 * answer.freeBorder),
      roundness: Number(answer.roundness.toFixed(2)),
    },
  };
}

interface Told {
  readonly points: number;
  readonly all: readonly TreeOutline[];
  readonly images: number;
}

function tell(
  project: string,
  { json, out }: OutlineJobOptions,
  findings: readonly Finding[],
  { points, all, images }: Told,
): void {
  const counts: Record<string, number> = {};
  for (const { answer } of all) {
    const kind = answer.proposed ? answer.confidence : answer.because;
    counts[kind] = (counts[kind] ?? 0) + 1;
  }
  const proposed = all.filter(({ answer }) => answer.proposed).length;
  const written = all.length > 0 ? out : null;
  if (json) {
    process.stdout.write(`${JSON.stringify({ written, points, images, proposed, counts, findings }, null, 2)}\n`);
    return;
  }
  const lines = findings.length > 0 ? [findingsReport(project, findings, { all: false }), ''] : [];
  lines.push(`${points} trees are points; ${all.length} of them lie in an image.`);
  const detail = Object.entries(counts).map(([kind, count]) => `${count} ${kind}`);
  if (written !== null) {
    lines.push(`Written to ${written}: ${proposed} outlines (${detail.join(', ')}).`);
    lines.push('They are proposals: look at each, and take over into the crowns what is right.');
  } else lines.push('Nothing was written.');
  process.stdout.write(`${lines.join('\n')}\n`);
}
