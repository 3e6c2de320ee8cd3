import type { Assessment } from '@crownfall/assessment';
import { type RunFacts, resultFiles } from '../results/result-files.ts';
import { writeFiles } from './write-files.ts';

/**
 * Writes all outputs of a run into a folder (see the outside contract), all or none; the folder is made when absent.
 * Throws an `Outage` when the disk fails, and then leaves the previous outputs whole.
 */
export async function writeResults(folder: string, assessment: Assessment, facts: RunFacts): Promise<void> {
  await writeFiles(folder, resultFiles(assessment, facts));
}
