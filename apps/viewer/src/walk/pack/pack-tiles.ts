/** Which map tiles show the packed blocks. */
import type { Box } from './boxes.ts';

/** 0.3 to 0.07 m a pixel at 28° of latitude: kerbs and trunks show. */
const ZOOMS = [17, 18, 19, 20] as const;

export interface TileAddress {
  readonly z: number;
  readonly x: number;
  readonly y: number;
}

/** The tiles that cover boxes, each once, coarse ones first. */
export function tilesOver(boxes: readonly Box[]): readonly TileAddress[] {
  const found = new Map<string, TileAddress>();
  for (const z of ZOOMS)
    for (const [west, south, east, north] of boxes)
      for (let x = column(west, z); x <= column(east, z); x++)
        for (let y = row(north, z); y <= row(south, z); y++) found.set(tileName({ z, x, y }), { z, x, y });
  return [...found.values()];
}

export const tileName = ({ z, x, y }: TileAddress): string => `${z}/${x}/${y}`;

const column = (lon: number, z: number): number => Math.floor(((lon + 180) / 360) * 2 ** z);

function row(lat: number, z: number): number {
  const angle = (lat * Math.PI) / 180;
  return Math.floor(((1 - Math.asinh(Math.tan(angle)) / Math.PI) / 2) * 2 ** z);
}

/** Where a tile lies. */
export function boxOfTile({ z, x, y }: TileAddress): Box {
  const lon = (at: number): number => (at / 2 ** z) * 360 - 180;
  const lat = (at: number): number => (Math.atan(Math.sinh(Math.PI * (1 - (2 * at) / 2 ** z))) * 180) / Math.PI;
  return [lon(x), lat(y + 1), lon(x + 1), lat(y)];
}
