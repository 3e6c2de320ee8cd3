export { ciede2000 } from './analysis/ciede2000.ts';
export { type Lab, lightness, srgbToLab } from './analysis/cielab.ts';
export { middleOfCut, type OtsuCut, otsu } from './analysis/otsu.ts';
export {
  type ColourBands,
  colourBands,
  hasBand,
  type IndexBand,
  type IndexReading,
  indexBand,
  type PixelColour,
  VEGETATION_INDICES,
  type VegetationIndex,
  vegetationIndex,
} from './analysis/vegetation-index.ts';
export type { CrsCode } from './geo-keys.ts';
export type { GeoTransform } from './georeference.ts';
export { coarser, groundToPixel, northUp, pixelToGround } from './georeference.ts';
export type { BytesPort, GeoTiffLevel, OpenGeoTiff, ReadOptions } from './open-geotiff.ts';
export { bytesPort, openGeoTiff, WINDOW_PIXELS_MAX } from './open-geotiff.ts';
export { halved, overviewsOf } from './overviews.ts';
export type { PixelWindow, Raster, SampleArray } from './raster.ts';
export type { BandRole, Samples, Window } from './window.ts';
export type { GeoTiffOptions } from './write-geotiff.ts';
export { writeGeoTiff } from './write-geotiff.ts';
