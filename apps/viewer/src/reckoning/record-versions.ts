/** What is read of a project: its records, and of a store's records their versions. */
import type { ProjectInput } from '@crownfall/survey';

/** Versions of the store's records, by layer and number. */
export type Versions = ReadonlyMap<string, number>;

export const versionKey = (layer: string, recordId: number): string => `${layer}:${recordId}`;

export interface ReadInput {
  readonly input: ProjectInput;
  /** None for files. */
  readonly versions: Versions;
}
