/** An assessment of one square block of 100 m with one crown, hand-made, for the tests of this room. */
import type { Assessment, BlockResult, TreeResult } from '@crownfall/assessment';
import { equalAreaPlane, type LonLatGeometry } from '@crownfall/geometry';
import { DEFAULT_SETTINGS } from '@crownfall/survey';

const plane = equalAreaPlane({ lon: -80.06, lat: 28.3 });

function area(...ring: number[]): LonLatGeometry {
  return { kind: 'area', polygons: [[plane.inverse(ring)]] };
}

const ranged = (value: number) => ({ value, range80: null, range95: null });
const figures = { pavementM2: 2000, driplineM2: 60, falloutM2: 90, stainedM2: ranged(42) };

const BLOCK: BlockResult = {
  ...figures,
  blockId: 'B1',
  name: 'Quay & <Mole>',
  rank: 1,
  score: 0.5,
  scoreParts: [],
  topShare: null,
  trees: 1,
  treesRated: 1,
  worstSeverityPct: 40,
  complaintsOpen: 0,
  bloomState: 'unknown',
  calibrated: false,
  geometry: area(-50, -50, 50, -50, 50, 50, -50, 50),
  extra: {},
};

const TREE: TreeResult = {
  treeId: 'T1',
  host: 'Terminalia buceras',
  blockId: 'B1',
  at: { lon: -80.06, lat: 28.3 },
  crownM2: 100,
  spreadM: 11.3,
  severityPct: 40,
  severityFrom: 'rating',
  cause: 'frass',
  dose: 0.4,
  driplineM2: 60,
  falloutM2: 90,
  stainedM2: ranged(42),
  geometry: area(-5, -5, 5, -5, 5, 5, -5, 5),
  extra: {},
};

export const SMALL: Assessment = {
  title: 'Small & invented',
  season: 2026,
  units: 'metric',
  blocks: [BLOCK],
  trees: [TREE],
  pavement: [],
  ledger: [],
  blame: [],
  total: figures,
  findings: [],
  run: {
    settings: DEFAULT_SETTINGS,
    asOf: '2026-05-20',
    calibrated: false,
    draws: 0,
    seed: 0,
    plane: plane.definition,
    counts: {},
  },
};
