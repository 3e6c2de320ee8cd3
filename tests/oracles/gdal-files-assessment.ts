/** A small assessment with every awkward shape a file must hold. Invented; figures are arbitrary but distinct. */
import type { Assessment, BlockResult, PavementResult, TreeResult } from '@crownfall/assessment';
import type { LonLatGeometry } from '@crownfall/geometry';
import { DEFAULT_SETTINGS } from '@crownfall/survey';

const LON = -80.2;
const LAT = 25.77;

/** A square ring, `step` 1e-4 degrees (about 10 m) a side; wound clockwise on request. */
function ring(east: number, north: number, step: number, clockwise = false): Float64Array {
  const [x0, y0, x1, y1] = [
    LON + east * 1e-4,
    LAT + north * 1e-4,
    LON + (east + step) * 1e-4,
    LAT + (north + step) * 1e-4,
  ];
  return clockwise ? Float64Array.of(x0, y0, x0, y1, x1, y1, x1, y0) : Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1);
}

const withHole: LonLatGeometry = { kind: 'area', polygons: [[ring(0, 0, 10), ring(2, 2, 3)]] };
const severalParts: LonLatGeometry = { kind: 'area', polygons: [[ring(20, 0, 5, true)], [ring(30, 0, 5, true)]] };

const stained = (value: number, ranged: boolean) => ({
  value,
  range80: ranged ? ([value * 0.9, value * 1.1] as const) : null,
  range95: ranged ? ([value * 0.8, value / 3 + value] as const) : null,
});

export function smallAssessment(): Assessment {
  const figures = (base: number, ranged: boolean) => ({
    pavementM2: base * 10 + 1 / 3,
    driplineM2: base * 2 + 1 / 7,
    falloutM2: base * 3 + 1e-9,
    stainedM2: stained(base * 1.5 + Math.PI, ranged),
  });
  const block = (rank: number, geometry: LonLatGeometry): BlockResult => ({
    ...figures(rank * 100, true),
    blockId: `B-${rank}`,
    name: rank === 1 ? 'Strand "Ü" — 1, östlich' : null,
    rank,
    score: 1 / (rank + 2),
    scoreParts: [{ criterion: 'stained', amount: 12.5, value: 0.25, weight: 0.5, points: 0.125 }],
    topShare: rank === 1 ? 0.9 : null,
    trees: 2,
    treesRated: 1,
    worstSeverityPct: rank === 1 ? 40 : null,
    complaintsOpen: 0,
    bloomState: 'open',
    calibrated: false,
    geometry,
    extra: { rank: 'theirs', ward: [1, 2], note: null },
  });
  const tree = (n: number, geometry: LonLatGeometry): TreeResult => ({
    ...figures(n, false),
    treeId: `T-${n}`,
    host: n === 1 ? 'Terminalia buceras' : null,
    blockId: n === 1 ? 'B-1' : null,
    at: { lon: LON, lat: LAT },
    crownM2: 50.2654824574 * n,
    spreadM: 8.0000001,
    severityPct: n === 1 ? 37.5 : null,
    severityFrom: n === 1 ? 'rating' : 'none',
    cause: 'frass',
    dose: 0.375,
    geometry,
    extra: {},
  });
  const piece = (n: number, geometry: LonLatGeometry): PavementResult => ({
    ...figures(n, false),
    pavementId: `P-${n}`,
    kind: 'plaza',
    surface: 'pavers',
    blockId: 'B-1',
    geometry,
    extra: {},
  });
  return {
    title: 'Small',
    season: 2026,
    units: 'metric',
    blocks: [block(1, withHole), block(2, severalParts)],
    trees: [tree(1, { kind: 'area', polygons: [[ring(1, 1, 1)]] }), tree(2, { kind: 'none' })],
    pavement: [
      piece(1, withHole),
      piece(2, severalParts),
      piece(3, { kind: 'area', polygons: [[ring(50, 0, 1, true)]] }),
    ],
    ledger: [
      { ...figures(3, true), blockId: 'B-1', kind: 'plaza' },
      { ...figures(4, true), blockId: null, kind: 'sidewalk' },
    ],
    blame: [],
    total: figures(7, true),
    findings: [],
    run: {
      settings: DEFAULT_SETTINGS,
      asOf: null,
      calibrated: false,
      draws: 0,
      seed: 1,
      plane: '+proj=laea',
      counts: {},
    },
  };
}
