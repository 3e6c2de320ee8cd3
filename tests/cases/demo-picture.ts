/** The demo town's picture and what is true of it: crowns wholly inside, with their true outlines, from the generator. */
import { readFileSync } from 'node:fs';
import { bytesPort, type Imagery, openImagery, type ReadWindow } from '@crownfall/imagery';
import { gridFeet } from '../../sample-geo/generator/place.ts';
import { builtTown } from '../../sample-geo/generator/town/town.ts';

const folder = new URL('../../sample-geo/', import.meta.url);

interface TreeTruth {
  readonly tree_id: string;
  readonly cause: 'frass' | 'honeydew' | 'fruit' | 'leaf_litter' | 'none';
  readonly browned_2026: number;
  /** Share of the crown's visible part that is browned, and of its outline where it is on top; crowns wholly inside only. */
  readonly browned_in_image?: number;
  readonly visible_in_image?: number;
}

interface Truth {
  readonly dose_coefficient: number;
  readonly cause_factor: Readonly<Record<TreeTruth['cause'], number>>;
  readonly trees: readonly TreeTruth[];
}

export interface PictureCrown {
  readonly truth: TreeTruth;
  /** True outline and trunk, in pixels. */
  readonly ring: Float64Array;
  readonly trunk: readonly [x: number, y: number];
  readonly palm: boolean;
}

export interface DemoPicture {
  readonly image: Imagery;
  readonly window: ReadWindow;
  readonly truth: Truth;
  readonly crowns: readonly PictureCrown[];
}

export async function demoPicture(): Promise<DemoPicture> {
  const { image } = await openImagery(bytesPort(readFileSync(new URL('aerial.tif', folder))));
  if (image === null) throw new Error('the demo picture could not be opened');
  const truth: Truth = JSON.parse(readFileSync(new URL('truth.json', folder), 'utf8'));
  const byId = new Map(truth.trees.map((tree) => [tree.tree_id, tree]));
  const inPixels = (point: readonly [number, number]) => image.groundToPixel(...gridFeet(point));
  const crowns = builtTown().trees.flatMap((tree) => {
    const own = byId.get(tree.id);
    if (own === undefined) return [];
    const ring = Float64Array.from(tree.outline.flatMap((point) => [...inPixels(point)]));
    return [{ truth: own, ring, trunk: inPixels(tree.at), palm: tree.host.form === 'palm' }];
  });
  const window = await image.readWindow({ left: 0, top: 0, width: image.width, height: image.height });
  return { image, window, truth, crowns };
}

/** The value below which a share of the values lies (the nearest one from above). */
export function quantile(values: readonly number[], share: number): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)];
}
