export {
  type BrownedShare,
  type BrownedShareOptions,
  brownedShare,
  type CrownMakeUp,
  LIT_PIXELS_NEEDED,
} from './analysis/browned-share.ts';
export { ciede2000 } from './analysis/ciede2000.ts';
export { type Lab, lightness, srgbToLab } from './analysis/cielab.ts';
export { addCrowns, emptyFoliageHistogram, type FoliageHistogram } from './analysis/foliage-histogram.ts';
export { type FoliageOfCrowns, type FoliageOptions, foliageOfCrowns } from './analysis/foliage-of-crowns.ts';
export { type OutlineThresholds, outlineThresholds, whiteLevel } from './analysis/foliage-scene.ts';
export {
  type FoliageSeparation,
  type IndexRule,
  type LeafGate,
  type LinearRule,
  type NotSeparable,
  SEPARATION_DEFAULTS,
  type SeparationOptions,
  separateByOtsu,
} from './analysis/foliage-separation.ts';
export { imageQuality, type QualityFlag } from './analysis/image-quality.ts';
export { type MarkedCrown, markedPixels, separateByMarks } from './analysis/marked-separation.ts';
export { middleOfCut, type OtsuCut, otsu } from './analysis/otsu.ts';
export {
  type DarknessRefused,
  type PavementDarkness,
  type PavementTone,
  pavementDarkness,
  pavementTone,
} from './analysis/pavement-darkness.ts';
export {
  type PavementInView,
  pavementAwayFrom,
  pavementInView,
  type ViewRegions,
  viewOfPavement,
} from './analysis/pavement-in-view.ts';
export {
  MOST_VERTICES,
  type OutlineAnswer,
  type OutlineOptions,
  type OutlineProposal,
  type OutlineRefusal,
  type OutlineSeed,
  proposeOutline,
  proposeOutlines,
} from './analysis/propose-outlines.ts';
export { SUGGESTION_COLUMNS, type SuggestionRow, suggestionRow } from './analysis/suggestion-row.ts';
export { thresholdsOfImage } from './analysis/thresholds-of-image.ts';
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
export {
  type BandStatistics,
  bandStatistics,
  type HistogramBins,
  type StatisticsOptions,
} from './crown/band-statistics.ts';
export { type CrownPixels, type CrownPixelsOptions, crownPixels, pixelsWithin } from './crown/crown-pixels.ts';
export { type CrownsInWindow, crownWindows } from './crown/crown-windows.ts';
export {
  type CrownReading,
  type CrownsOptions,
  type CrownsPart,
  crownsOfImage,
  regionInPixels,
} from './crown/crowns-of-image.ts';
export type { CrsCode } from './geo-keys.ts';
export type { GeoTransform } from './georeference.ts';
export { coarser, groundToPixel, northUp, pixelToGround } from './georeference.ts';
export { groundToLonLat, lonLatToGround } from './ground-rings.ts';
export type { GeoKeyTags, Imagery, ImageryLevel, ReadWindow, WindowOptions } from './imagery.ts';
export type { ImageryFinding, ImageryFindingCode } from './imagery-findings.ts';
export { type OpenedImagery, type OpenImageryOptions, openImagery } from './open-imagery.ts';
export type { ImagerySidecars } from './open-levels.ts';
export { halved, overviewsOf } from './overviews.ts';
export { memoryParts, type PartStore } from './prepare/part-store.ts';
export { type PreparedImagery, type PrepareOptions, prepareImagery } from './prepare/prepare-imagery.ts';
export type { Zlib } from './prepare/tile-spool.ts';
export { countedShare, gridPoints } from './quadrat/counted-share.ts';
export type { Photo, PhotoPoint, QuadratFrame } from './quadrat/photo.ts';
export {
  CELL_KINDS,
  type PhotoQuadrat,
  type PhotoQuadratOptions,
  photoQuadrat,
  QUADRAT_NOTES,
  QUADRAT_REFUSALS,
  type QuadratNote,
  type QuadratRefusal,
  type QuadratRefused,
  type RectifiedQuadrat,
} from './quadrat/photo-quadrat.ts';
export { type PixelWindow, type Raster, type SampleArray, WINDOW_PIXELS_MAX } from './raster.ts';
export {
  type BlobLike,
  type BytesPort,
  blobPort,
  bytesPort,
  type Cancellation,
  type FileHandleLike,
  fileHandlePort,
} from './source/bytes-port.ts';
export { type FetchLike, type ResponseLike, rangePort } from './source/range-port.ts';
export type { Inflate } from './tiff/decode-block.ts';
export type { BandRole, Samples, Window } from './window.ts';
export type { GeoTiffOptions } from './write-geotiff.ts';
export { writeGeoTiff } from './write-geotiff.ts';
