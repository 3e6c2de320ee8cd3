/** Where the files of a project lie. The worker reads them through this, whatever is behind it. */
import type { LayerName } from '@crownfall/survey';

export type ProjectPlace =
  /** A folder that is reached by HTTP: `demo/`, or a server that hands out the project's own files. */
  | { readonly kind: 'http'; readonly base: string }
  /** Files that the person chose; `path` is relative to the folder of `project.json`. */
  | { readonly kind: 'local'; readonly name: string; readonly files: readonly LocalFile[] }
  /** Records that a server hands out of its store, layer by layer, and what it says of the project as a whole. */
  | { readonly kind: 'store'; readonly facts: StoreFacts; readonly layers: readonly StoreLayer[] };

interface StoreFacts {
  readonly title: string;
  readonly season: number;
  readonly units: 'metric' | 'us';
  readonly settings: Readonly<Record<string, unknown>>;
}

export interface StoreLayer {
  readonly layer: LayerName;
  readonly shape?: 'features' | 'table';
  readonly given: boolean;
}

interface LocalFile {
  readonly path: string;
  readonly file: Blob;
}

/** The whole file as a stream of bytes; null when there is none of that name. */
export async function openFile(place: ProjectPlace, path: string): Promise<ReadableStream<Uint8Array> | null> {
  if (place.kind === 'local') return localFile(place, path)?.stream() ?? null;
  if (place.kind === 'store') return null;
  const response = await fetch(addressOf(place.base, path)).catch(() => null);
  // A server without that file may answer with its page.
  const isPage = /text\/html/.test(response?.headers.get('content-type') ?? '');
  return response?.ok && !isPage ? response.body : null;
}

/** Any part of a file, for rasters that are never read whole. */
export async function readPart(place: ProjectPlace, path: string, start: number, length: number): Promise<Uint8Array> {
  if (place.kind === 'local') {
    const part = localFile(place, path)?.slice(start, start + length);
    if (!part) throw new Error(`${path} is not among the files that were opened.`);
    return new Uint8Array(await part.arrayBuffer());
  }
  if (place.kind === 'store') throw new Error('The server does not hand out this file.');
  const range = `bytes=${start}-${start + length - 1}`;
  const response = await fetch(addressOf(place.base, path), { headers: { range } });
  if (response.status === 416) return new Uint8Array();
  if (!response.ok) throw new Error(`The server answered ${response.status} for ${path}.`);
  const bytes = new Uint8Array(await response.arrayBuffer());
  // Status 200 is the whole file: a server that knows no ranges.
  return response.status === 206 ? bytes : bytes.subarray(start, start + length);
}

const addressOf = (base: string, path: string): string => base + path.split('/').map(encodeURIComponent).join('/');

/**
 * Chosen files as a project: `project.json` may lie in a folder, and the others are named from there. Null without one.
 */
export function localProject(chosen: readonly { readonly path: string; readonly file: Blob }[]): ProjectPlace | null {
  const depth = (path: string): number => path.split('/').length;
  const [head] = chosen
    .filter(({ path }) => /(^|\/)project\.json$/.test(path))
    .sort((a, b) => depth(a.path) - depth(b.path));
  if (!head) return null;
  const folder = head.path.slice(0, -'project.json'.length);
  const files = chosen
    .filter(({ path }) => path.startsWith(folder))
    .map(({ path, file }) => ({ path: path.slice(folder.length), file }));
  return { kind: 'local', name: folder.split('/').at(-2) ?? 'project', files };
}

function localFile(place: Extract<ProjectPlace, { kind: 'local' }>, path: string): Blob | undefined {
  const wanted = path.replace(/^\.\//, '');
  return place.files.find((each) => each.path === wanted)?.file;
}
