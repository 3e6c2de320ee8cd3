/**
 * An invented town of two blocks whose stained area is known in closed form. In each block a plaza holds a round crown wholly;
 * both crowns are of one host, equally large and equally browned, but only the first is galled.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const SPREAD_M = 8;
const BROWNED = 0.5;
/** The clean share decays with dose (coverage by randomly falling matter): S = π r² (1 − e^−s), k = w = 1, no drift. */
export const STAINED_M2 = Math.PI * (SPREAD_M / 2) ** 2 * (1 - Math.exp(-BROWNED));

const LON = -79.5;
const LAT = 27.25;
const SIDE_DEG = 0.0008;

export function writeTinyTown(folder: string): string {
  mkdirSync(folder, { recursive: true });
  const json = (name: string, value: unknown): void => writeFileSync(join(folder, name), JSON.stringify(value));
  json('project.json', {
    title: 'Tiny Town (invented)',
    season: 2026,
    units: 'metric',
    layers: {
      crowns: 'crowns.geojson',
      pavement: 'pavement.geojson',
      blocks: 'blocks.geojson',
      ratings: 'ratings.csv',
    },
    settings: { drift_rings: [] },
  });
  json('blocks.geojson', collection([square(0, 1, { block_id: 'GALLED' }), square(1, 1, { block_id: 'CLEAN' })]));
  json(
    'pavement.geojson',
    collection([
      square(0, 0.7, { pavement_id: 'P0', kind: 'plaza', surface: 'concrete' }),
      square(1, 0.7, { pavement_id: 'P1', kind: 'plaza', surface: 'concrete' }),
    ]),
  );
  json('crowns.geojson', collection([crown(0, 'T-GALLED'), crown(1, 'T-CLEAN')]));
  writeFileSync(join(folder, 'ratings.csv'), RATINGS);
  return folder;
}

const RATINGS = `tree_id,rated_on,rater,browned_pct,gall_load,cause,evidence
T-GALLED,2026-05-04,invented rater,${BROWNED * 100},heavy,frass,galls opened
T-CLEAN,2026-05-04,invented rater,${BROWNED * 100},none,none,no galls found
`;

const collection = (features: readonly unknown[]): unknown => ({ type: 'FeatureCollection', features });

/** A square about the middle of block `at`, `share` of its side long. */
function square(at: number, share: number, properties: Readonly<Record<string, string>>): unknown {
  const [x, y] = middle(at);
  const half = (SIDE_DEG * share) / 2;
  const ring = [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
    [x - half, y - half],
  ];
  return { type: 'Feature', properties, geometry: { type: 'Polygon', coordinates: [ring] } };
}

function crown(at: number, treeId: string): unknown {
  const [x, y] = middle(at);
  return {
    type: 'Feature',
    properties: { tree_id: treeId, host: 'Terminalia buceras', spread_m: SPREAD_M },
    geometry: { type: 'Point', coordinates: [x + SIDE_DEG / 5, y] },
  };
}

const middle = (at: number): [number, number] => [LON + at * SIDE_DEG, LAT];
