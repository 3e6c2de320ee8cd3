export { type AdoptInventoryOptions, type AdoptReport, adoptInventory, mappingName } from './adopt-inventory.ts';
export { type ConvertLayerOptions, convertLayer } from './convert-layer.ts';
export { type ConvertProjectOptions, type ConvertReport, convertProject } from './convert-project.ts';
export { Outage } from './outage.ts';
export { guessInventory, type InventoryGuess } from './read-inventory.ts';
export { projectFolder, type ReadProjectOptions, readProject, storedName } from './read-project.ts';
export {
  type CreateStoreOptions,
  createProjectStore,
  type OpenStoreOptions,
  openProjectStore,
} from './store/open-project-store.ts';
export { type TextFile, writeFiles } from './write-files.ts';
export { writeResults } from './write-results.ts';
