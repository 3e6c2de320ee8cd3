/**
 * Statistics of many crowns over one large image, beside masking polygon by polygon (rasterio's geometry_mask), in one run:
 *
 *   npx tsx tests/benchmarks/imagery/crown-statistics.ts [--pixels 20000] [--crowns 100000] [--peer-crowns 5000]
 *
 * Needs rasterio (Debian: apt-get install python3-rasterio); says so and ends where it is missing. The image, 3 bands of 8 bits,
 * tiled, deflated, 0.15 m, is made for the run and removed. Both read it from the disk, window by window; ours reckons mean, sd and
 * median of each band by exact shares, the peer mean and sd by centres of pixels. The peer does the crowns of one strip of the
 * image, so that it too reads each tile about once, and its time per crown is compared. Times are CPU time of all threads, so
 * that a busy machine does not tilt them much.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { open, stat } from 'node:fs/promises';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { inflateSync } from 'node:zlib';
import { crownsOfImage, fileHandlePort, type Imagery, openImagery } from '@crownfall/imagery';
import { RandomStream } from '@crownfall/statistics';

const PYTHON = '/usr/bin/python3';
const PEER = join(import.meta.dirname, 'rasterio-peer.py');
const VERTICES = 24;
/** Crowns of 2 to 6 m radius. */
const PIXEL_M = 0.15;
const RADIUS_M = [2, 6] as const;

const { values } = parseArgs({
  options: {
    pixels: { type: 'string', default: '20000' },
    crowns: { type: 'string', default: '100000' },
    'peer-crowns': { type: 'string', default: '5000' },
  },
});
const pixels = Number(values.pixels);
const crowns = Number(values.crowns);
const peerCrowns = Math.min(crowns, Number(values['peer-crowns']));

const versions = spawnSync(PYTHON, [PEER, 'versions'], { encoding: 'utf8' });
if (versions.status !== 0) {
  console.error('skipped: needs rasterio for Python (Debian: apt-get install python3-rasterio)');
} else {
  const folder = mkdtempSync(join(tmpdir(), 'crownfall-benchmark-'));
  try {
    await compare(folder, versions.stdout.trim());
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function compare(folder: string, peerName: string): Promise<void> {
  const [image, outlines, found] = ['image.tif', 'outlines.f64', 'found.f64'].map((name) => join(folder, name));
  console.error(`making an image of ${pixels} × ${pixels} …`);
  execFileSync(PYTHON, [PEER, 'make', image, String(pixels), String(PIXEL_M)]);
  const regions = randomCrowns();
  writeFileSync(outlines, Buffer.concat(regions.slice(0, peerCrowns).map(([ring]) => Buffer.from(ring.buffer))));

  console.error('ours …');
  const ours = await oursOn(image, regions);
  console.error(`${peerName} …`);
  const peer: PeerTimes = JSON.parse(
    execFileSync(PYTHON, [PEER, 'run', image, outlines, String(VERTICES), found], { encoding: 'utf8' }),
  );
  const own = (seconds: number) => (1e6 * seconds) / crowns;
  const its = (seconds: number) => (1e6 * seconds) / peerCrowns;
  const row = (what: string, a: number, b: number) =>
    console.log(`| ${what} | ${a.toFixed(1)} | ${b.toFixed(1)} | ${(b / a).toFixed(1)} |`);
  console.log(`${cpus()[0].model}, Node ${process.version}, ${new Date().toISOString().slice(0, 10)}\n`);
  console.log(`| µs a crown: ${crowns} crowns, ${pixels} × ${pixels} × 3 bands | ours | ${peerName} | times |`);
  console.log('| --- | ---: | ---: | ---: |');
  const statistics = ours.seconds - ours.readSeconds;
  row('shares and statistics; masking alone (geometry_mask)', own(statistics), its(peer.maskSeconds));
  row('shares and statistics; masking, mean and sd', own(statistics), its(peer.seconds - peer.readSeconds));
  row('all of it, reading from the disk included', own(ours.seconds), its(peer.seconds));
  console.log(`\npeak memory of this process ${ours.peakMb.toFixed(0)} MB; ${agreement(ours.means, found)}`);
}

interface PeerTimes {
  readonly seconds: number;
  readonly maskSeconds: number;
  readonly readSeconds: number;
}

/** Stars about random middles, in pixel coordinates, from the top of the image to its bottom. */
function randomCrowns(): Float64Array[][] {
  const random = new RandomStream(5, 77);
  const stars = Array.from({ length: crowns }, () => {
    const [least, most] = RADIUS_M.map((metres) => metres / PIXEL_M);
    const radius = least + (most - least) * random.uniform();
    const [x, y] = [0, 0].map(() => radius + (pixels - 2 * radius) * random.uniform());
    const ring = new Float64Array(2 * VERTICES);
    for (let i = 0; i < VERTICES; i++) {
      const r = radius * (0.7 + 0.3 * random.uniform());
      ring[2 * i] = x + r * Math.cos((2 * Math.PI * i) / VERTICES);
      ring[2 * i + 1] = y + r * Math.sin((2 * Math.PI * i) / VERTICES);
    }
    return [ring];
  });
  return stars.sort(([a], [b]) => a[1] - b[1]);
}

interface Ours {
  readonly seconds: number;
  /** Of these, for reading and decoding windows. */
  readonly readSeconds: number;
  readonly peakMb: number;
  /** Of the first band. */
  readonly means: Float64Array;
}

async function oursOn(path: string, regions: readonly Float64Array[][]): Promise<Ours> {
  const handle = await open(path, 'r');
  const port = fileHandlePort(handle, (await stat(path)).size);
  const means = new Float64Array(regions.length);
  const before = process.cpuUsage();
  const { image } = await openImagery(port, { inflate: (bytes, chunkSize) => inflateSync(bytes, { chunkSize }) });
  if (!image) throw new Error('the image did not open');
  let readSeconds = 0;
  const timed: Imagery = {
    ...image,
    readWindow: async (window, options) => {
      const start = process.cpuUsage();
      const read = await image.readWindow(window, options);
      readSeconds += secondsOf(process.cpuUsage(start));
      return read;
    },
  };
  for await (const part of crownsOfImage(timed, regions)) {
    for (const { crown, pixels: found } of part.crowns) means[crown] = found.layers[0].mean;
  }
  const used = process.cpuUsage(before);
  await handle.close();
  const peakMb = process.resourceUsage().maxRSS / 1024;
  return { seconds: secondsOf(used), readSeconds, peakMb, means };
}

function secondsOf({ user, system }: NodeJS.CpuUsage): number {
  return (user + system) / 1e6;
}

function agreement(means: Float64Array, found: string): string {
  const bytes = readFileSync(found);
  const peer = new Float64Array(bytes.buffer, bytes.byteOffset, bytes.length / 8);
  const apart = Array.from(peer, (mean, i) => Math.abs(mean - means[i])).sort((a, b) => a - b);
  const at = (share: number) => apart[Math.floor(share * (apart.length - 1))].toFixed(3);
  return `means of the first band apart by ${at(0.5)} (median), ${at(1)} at most: centres of pixels against shares`;
}
