export * from './project-input.ts';
export { readSurvey, type SurveyReading } from './reading/read-survey.ts';
export * from './records.ts';
export { readSettings } from './settings/read-settings.ts';
export * from './settings.ts';
export { asOfDay } from './severity/as-of-day.ts';
export { severityOfTrees } from './severity/severity-of-trees.ts';
export type { SeverityGroup, SeverityReading, TreeSeverity } from './severity/tree-severity.ts';
