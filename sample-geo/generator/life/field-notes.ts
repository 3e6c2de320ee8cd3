/** Quadrats, complaints, bloom observations, sites, water and drains of the invented town. */
import { randomFor } from '../random.ts';
import type { TownBlock } from '../town/blocks.ts';
import { gap, onLoop, type Point } from '../town/loop.ts';
import type { PavementPiece } from '../town/pavement.ts';
import { boundsOf, centroid, isInside } from '../town/shapes.ts';
import { ROW_LINES } from '../town/streets.ts';
import type { Town } from '../town/town.ts';
import { round } from './crown-records.ts';
import { clamp, doseAt, type TreeTruth } from './truth.ts';

export interface QuadratNote {
  readonly id: string;
  readonly at: Point;
  readonly areaM2: number;
  readonly trueDose: number;
  readonly trueShare: number;
  readonly stainedPct: number;
  readonly measuredOn: string;
  readonly by: string;
}

const QUADRAT_COUNT = 72;

/**
 * Measured plots near crowns, most below fouling ones, some below clean ones. The share seen scatters about the true one
 * as if a plot of one square metre held 30 independent patches.
 */
export function quadratNotes(town: Town, truth: readonly TreeTruth[]): readonly QuadratNote[] {
  const random = randomFor('quadrats');
  const walks = town.pavement.filter((piece) => piece.kind === 'sidewalk' || piece.kind === 'plaza');
  const notes: QuadratNote[] = [];
  while (notes.length < QUADRAT_COUNT) {
    const below = random.pick(truth);
    const wanted = below.cause === 'none' ? 0.06 : 1;
    if (!random.chance(wanted)) continue;
    const at: Point = [below.tree.middle[0] + random.normal(0, 2.6), below.tree.middle[1] + random.normal(0, 2.6)];
    if (!walks.some((piece) => holds(piece, at)) || notes.some((note) => gap(note.at, at) < 4)) continue;
    const areaM2 = random.pick([0.25, 0.5, 1, 1]);
    const dose = meanDose(at, Math.sqrt(areaM2) / 2, truth);
    const share = 1 - Math.exp(-dose);
    const seen = clamp(random.normal(share, Math.sqrt((share * (1 - share)) / (30 * areaM2))), 0, 1);
    const trueDose = round(dose, 4);
    const day = `2026-05-${String(random.whole(4, 15)).padStart(2, '0')}`;
    const id = `Q${String(notes.length + 1).padStart(2, '0')}`;
    notes.push({
      id,
      at,
      areaM2,
      trueDose,
      trueShare: round(share, 4),
      stainedPct: Math.round(seen * 100),
      measuredOn: day,
      by: random.pick(['R1', 'R2']),
    });
  }
  return notes;
}

function holds(piece: PavementPiece, at: Point): boolean {
  return (
    piece.shell !== undefined && isInside(piece.shell, at) && !(piece.holes ?? []).some((hole) => isInside(hole, at))
  );
}

/** Mean over a plot of the given half side, at nine points. */
function meanDose([x, y]: Point, half: number, truth: readonly TreeTruth[]): number {
  const steps = [-0.67, 0, 0.67];
  return (
    steps.flatMap((i) => steps.map((j) => doseAt([x + i * half, y + j * half], truth))).reduce((a, b) => a + b, 0) / 9
  );
}

export interface Note {
  readonly at: Point;
  readonly properties: Readonly<Record<string, unknown>>;
}

/** People complain where much is stained and many walk; a third of the cases is closed. */
export function complaintNotes(town: Town, truth: readonly TreeTruth[]): readonly Note[] {
  const random = randomFor('complaints');
  const fouling = truth.filter((tree) => tree.cause !== 'none' && tree.browned > 0.25);
  const notes = Array.from({ length: 34 }, (_, i) => {
    const { tree, cause } = random.pick(fouling);
    const about = random.weighted([
      ['staining', 6],
      [cause === 'frass' ? 'larvae' : 'litter', 2],
      ['other', 1],
    ]);
    const day = new Date(Date.UTC(2026, 1, 10 + random.whole(0, 96))).toISOString().slice(0, 10);
    const state = random.chance(0.64) ? 'open' : 'closed';
    // One came in by telephone, and nobody wrote down when.
    const received = i === 17 ? {} : { received_on: day };
    const at: Point = [tree.at[0] + random.normal(0, 3), tree.at[1] + random.normal(0, 3)];
    return {
      at,
      properties: {
        complaint_id: `K${String(i + 1).padStart(2, '0')}`,
        ...received,
        about,
        state,
        source: random.pick(['telephone', 'form', 'council office']),
      },
    };
  });
  return notes.filter((note) =>
    town.blocks.some((block) =>
      isInside(
        block.face.map((c) => c.at),
        note.at,
      ),
    ),
  );
}

