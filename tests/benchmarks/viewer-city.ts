/** An invented city as a project's files, as large as wanted: what the viewer's benchmarks open. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { LineFile } from './line-file.ts';

const METRES_PER_DEGREE = 111_195;

/** Streets 60 m apart, sidewalks in both directions, crowns beside them, one block to each cell. Invented. */
export function writeViewerCity(folder: string, count: number): void {
  mkdirSync(folder, { recursive: true });
  const next = random(11);
  const cells = Math.ceil(0.1 * count);
  const side = Math.ceil(Math.sqrt(cells));
  const files = { crowns: 'crowns.geojsonl', pavement: 'pavement.geojsonl', blocks: 'blocks.geojsonl' };
  const [trees, pavement, blocks] = Object.values(files).map((name) => new LineFile(join(folder, name)));
  const ratings = new LineFile(join(folder, 'ratings.csv'));
  ratings.write('tree_id,rated_on,rater,browned_pct,gall_load,cause\n');
  for (let cell = 0; cell < cells; cell++) {
    const [x, y] = [60 * (cell % side), 60 * Math.floor(cell / side)];
    blocks.write(feature({ block_id: `B${cell}` }, box(x - 30, y - 30, 60, 60)));
    pavement.write(feature({ pavement_id: `P${2 * cell}`, kind: 'sidewalk' }, box(x - 26, y, 52, 2.5)));
    pavement.write(feature({ pavement_id: `P${2 * cell + 1}`, kind: 'carriageway' }, box(x - 26, y + 3, 52, 7)));
  }
  for (let tree = 0; tree < count; tree++) {
    const cell = Math.floor(next() * cells);
    const [x, y] = [60 * (cell % side) - 24 + 48 * next(), 60 * Math.floor(cell / side) + 5 * next()];
    const ring = Array.from({ length: 16 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 16;
      const radius = 3 + next();
      return position(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    });
    trees.write(feature({ tree_id: `T${tree}`, host: 'Terminalia buceras' }, [[...ring, ring[0]]]));
    if (tree % 50 > 0) ratings.write(`T${tree},2026-05-04,R1,${Math.floor(100 * next())},moderate,frass\n`);
  }
  for (const file of [trees, pavement, blocks, ratings]) file.end();
  const layers = { ...files, ratings: 'ratings.csv' };
  writeFileSync(
    join(folder, 'project.json'),
    JSON.stringify({ title: 'City (invented)', season: 2026, units: 'metric', layers }),
  );
}

function feature(properties: object, coordinates: number[][][]): string {
  return `${JSON.stringify({ type: 'Feature', properties, geometry: { type: 'Polygon', coordinates } })}\n`;
}

function box(x: number, y: number, width: number, height: number): number[][][] {
  const corners = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
    [x, y],
  ];
  return [corners.map(([cx, cy]) => position(cx, cy))];
}

function position(x: number, y: number): number[] {
  return [x / METRES_PER_DEGREE, y / METRES_PER_DEGREE];
}

/** Mulberry32. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
