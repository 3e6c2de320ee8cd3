/** Where the files lie that a plan reads beside the project. */
import { stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** The file an option names, else the one the settings name beside the project; null for neither. */
export async function fileBeside(project: string, option: string | undefined, setting: string): Promise<string | null> {
  if (option !== undefined) return option;
  if (setting.trim() === '') return null;
  const folder = (await stat(project)).isDirectory() ? project : dirname(project);
  return join(folder, setting);
}
