import { createHash } from 'node:crypto';
import type { Finding } from '@crownfall/geometry';
import { finding, type ProjectInput } from '@crownfall/survey';
import type { FilePieces } from '../formats/write-layer.ts';
import { HISTORY_FILE, type History, historyOfFolder, layerChangedSince } from './store/history-file.ts';
import { historyOfStore } from './store/history-of-store.ts';

interface HistoryReading {
  readonly history: History | null;
  readonly findings: readonly Finding[];
}

/** Journal, versions and visits of a GeoPackage file, or those kept beside a folder's layers while these are unchanged. */
export async function historyOf(from: string, folder: string, input: ProjectInput): Promise<HistoryReading> {
  if (/\.gpkg$/i.test(from)) return { history: await historyOfStore(from), findings: [] };
  const history = await historyOfFolder(folder);
  const changed = history && layerChangedSince(history, input);
  if (changed === null) return { history, findings: [] };
  const found = finding('history-outdated', 'warning/left_out', { file: HISTORY_FILE, layer: changed }, {});
  return { history: null, findings: [found] };
}

/** The same pieces, whose hash is told when the last one has passed. */
export async function* withHash(text: FilePieces, done: (sha256: string) => void): AsyncGenerator<string | Uint8Array> {
  const hash = createHash('sha256');
  for await (const piece of text) {
    hash.update(piece);
    yield piece;
  }
  done(hash.digest('hex'));
}
