/** Makes a tiled, overviewed GeoTIFF of any readable one, and says what was written. */
import { open, realpath, rename, rm } from 'node:fs/promises';
import { resolve } from 'node:path';
import { promisify } from 'node:util';
import { deflate } from 'node:zlib';
import type { BandRole, Imagery, ImageryFinding, PreparedImagery } from '@crownfall/imagery';
import { prepareImagery } from '@crownfall/imagery';
import { findingsReport } from '../../reports/findings-report.ts';
import { EXIT } from '../../terminal/failure.ts';
import { progressOn } from '../../terminal/progress.ts';
import type { CommonOptions } from '../job-options.ts';
import { inflateOnAnotherThread, openImageFile } from './image-file.ts';
import { partFolder } from './part-folder.ts';

export interface PrepareImageOptions extends CommonOptions {
  readonly out: string;
  readonly crs?: string;
  readonly bands?: readonly BandRole[];
  readonly tile: number;
}

type Bytes = (bytes: Uint8Array) => Promise<Uint8Array>;

/** On other threads, at zlib's usual level. */
const ZLIB = { deflate: promisify(deflate) as Bytes, inflate: inflateOnAnotherThread };

export async function prepareImage(input: string, options: PrepareImageOptions): Promise<number> {
  await refuseSameFile(input, options.out);
  const file = await openImageFile(input, {
    ...(options.crs !== undefined && { crs: options.crs }),
    ...(options.bands && { roles: options.bands }),
  });
  try {
    const { image, findings } = file;
    if (image === null || findings.some((finding) => finding.effect === 'stops')) {
      tell(input, options, findings, null);
      return EXIT.dataStops;
    }
    // What slows looking at it is what is being mended.
    const lasting = findings.filter((finding) => finding.code !== 'imagery-slow-to-stream');
    const report = await written(image, file.state, options);
    tell(input, options, [...lasting, ...report.findings], report);
    return EXIT.done;
  } finally {
    await file.close();
  }
}

async function refuseSameFile(input: string, out: string): Promise<void> {
  const real = (path: string) => realpath(path).catch(() => resolve(path));
  if ((await real(input)) === (await real(out))) {
    throw new RangeError(`--out: expected another file than the image itself, got ${out}`);
  }
}

/** Everything is in place before the file appears under its name. */
async function written(image: Imagery, state: string, options: PrepareImageOptions): Promise<PreparedImagery> {
  const progress = progressOn(process.stderr, options.quiet === true);
  const store = partFolder(`${options.out}.parts`);
  const half = `${options.out}.partial`;
  const handle = await open(half, 'w');
  const tellOften = oncePerPercent((share) => {
    progress.stage(`Preparing ${options.out}: ${Math.floor(100 * share)} %`, share);
  });
  try {
    const report = await prepareImagery(image, store, (bytes) => handle.writeFile(bytes), {
      job: JSON.stringify([state, options.crs, options.bands]),
      zlib: ZLIB,
      tileSize: options.tile,
      crs: statedCode(image, options),
      onProgress: tellOften,
    });
    await handle.sync();
    await handle.close();
    await rename(half, options.out);
    await store.clear();
    return report;
  } catch (cause) {
    await handle.close();
    await rm(half, { force: true });
    throw cause;
  } finally {
    progress.end();
  }
}

/** GeoKeys of the image are carried over; only where the user, or a .prj, says more must a code be written. */
function statedCode(
  image: Imagery,
  options: PrepareImageOptions,
): { epsg: number; kind: 'projected' | 'geographic' } | null {
  if (options.crs === undefined && image.geoKeys !== null) return null;
  const code = Number(/^EPSG:(\d+)$/.exec(image.crs?.code ?? '')?.[1] ?? Number.NaN);
  if (image.crs === null || Number.isNaN(code)) {
    throw new RangeError(
      `--crs: expected an EPSG code such as EPSG:2236 to write down, got ${image.crs?.name ?? 'none'}`,
    );
  }
  return { epsg: code, kind: image.crs.kind };
}

function oncePerPercent(tell: (share: number) => void): (share: number) => void {
  let told = -1;
  return (share) => {
    const percent = Math.floor(100 * share);
    if (percent === told) return;
    told = percent;
    tell(share);
  };
}

function tell(
  input: string,
  { json, out }: PrepareImageOptions,
  findings: readonly ImageryFinding[],
  report: PreparedImagery | null,
): void {
  if (json) {
    const { findings: _, ...figures } = report ?? { findings: [] };
    process.stdout.write(`${JSON.stringify({ written: report ? out : null, ...figures, findings }, null, 2)}\n`);
    return;
  }
  const told = findings.length > 0 ? `${findingsReport(input, findings, { all: false })}\n\n` : '';
  process.stdout.write(`${told}${report ? inWords(out, report) : 'Nothing was written.'}\n`);
}

function inWords(out: string, { width, height, levels, tiles, rowsFound, bytes }: PreparedImagery): string {
  const again = rowsFound > 0 ? ` (${rowsFound} rows of tiles were there from an interrupted run)` : '';
  const size = `${(bytes / 1e6).toFixed(1)} MB`;
  return `Written to ${out}: ${width} × ${height} pixels, ${levels} levels, ${tiles} tiles, ${size}${again}.`;
}
