export {
  CoverageWorkspace,
  type PixelCoverage,
  type PixelGrid,
  type PixelSpans,
  pixelCoverage,
  pixelSpans,
} from './coverage/pixel-coverage.ts';
export type { CrownShape, LonLat } from './crown-shape.ts';
export {
  type CheckPositionsOptions,
  checkPositions,
  type LonLatExtent,
  type PositionFinding,
} from './crs/check-positions.ts';
export type { CoordinateSystem, DatumReading } from './crs/coordinate-system.ts';
export { type CrsFinding, isCrsFinding, resolveCrs } from './crs/resolve-crs.ts';
export type { Finding, GeometryFindingCode, Place } from './finding.ts';
export { type WidenOptions, widenLine } from './line/widen-line.ts';
export { chainsOf, closedChains } from './near/chains-of.ts';
export { groundWithin } from './near/ground-within.ts';
export { type Chains, type NearestPair, nearestPair } from './near/nearest-pair.ts';
export { cleanRegion } from './offset/clean-region.ts';
export { type DriftRing, falloutZone, type Wind } from './offset/fallout-zone.ts';
export { offsetRegion, translated } from './offset/offset-region.ts';
export {
  crownArea,
  crownAreaFromRadii,
  meanSpread,
  quadraticMeanRadius,
  type RadiiAreaConvention,
} from './outline/crown-measures.ts';
export { type CrownOutline, crownOutline, type OutlineOptions } from './outline/crown-outline.ts';
export { crownShapeInPlane, type ForwardPlane, type PlaneCrownShape } from './outline/plane-crown-shape.ts';
export { regionArea, regionCentroid } from './outline/region-measures.ts';
export { type FlatRegions, flatRegions, regionAt, regionsOf } from './overlay/flat-regions.ts';
export type { Box, FalloutZone, OverlayInput, OverlayLedger, ZoneSource } from './overlay/ledger.ts';
export { ledgerOf } from './overlay/ledger-of.ts';
export { LiveOverlay } from './overlay/live-overlay.ts';
export { mergeLedgers } from './overlay/merge-ledgers.ts';
export {
  type CrownScene,
  type OverlayJob,
  overlayJob,
  reckonInShares,
  ShareReckoner,
  type ShareWorker,
  sceneInput,
  sharesOf,
} from './overlay/overlay-job.ts';
export { type NumberedRegion, type OverlayStream, reckonStream } from './overlay/overlay-stream.ts';
export { type PairAreas, pairAreas } from './overlay/pair-areas.ts';
export type { PieceCells } from './overlay/piece-cells.ts';
export { reckonOverlay } from './overlay/reckon-overlay.ts';
export { type FalloutRecipe, zonesFromCrowns } from './overlay/zones-from-crowns.ts';
export { equalAreaPlane, type LocalPlane, planeOf } from './plane/local-plane.ts';
export type { Coordinates, Frame, LonLatGeometry, Region, Ring } from './ring.ts';
export { reversed, signedArea } from './ring.ts';
export {
  type BlockOptions,
  type BlocksFromStreets,
  blocksFromStreets,
  type StreetNetwork,
} from './streets/blocks-from-streets.ts';
export { type Extent, squareCells } from './streets/square-cells.ts';
export type { WalkEnds } from './tour/short-tour.ts';
export type { StreetWalkOptions, WalkPlace } from './tour/street-walk.ts';
export { type DayEnds, walkInGroups, walkingOrder } from './tour/walking-order.ts';
export type { Degrees, Fraction, Metres, SquareMetres } from './units.ts';
export { degrees, fraction, METRES_PER_FOOT, metres, squareMetres } from './units.ts';
export { type ReadRegion, type ReadRegionOptions, readRegion } from './validity/read-region.ts';
