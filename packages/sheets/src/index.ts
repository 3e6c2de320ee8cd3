export { type BlockMapOptions, blockMap } from './block-map.ts';
export { CHART, escaped } from './charts/chart-frame.ts';
export { type IntervalChart, type IntervalRow, intervalChart } from './charts/interval-chart.ts';
export { type PlacedPoint, type PointMap, pointMap } from './charts/point-map.ts';
export { type ChartLine, type ScatterChart, type ScatterPoint, scatterChart } from './charts/scatter-chart.ts';
export type { Drawing, Frame, GroundMark, Hatch, PaperMark, Stroke, Style, TextStyle } from './drawing.ts';
export { onPaper } from './drawing.ts';
export { northArrow, scaleBar } from './furniture.ts';
export { fittingScale } from './map-frame.ts';
export type { Surroundings } from './map-marks.ts';
export { MAP, STAIN_CLASSES_M2, STAIN_RAMP, stainClass } from './palette.ts';
export { LEADING, linesHeightMm, linesOf, textCorners, textMarks } from './pdf/lay-text.ts';
export {
  PAPER,
  type Page,
  type PageItem,
  type PageList,
  type PaperName,
  type TableCell,
  type TableRow,
  type TextTag,
} from './pdf/page-list.ts';
export type { SheetFonts } from './pdf/sheet-fonts.ts';
export { svgText } from './svg.ts';
export { type TownMapOptions, townMap } from './town-map.ts';
export { type GroundWanted, groundWanted } from './visit/ground-wanted.ts';
export { visitBook } from './visit/visit-book.ts';
