export { type ByteStream, oneChunk } from './byte-stream.ts';
export { readCsv } from './csv/read-csv.ts';
export { readTable } from './csv/read-table.ts';
export { type CsvRecord, writeCsv } from './csv/write-csv.ts';
export { geopackageFile } from './formats/geopackage/geopackage-file.ts';
export { type LayerStream, type LayerStreamEnd, streamLayer } from './formats/stream-layer.ts';
export type { FilePieces } from './formats/write-layer.ts';
export { geometryFromJson } from './geojson/geometry-from-json.ts';
export { geometryToJson, type JsonGeometry } from './geojson/geometry-to-json.ts';
export { ONE_STRING_BYTES, readGeoJson } from './geojson/read-geojson.ts';
export { type OutFeature, type WriteGeoJsonOptions, writeGeoJson } from './geojson/write-geojson.ts';
export type { FieldGuess, MappingGuess, SpeciesMend } from './inventory/guess-mapping.ts';
export {
  INVENTORY_FIELDS,
  type InventoryField,
  type InventoryMapping,
  readInventoryMapping,
} from './inventory/inventory-mapping.ts';
export type { AdoptionSummary } from './inventory/row-report.ts';
export type { LayerEntry, LayerReading, LayerSource, RandomAccess } from './layer-reading.ts';
export { type PlanFile, type PlanFileOptions, planFiles, planJson } from './plan/plan-files.ts';
export { type DayTemperature, readAddresses, readTemperatures } from './plan/plan-input.ts';
export { type LayerFormat, READABLE_FORMATS, type WrittenFormat, writtenFormat } from './project/layer-format.ts';
export { type LayerText, layerText } from './project/layer-text.ts';
export { type ProjectFile, readProjectFile } from './project/project-file.ts';
export { readLayer } from './project/read-layer.ts';
export { CALIBRATION_FILE, calibrationText, RATERS_FILE, ratersText } from './project/stored-figures.ts';
export { readVisitsFile } from './project/visits-file.ts';
export { blockFeature, pavementFeature, treeFeature } from './results/result-features.ts';
export { type ResultFile, type RunFacts, resultFiles } from './results/result-files.ts';
export { degree, m2, metre, pct, rounded, share } from './round.ts';
export type {
  Blame,
  Change,
  ChangeInFull,
  Conflict,
  Edit,
  EditAnswer,
  EditOutcome,
  EditRequest,
  LayerImport,
  LayerSummary,
  LonLatBox,
  ProjectFacts,
  ProjectStore,
  Properties,
  RecordKey,
  RecordPage,
  RecordQuery,
  ResultTable,
  StepKind,
  StoredRecord,
  StoreOpening,
  UndoOutcome,
  Visit,
  VisitOutcome,
  Writer,
} from './store/project-store.ts';
