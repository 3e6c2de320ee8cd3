/**
 * A crown and a rating kept in a large city: `npx tsx tests/benchmarks/viewer-edits.ts [crowns] [edits]` (default 100000 crowns, 5
 * of each). The viewer's reckoner runs here in Node, as it runs in the page's worker. Told is each edit's time, in order.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readProject } from '@crownfall/exchange/node';
import type { CrownRecord, RecordEdit } from '../../apps/viewer/src/edits/edit.ts';
import { ProjectReckoner } from '../../apps/viewer/src/reckoning/project-reckoner.ts';
import { writeViewerCity } from './viewer-city.ts';

const [crowns = 100_000, edits = 5] = process.argv.slice(2).map(Number);
const folder = mkdtempSync(join(tmpdir(), 'viewer-edits-'));
writeViewerCity(folder, crowns);
const input = await readProject(folder);
rmSync(folder, { recursive: true, force: true });

const begun = performance.now();
const reckoner = new ProjectReckoner(input);
console.log(`${crowns} crowns: reckoned in ${((performance.now() - begun) / 1000).toFixed(1)} s`);
const kept: RecordEdit[] = [];
tell('a crown moved by a decimetre', (tree) => crownEdit(tree));
tell('a rating', (tree) => ratingEdit(tree));

function tell(name: string, editOf: (treeId: string) => RecordEdit): void {
  const times = Array.from({ length: edits }, (_, i) => {
    kept.push(editOf(`T${Math.floor(((i + 0.5) * crowns) / edits)}`));
    const start = performance.now();
    reckoner.setEdits([...kept]);
    return (performance.now() - start).toFixed(0);
  });
  console.log(`${name}: ${times.join(', ')} ms`);
}

function crownEdit(treeId: string): RecordEdit {
  const before = reckoner.tree(treeId)?.crown as CrownRecord;
  if (before.geometry.type !== 'Polygon') throw new Error(`${treeId} is not outlined`);
  const coordinates = before.geometry.coordinates.map((ring) => ring.map(([lon, lat]) => [lon + 9e-7, lat]));
  return { kind: 'crown', treeId, before, after: { ...before, geometry: { type: 'Polygon', coordinates } } };
}

function ratingEdit(treeId: string): RecordEdit {
  const said = { rated_on: '2026-05-19', rater: 'AB', browned_pct: 80, cause: 'frass', gall_load: 'heavy' };
  return { kind: 'rating', treeId, after: { tree_id: treeId, ...said } };
}
