/** The demo town's picture and its layers meet: GDAL projects the layers' positions, our reader looks into the picture there. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { bytesPort, type Imagery, openImagery } from '@crownfall/imagery';
import { describe, expect, test } from 'vitest';

const folder = new URL('../../sample-geo/', import.meta.url);

/** Longitudes and latitudes to EPSG:2236 by GDAL's own projection code. */
function projected(lonLats: readonly (readonly number[])[]): readonly (readonly [number, number])[] {
  const input = lonLats.map((p) => `${p[0]} ${p[1]}`).join('\n');
  const output = execFileSync('gdaltransform', ['-s_srs', 'OGC:CRS84', '-t_srs', 'EPSG:2236', '-output_xy'], {
    input,
    encoding: 'utf8',
  });
  return output
    .trim()
    .split('\n')
    .map((line) => line.split(' ').map(Number) as unknown as [number, number]);
}

async function openedPicture(): Promise<Imagery> {
  const { image } = await openImagery(bytesPort(readFileSync(new URL('aerial.tif', folder))));
  if (!image) throw new Error('the picture cannot be opened');
  return image;
}

function hasGdal(): boolean {
  try {
    execFileSync('gdaltransform', ['--version']);
    return true;
  } catch {
    console.warn('skipped: needs GDAL (Debian: apt-get install gdal-bin)');
    return false;
  }
}

interface Feature {
  readonly properties: Readonly<Record<string, string>>;
  readonly geometry: { readonly type: string; readonly coordinates: unknown };
}

function featuresOf(layer: string): readonly Feature[] {
  return JSON.parse(readFileSync(new URL(layer, folder), 'utf8')).features;
}

describe.skipIf(!hasGdal())('the demo picture', () => {
  const truth: readonly { tree_id: string; browned_2026: number; browned_in_image?: number }[] = JSON.parse(
    readFileSync(new URL('truth.json', folder), 'utf8'),
  ).trees;
  const crowns = new Map(featuresOf('crowns.geojson').map((f) => [f.properties.tree_id, f]));

  test('is green where green crowns are and brown where browned ones are', async () => {
    const image = await openedPicture();
    const seen = truth.filter(
      (t) => t.browned_in_image !== undefined && crowns.get(t.tree_id)?.geometry.type === 'Point',
    );
    const middles = projected(seen.map((t) => crowns.get(t.tree_id)?.geometry.coordinates as number[]));
    const index = async ([x, y]: readonly [number, number]) => {
      const [column, row] = image.groundToPixel(x, y).map(Math.floor);
      const { bands } = await image.readWindow({ left: column - 1, top: row - 1, width: 3, height: 3 });
      const [red, green] = bands.map((band) => Array.from(band).reduce((a, b) => a + b, 0));
      return (green - red) / (green + red);
    };
    const means = { green: [] as number[], brown: [] as number[] };
    for (const [i, tree] of seen.entries()) {
      if (tree.browned_2026 < 0.05) means.green.push(await index(middles[i]));
      if (tree.browned_2026 > 0.45) means.brown.push(await index(middles[i]));
    }
    const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
    expect(means.green.length).toBeGreaterThan(20);
    // Leaves reflect more green than red, browned ones less: true of any foliage, common practice, no source.
    expect(mean(means.green)).toBeGreaterThan(0.05);
    expect(mean(means.brown)).toBeLessThan(mean(means.green) - 0.08);
  });

  test('shows of every unhidden crown the browned share that the truth names', () => {
    const off = truth
      .filter((t) => t.browned_in_image !== undefined)
      .map((t) => (t.browned_in_image ?? 0) - t.browned_2026);
    expect(off.length).toBeGreaterThan(300);
    // Ragged edges lie partly beyond the outline, so the share inside it wanders by a few per cent.
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.06);
  });

  test('has the corners that GDAL prints', async () => {
    const info = JSON.parse(
      execFileSync('gdalinfo', ['-json', new URL('aerial.tif', folder).pathname], { encoding: 'utf8' }),
    );
    const image = await openedPicture();
    const { upperLeft, lowerRight } = info.cornerCoordinates;
    // gdalinfo prints corners to the thousandth of a foot.
    const ours = [...image.pixelToGround(0, 0), ...image.pixelToGround(image.width, image.height)];
    for (const [i, v] of [...upperLeft, ...lowerRight].entries()) expect(Math.abs(v - ours[i])).toBeLessThan(1e-3);
  });
});
