/** Where a project lies: a folder that is only read, or a store that many write to. */

/** Plain data: it travels to the reckoning thread. */
export type ProjectPlace =
  | { readonly kind: 'folder'; readonly path: string }
  | { readonly kind: 'file'; readonly path: string }
  | { readonly kind: 'database'; readonly url: string };

/** What the words of a command name: a database's address, a file `.gpkg`, else a folder. */
export function placeOf(project: string): ProjectPlace {
  if (/^postgres(ql)?:\/\//i.test(project)) return { kind: 'database', url: project };
  return /\.gpkg$/i.test(project) ? { kind: 'file', path: project } : { kind: 'folder', path: project };
}
