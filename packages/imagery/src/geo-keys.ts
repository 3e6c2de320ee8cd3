/**
 * GeoKeys that name a coordinate system by its EPSG code (OGC 19-008r4, GeoTIFF Standard 1.1, clauses 7.5 and 7.6 and
 * Annex B): model type, raster type, and the code of the projected or geographic system. The code carries the unit;
 * a State Plane code in US survey feet is written as that code and nothing else, so no reader can scale it twice.
 */

import type { GeoTransform } from './georeference.ts';
import type { GeoKeyTags } from './imagery.ts';
import type { TiffField } from './tiff-directory.ts';

export interface CrsCode {
  readonly epsg: number;
  readonly kind: 'projected' | 'geographic';
}

const MODEL_TYPE = 1024;
const RASTER_TYPE = 1025;
const GEODETIC_CRS = 2048;
const PROJECTED_CRS = 3072;
const PIXEL_IS_AREA = 1;

/** The fields that place an image on the ground. A rotated transform is written as a matrix, else as scale and tie point. */
export function georeferenceFields(crs: CrsCode, transform: GeoTransform): readonly TiffField[] {
  return [{ tag: 34735, type: 'short', value: geoKeyDirectory(crs) }, ...transformFields(transform)];
}

/**
 * The fields that carry another file's GeoKeys over as they are, but that they now speak of pixels as areas, and a transform.
 */
export function carriedFields(keys: GeoKeyTags, transform: GeoTransform): readonly TiffField[] {
  const directory = [...keys.directory];
  for (let i = 4; i + 3 < directory.length; i += 4) if (directory[i] === RASTER_TYPE) directory[i + 3] = PIXEL_IS_AREA;
  const fields: TiffField[] = [{ tag: 34735, type: 'short', value: directory }];
  if (keys.doubles.length > 0) fields.push({ tag: 34736, type: 'double', value: keys.doubles });
  const ascii = keys.ascii.replace(/\0+$/, '');
  if (ascii !== '') fields.push({ tag: 34737, type: 'ascii', value: ascii });
  return [...fields, ...transformFields(transform)];
}

function geoKeyDirectory(crs: CrsCode): readonly number[] {
  if (!Number.isInteger(crs.epsg) || crs.epsg < 1024 || crs.epsg > 32766) {
    throw new RangeError(`writeGeoTiff: expected an EPSG code of 1024 to 32766, got ${crs.epsg}`);
  }
  const projected = crs.kind === 'projected';
  const keys = [
    [MODEL_TYPE, projected ? 1 : 2],
    [RASTER_TYPE, PIXEL_IS_AREA],
    [projected ? PROJECTED_CRS : GEODETIC_CRS, crs.epsg],
  ].toSorted((a, b) => a[0] - b[0]);
  return [1, 1, 0, keys.length, ...keys.flatMap(([key, value]) => [key, 0, 1, value])];
}

function transformFields(t: GeoTransform): readonly TiffField[] {
  if (t.rowX === 0 && t.columnY === 0 && t.columnX > 0 && t.rowY < 0) {
    return [
      { tag: 33550, type: 'double', value: [t.columnX, -t.rowY, 0] },
      { tag: 33922, type: 'double', value: [0, 0, 0, t.originX, t.originY, 0] },
    ];
  }
  const matrix = [t.columnX, t.rowX, 0, t.originX, t.columnY, t.rowY, 0, t.originY, 0, 0, 0, 0, 0, 0, 0, 1];
  return [{ tag: 34264, type: 'double', value: matrix }];
}