export type BloomRow = Readonly<Record<(typeof BLOOM_COLUMNS)[number], string | number>>;
export const BLOOM_COLUMNS = [
  'tree_id',
  'block_id',
  'observed_on',
  'bbch',
  'larvae_in_galls',
  'bees_at_flowers',
] as const;

/** Bloom moves inland from the warm waterfront: stages fall with the distance from it. */
export function bloomRows(town: Town, truth: readonly TreeTruth[]): readonly BloomRow[] {
  const random = randomFor('bloom');
  const olives = truth.filter(({ tree }) => tree.host.fouls === 'frass');
  const rows: BloomRow[] = [];
  const observe = (which: { tree_id: string; block_id: string }, north: number, day: number) => {
    const bbch = Math.round(clamp(71 - north / 26 + (day - 12) * 0.7 + random.normal(0, 1.6), 51, 75));
    const larvae = bbch > 69 ? 'yes' : bbch > 66 ? random.pick(['yes', 'no', 'unknown']) : 'no';
    const bees =
      bbch >= 60 && bbch <= 69
        ? random.weighted([
            ['yes', 5],
            ['no', 2],
            ['unknown', 1],
          ])
        : 'no';
    rows.push({
      ...which,
      observed_on: `2026-05-${String(day).padStart(2, '0')}`,
      bbch,
      larvae_in_galls: larvae,
      bees_at_flowers: bees,
    });
  };
  for (let i = 0; i < 46; i++) {
    const { tree } = random.pick(olives);
    observe({ tree_id: tree.id, block_id: '' }, tree.at[1], random.whole(5, 19));
  }
  for (const block of town.blocks) {
    if (!random.chance(0.45)) continue;
    observe({ tree_id: '', block_id: block.id }, centroid(block.loop.points)[1], random.whole(5, 19));
  }
  return rows.toSorted((a, b) => (a.observed_on < b.observed_on ? -1 : a.observed_on > b.observed_on ? 1 : 0));
}

export function siteNotes(town: Town): readonly Note[] {
  const random = randomFor('sites');
  const block = (id: string) => town.blocks.find((each) => each.id === id) as TownBlock;
  const frontOf = (id: string, side: number, share: number): Point => {
    const { loop } = block(id);
    const { straightFrom, straightTo } = loop.sides[side % loop.sides.length];
    return onLoop(loop, straightFrom + (straightTo - straightFrom) * share, -1);
  };
  const rows: readonly (readonly [string, string, Point])[] = [
    ['school', 'Heron Gate School', frontOf('B25', 2, 0.5)],
    ['clinic', 'Cistern Clinic', frontOf('B28', 2, 0.5)],
    ['outdoor_dining', 'Tables at the market square', frontOf('B13', 0, 0.5)],
    ['outdoor_dining', 'Strand tables', frontOf('B04', 0, 0.35)],
    ['outdoor_dining', 'Avenue tables', frontOf('B21', 0, 0.5)],
    ['transit', 'Stop Caravel and Almanac', frontOf('B29', 2, 0.25)],
    ['transit', 'Stop Lantern and Tally', frontOf('B12', 0, 0.15)],
    ['transit', 'Stop Lantern and Signal', frontOf('B14', 0, 0.85)],
    ['transit', 'Stop Strand', frontOf('B05', 0, 0.4)],
    ['other', 'Reading room', frontOf('B22', 0, random.between(0.3, 0.7))],
  ];
  return rows.map(([kind, name, at], i) => ({
    at,
    properties: { site_id: `S${String(i + 1).padStart(2, '0')}`, kind, name },
  }));
}

/** The sea off the seawall, as a ring. */
export function seaRing(): readonly Point[] {
  const shore = ROW_LINES[0];
  const [[x0], [x1]] = [shore[0], shore[shore.length - 1]];
  return [[x0, -160], [x1, -160], ...shore.toReversed()];
}

/** A drain at the kerb before most corners. */
export function drainPoints(town: Town): readonly Point[] {
  const random = randomFor('drains');
  return town.blocks.flatMap((block) =>
    block.loop.sides
      .filter(() => random.chance(0.62))
      .map((side) => onLoop(block.loop, side.straightTo - 0.5, block.kerb + 0.35)),
  );
}

/** Two irrigation wells in the park, one behind the school. */
export function wellPoints(town: Town): readonly Point[] {
  return ['B32', 'B25'].flatMap((id) => {
    const block = town.blocks.find((each) => each.id === id) as TownBlock;
    const [x0, y0, x1] = boundsOf(block.loop.points);
    return id === 'B32' ? [[x0 + 20, y0 + 18] as Point, [x1 - 22, y0 + 20] as Point] : [[x1 - 30, y0 + 32] as Point];
  });
}
