/** Where a project lies: a folder that is only read, or a store that many write to. */
import { projectFolder } from '@crownfall/exchange/node';

/** Plain data: it travels to the reckoning thread. */
export type ProjectPlace =
  | { readonly kind: 'folder'; readonly path: string }
  | { readonly kind: 'file'; readonly path: string }
  | { readonly kind: 'database'; readonly url: string };

/** The folder that the project's paths start from; a database has none of its own. */
export async function folderOf(place: ProjectPlace): Promise<string> {
  return place.kind === 'database' ? process.cwd() : projectFolder(place.path);
}

/** What the words of a command name: a database's address, a file `.gpkg`, else a folder. */
export function placeOf(project: string): ProjectPlace {
  if (/^postgres(ql)?:\/\//i.test(project)) return { kind: 'database', url: project };
  return /\.gpkg$/i.test(project) ? { kind: 'file', path: project } : { kind: 'folder', path: project };
}
