export type {
  Fact,
  FactsOf,
  FindingCode,
  Grade,
  ReaderFindingCode,
  SurveyFindingCode,
} from './findings/finding-codes.ts';
export { FINDING_FACTS, finding } from './findings/finding-codes.ts';
export { nearestWord } from './findings/nearest-word.ts';
export * from './project-input.ts';
export { daysBetween, isIsoDay } from './reading/date-text.ts';
export { isMissing, type NumberReading, readNumber } from './reading/number-text.ts';
export { readSurvey, type SurveyReading } from './reading/read-survey.ts';
export * from './records.ts';
export type { ClassScale, ScaleClass } from './scales/class-scale.ts';
export { severityOfClass, severityOfPercent } from './scales/class-scale.ts';
export { FOREST_SERVICE_CROWN } from './scales/forest-service-crown.ts';
export { HORSFALL_BARRATT_0_11, HORSFALL_BARRATT_1_12 } from './scales/horsfall-barratt.ts';
export { PUBLISHED_SCALES, scalesOf } from './scales/scales-of.ts';
export { type FieldOf, type FieldRule, fieldRule, schemas } from './schemas/layer-schemas.ts';
export { readSettings, type SettingsReading } from './settings/read-settings.ts';
export { settingsSchema } from './settings/settings-schema.ts';
export * from './settings.ts';
export { asOfDay } from './severity/as-of-day.ts';
export { gateOf, type RatingGate } from './severity/rating-gate.ts';
export { severityOfTrees } from './severity/severity-of-trees.ts';
export type { SeverityGroup, SeverityReading, TreeSeverity } from './severity/tree-severity.ts';
