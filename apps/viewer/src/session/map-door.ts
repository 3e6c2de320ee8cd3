/** What the rest of the page may ask of the map, whatever library draws it. */
import type { Position } from '../outline/sketch.ts';
import type { MapView } from '../state/app-state.ts';

export interface MapDoor {
  readonly showAll: () => void;
  /** Gives the keys to the map. */
  readonly focus: () => void;
  readonly fitBlock: (blockId: string) => void;
  readonly flyTo: (at: Position, zoom?: number) => void;
  /** Shows the view at once; the move is not told of. */
  readonly jumpTo: (view: MapView) => void;
  readonly centre: () => Position;
  readonly panBy: (x: number, y: number) => void;
  /** A picture of the map at print resolution, with what the map shows now. */
  readonly picture: (wish: PictureWish) => Promise<HTMLCanvasElement>;
}

export interface PictureWish {
  /** CSS pixels at 96 to the inch. */
  readonly width: number;
  readonly height: number;
  readonly dotsPerInch: number;
}
