import type { Place } from '@crownfall/geometry';

/** Where a setting is: `priority.weights.stained` in project.json. */
export function settingPlace(path: readonly string[]): Place {
  return { layer: 'settings', file: 'project.json', field: path.join('.') };
}
