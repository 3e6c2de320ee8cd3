export { BLOOM_WORDS, type BloomWords } from './catalogue/bloom-words.ts';
export { CATALOGUES, describeFinding, type FindingWords } from './catalogue/describe-finding.ts';
export {
  actionName,
  briefCaution,
  CAUTION_CODES,
  type CautionCode,
  type Constraint,
  describeConstraint,
  describeReason,
  REASON_CODES,
  type Reason,
  type ReasonCode,
  type Rotation,
  rotationReminders,
  treatmentCautions,
} from './catalogue/plan-words.ts';
export type { Catalogue, Language, Words } from './catalogue/words.ts';
export type {
  Fact,
  FactsOf,
  FindingCode,
  Grade,
  ReaderFindingCode,
  SurveyFindingCode,
} from './findings/finding-codes.ts';
export { FINDING_FACTS, finding } from './findings/finding-codes.ts';
export { editDistance, nearestWord } from './findings/nearest-word.ts';
export { type FindingGroup, summariseFindings } from './findings/summarise-findings.ts';
export {
  ACTIONS,
  type Action,
  type BloomSettings,
  type PastTreatment,
  type PlanSettings,
  PRICED_ACTIONS,
  type Price,
  type PricedAction,
  type Product,
  type WeatherCheck,
} from './plan-settings.ts';
export type { LayerName, ProjectInput, RawFeature, RawLayer } from './project-input.ts';
export { LAYER_NAMES } from './project-input.ts';
export { type RatedVisit, type RaterReading, ratedVisits } from './raters/rated-visits.ts';
export { strayAt, withoutBias } from './raters/rater-reading.ts';
export { daysBetween, isIsoDay } from './reading/date-text.ts';
export { isMissing, type NumberReading, readNumber } from './reading/number-text.ts';
export { RatingBook } from './reading/rating-book.ts';
export { readSurvey, type SurveyReading } from './reading/read-survey.ts';
export type {
  Block,
  BloomObservation,
  Cause,
  Complaint,
  Confidence,
  Extra,
  FootTraffic,
  GallLoad,
  Pavement,
  PavementKind,
  PavementShape,
  Quadrat,
  Rating,
  SeverityInterval,
  Site,
  Street,
  Surface,
  Survey,
  Tree,
  WaterFeature,
  YesNoUnknown,
} from './records.ts';
export { CAUSES, CONFIDENCES, FOOT_TRAFFIC, GALL_LOADS, PAVEMENT_KINDS, SURFACES } from './records.ts';
export type { ClassScale, ScaleClass } from './scales/class-scale.ts';
export { severityOfClass, severityOfPercent } from './scales/class-scale.ts';
export { FOREST_SERVICE_CROWN } from './scales/forest-service-crown.ts';
export { HORSFALL_BARRATT_0_11, HORSFALL_BARRATT_1_12 } from './scales/horsfall-barratt.ts';
export { PUBLISHED_SCALES, scalesOf } from './scales/scales-of.ts';
export { type FieldOf, type FieldRule, fieldRule, schemas } from './schemas/layer-schemas.ts';
export { readSettings, type SettingsReading } from './settings/read-settings.ts';
export { settingsSchema } from './settings/settings-schema.ts';
export type {
  ClassTable,
  Criterion,
  PrioritySettings,
  RaterSettings,
  ReferenceLevels,
  Settings,
  UncertaintySettings,
} from './settings.ts';
export { CRITERIA, DEFAULT_SETTINGS } from './settings.ts';
export { asOfDay } from './severity/as-of-day.ts';
export { gateOf, type RatingGate } from './severity/rating-gate.ts';
export { SeverityBook } from './severity/severity-book.ts';
export { severityOfTrees } from './severity/severity-of-trees.ts';
export type { SeverityGroup, SeverityReading, TreeSeverity } from './severity/tree-severity.ts';
export { type Visit, type VisitFinds, visitDay, visitFinds } from './visits/visit.ts';
