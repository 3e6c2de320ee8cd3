/** How the crowns came into the inventory: most drawn, some paced with one spread, two diameters, or eight radii. */
import { randomFor } from '../random.ts';
import type { Point } from '../town/loop.ts';
import { areaOf } from '../town/shapes.ts';
import { outlineOf, type TownTree } from '../town/trees.ts';

export interface CrownRecord {
  readonly geometry: { readonly ring: readonly Point[] } | { readonly at: Point };
  readonly properties: Readonly<Record<string, unknown>>;
}

type Way = 'drawn' | 'spread' | 'diameters' | 'radii';

export function crownRecords(trees: readonly TownTree[]): readonly CrownRecord[] {
  const random = randomFor('crown records');
  return trees.map((tree, i) => {
    const palm = tree.host.form === 'palm';
    const way: Way = random.weighted(
      palm
        ? [['spread', 1]]
        : [
            ['drawn', 66],
            ['spread', 14],
            ['diameters', 10],
            ['radii', 10],
          ],
    );
    const common = {
      tree_id: tree.id,
      // Nobody knew the host of a few.
      ...(i % 311 === 97 ? {} : { host: random.weighted(tree.host.spellings) }),
      height_m: round(tree.heightM * random.between(0.93, 1.07), 1),
    };
    if (way === 'drawn') {
      const by = random.pick(['R1', 'R2', 'R3']);
      const drawn = {
        ...common,
        outlined_by: by,
        outlined_on: `2026-02-${String(random.whole(2, 26)).padStart(2, '0')}`,
        outline_sd_m: 0.25,
      };
      return {
        geometry: { ring: drawnRing(tree, random.whole(16, 24), () => random.normal(0, 0.12)) },
        properties: drawn,
      };
    }
    return {
      geometry: { at: way === 'spread' ? tree.middle : tree.at },
      properties: { ...common, ...paced(tree, way, random.between(-0.2, 0.2)) },
    };
  });
}

/** The outline as a person draws it: fewer vertices, each a little off. */
function drawnRing(tree: TownTree, count: number, error: () => number): readonly Point[] {
  const radii = Array.from({ length: count }, (_, i) => radiusTowards(tree, i / count) + error());
  return outlineOf(tree.middle, radii);
}

function radiusTowards({ radii }: TownTree, turn: number): number {
  const at = turn * radii.length;
  const i = Math.floor(at) % radii.length;
  const t = at - Math.floor(at);
  return radii[i] * (1 - t) + radii[(i + 1) % radii.length] * t;
}

function paced(tree: TownTree, way: Way, error: number): Readonly<Record<string, unknown>> {
  if (way === 'radii') {
    // From the trunk, clockwise from north.
    return { radii_m: Array.from({ length: 8 }, (_, i) => round(fromTrunk(tree, 90 - 45 * i), 1)) };
  }
  if (way === 'diameters') {
    const across = (turn: number) => radiusTowards(tree, turn) + radiusTowards(tree, (turn + 0.5) % 1);
    const turn = [0, 0.125, 0.25, 0.375].toSorted((a, b) => across(b) - across(a))[0];
    return {
      spread_a_m: round(across(turn), 1),
      spread_b_m: round(across((turn + 0.25) % 1), 1),
      bearing_deg: (450 - turn * 360) % 180,
    };
  }
  return { spread_m: round(2 * Math.sqrt(areaOf(tree.outline) / Math.PI) + error, 1) };
}

/** Distance from the trunk to the outline in a direction (degrees counter-clockwise from east). */
function fromTrunk(tree: TownTree, degrees: number): number {
  const [ux, uy] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  let farthest = 0.3;
  tree.outline.forEach((p, i) => {
    const q = tree.outline[(i + 1) % tree.outline.length];
    const [ax, ay, bx, by] = [p[0] - tree.at[0], p[1] - tree.at[1], q[0] - tree.at[0], q[1] - tree.at[1]];
    const across = [ax * uy - ay * ux, bx * uy - by * ux];
    if (across[0] === across[1] || across[0] * across[1] > 0) return;
    const t = across[0] / (across[0] - across[1]);
    farthest = Math.max(farthest, (ax + (bx - ax) * t) * ux + (ay + (by - ay) * t) * uy);
  });
  return farthest;
}

export function round(value: number, digits: number): number {
  return Math.round(value * 10 ** digits) / 10 ** digits;
}
