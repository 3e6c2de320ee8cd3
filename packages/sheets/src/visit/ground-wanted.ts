/** Which ground the maps of a visit sheet may show, and how fine a picture of it print resolution asks for. */
import type { Assessment } from '@crownfall/assessment';
import type { LocalPlane } from '@crownfall/geometry';
import type { Bounds } from '../map-frame.ts';
import { mapPlane } from '../map-marks.ts';
import { PAPER, type PaperName } from '../pdf/page-list.ts';
import { visitMapView } from './visit-map.ts';
import { mapSizes } from './visit-page.ts';

/** Pixels to the inch of paper: finer is not seen below lines in print (common practice). */
const PRINT_DPI = 200;

export interface GroundWanted {
  /** The plane of the maps: bounds and pixels are in its metres, x east, y north. */
  readonly plane: LocalPlane;
  readonly bounds: Bounds;
  /** Side of a pixel, m. */
  readonly pixelM: number;
}

/**
 * What a picture below the map of a block must cover, whichever size the map takes on the paper.
 * @throws RangeError for a block that does not exist
 */
export function groundWanted(assessment: Assessment, blockId: string, paper: PaperName): GroundWanted {
  const block = assessment.blocks.find((each) => each.blockId === blockId);
  if (block === undefined) throw new RangeError(`groundWanted: expected the id of a block, got ${blockId}`);
  const plane = mapPlane(assessment);
  const views = mapSizes(block, plane, PAPER[paper]).map((size) => visitMapView(block, plane, size));
  const least = (of: (bounds: Bounds) => number) => Math.min(...views.map(({ bounds }) => of(bounds)));
  const most = (of: (bounds: Bounds) => number) => Math.max(...views.map(({ bounds }) => of(bounds)));
  return {
    plane,
    bounds: {
      minX: least(({ minX }) => minX),
      minY: least(({ minY }) => minY),
      maxX: most(({ maxX }) => maxX),
      maxY: most(({ maxY }) => maxY),
    },
    pixelM: (Math.min(...views.map(({ scale }) => scale)) * 0.0254) / PRINT_DPI,
  };
}
