export type { CrownShape, LonLat } from './crown-shape.ts';
export type { Finding, GeometryFindingCode, Place } from './finding.ts';
export type { Box, FalloutZone, OverlayInput, OverlayLedger, ZoneSource } from './overlay/ledger.ts';
export { reckonOverlay } from './overlay/reckon-overlay.ts';
export type { Coordinates, Frame, LonLatGeometry, Region, Ring } from './ring.ts';
export { reversed, signedArea } from './ring.ts';
export type { Degrees, Fraction, Metres, SquareMetres } from './units.ts';
export { degrees, fraction, METRES_PER_FOOT, metres, squareMetres } from './units.ts';
