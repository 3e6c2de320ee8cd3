import type { Survey } from '../records.ts';
import type { Settings } from '../settings.ts';
import type { SeverityReading } from './tree-severity.ts';

export type SeverityOfTrees = (survey: Survey, settings: Settings, asOf: string) => SeverityReading;
