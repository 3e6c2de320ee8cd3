/**
 * Outlines at a click on the sample town's invented picture, as the viewer asks for them: with the outlines drawn and the points of
 * trees nearby, and alone. `npx tsx tests/benchmarks/imagery/outline-at-click.ts`. Every third crown of the picture is clicked at
 * its trunk. Told are the overlap with the true outline (shared over joint area) and the time reckoned once the pixels were there,
 * the ways taking turns in one run, and their ratio.
 */
import { readFileSync } from 'node:fs';
import { pixelCoverage } from '@crownfall/geometry';
import { CrownSuggester } from '../../../apps/viewer/src/map/crown-suggester.ts';
import { demoPicture, type PictureCrown, quantile } from '../../cases/demo-picture.ts';

interface Crown {
  readonly properties: { readonly tree_id: string };
  readonly geometry:
    | { readonly type: 'Point'; readonly coordinates: [number, number] }
    | { readonly type: 'Polygon'; readonly coordinates: [number, number][][] };
}

const NEAR_DEG = 0.0004;
const demo = await demoPicture();
const text = readFileSync(new URL('../../../sample-geo/crowns.geojson', import.meta.url), 'utf8');
const records = (JSON.parse(text) as { features: Crown[] }).features;
const clicked = demo.crowns.filter(({ truth }) => truth.browned_in_image !== undefined).filter((_, i) => i % 3 === 0);
const suggester = new CrownSuggester(demo.image);
const ways = { alone: outcome(), 'with neighbours': outcome() };
for (const crown of clicked) {
  const at = [...demo.image.pixelToLonLat([...crown.trunk])] as [number, number];
  const near = records.filter((other) => other.properties.tree_id !== crown.truth.tree_id && isNear(other, at));
  const points = near.flatMap(({ geometry }) => (geometry.type === 'Point' ? [geometry.coordinates] : []));
  const drawn = near.flatMap(({ geometry }) =>
    geometry.type === 'Polygon' ? [geometry.coordinates[0].slice(0, -1).flat()] : [],
  );
  for (const [way, { overlaps, times }] of Object.entries(ways)) {
    const scene = way === 'alone' ? { rivals: [], drawn: [] } : { rivals: points, drawn };
    const answer = await suggester.outline({ at, ...scene }, (ms) => times.push(ms));
    overlaps.push(answer.proposed ? overlap(answer.ring, crown) : 0);
  }
}
for (const [way, { overlaps, times }] of Object.entries(ways)) {
  const told = (values: readonly number[], shares: readonly number[], digits: number): string =>
    shares.map((share) => quantile(values, share).toFixed(digits)).join(', ');
  console.log(
    `${way}, ${clicked.length} crowns: overlap 10th, 25th, 50th percentile ${told(overlaps, [0.1, 0.25, 0.5], 3)}; ms median, 95th, greatest ${told(times, [0.5, 0.95, 1], 0)}`,
  );
}
const [alone, among] = Object.values(ways).map(({ times }) => quantile(times, 0.5));
console.log(`neighbours cost ${(among / alone).toFixed(2)} times the time of a click alone`);

function outcome(): { readonly overlaps: number[]; readonly times: number[] } {
  return { overlaps: [], times: [] };
}

function isNear({ geometry }: Crown, [lon, lat]: readonly [number, number]): boolean {
  const [x, y] = geometry.type === 'Point' ? geometry.coordinates : geometry.coordinates[0][0];
  return Math.abs(x - lon) < NEAR_DEG && Math.abs(y - lat) < NEAR_DEG;
}

/** Shared over joint area, by exact shares of pixels. */
function overlap(ring: ArrayLike<number>, crown: PictureCrown): number {
  const mine = pixelCoverage([demo.image.lonLatToPixel(ring)], demo.window);
  const theirs = pixelCoverage([crown.ring], demo.window);
  const left = new Map(Array.from(theirs.pixels, (p, k) => [p, theirs.weights[k]]));
  let [both, either] = [0, 0];
  mine.pixels.forEach((p, k) => {
    const other = left.get(p) ?? 0;
    left.delete(p);
    both += Math.min(other, mine.weights[k]);
    either += Math.max(other, mine.weights[k]);
  });
  for (const rest of left.values()) either += rest;
  return both / either;
}
