export * from './project-input.ts';
export * from './records.ts';
export * from './settings.ts';
export type { SeverityOfTrees } from './severity/severity-of-trees.ts';
export type { SeverityGroup, SeverityReading, TreeSeverity } from './severity/tree-severity.ts';
