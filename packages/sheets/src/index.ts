export { type BlockMapOptions, blockMap } from './block-map.ts';
export type { Drawing, Frame, GroundMark, Hatch, PaperMark, Stroke, Style, TextStyle } from './drawing.ts';
export { onPaper } from './drawing.ts';
export { northArrow, scaleBar } from './furniture.ts';
export { fittingScale } from './map-frame.ts';
export type { Surroundings } from './map-marks.ts';
export { MAP, STAIN_CLASSES_M2, STAIN_RAMP, stainClass } from './palette.ts';
export { svgText } from './svg.ts';
export { type TownMapOptions, townMap } from './town-map.ts';
