/** A GeoJSON file beyond what one string can hold is streamed: made on the fly, nothing of it is on disk. */
import { type ByteStream, readGeoJson } from '@crownfall/exchange';
import { expect, test } from 'vitest';

const MB = 1024 * 1024;
/** The longest string of V8 is 2^29 − 24 characters. */
const BEYOND_ONE_STRING = 600 * MB;
const VERTICES = 40;
/** What may be held beside the layer itself: pieces in flight, the current feature, garbage not yet collected. */
const ALLOWED_BESIDE_MB = 700;

test.skipIf(!process.env.CROWNFALL_LARGE)(
  'a file of 600 MB is read in one pass, in memory for the layer alone (set CROWNFALL_LARGE=1 to run)',
  async () => {
    const started = performance.now();
    const rssBefore = process.memoryUsage().rss;
    let peak = rssBefore;
    let made = 0;
    async function* town(): ByteStream {
      yield new TextEncoder().encode('{"type":"FeatureCollection","features":[');
      for (let bytes = 0; bytes < BEYOND_ONE_STRING; made += 50) {
        const piece = new TextEncoder().encode(`${made === 0 ? '' : ','}${fifty(made).join(',')}`);
        bytes += piece.length;
        peak = Math.max(peak, process.memoryUsage().rss);
        yield piece;
      }
      yield new TextEncoder().encode(']}');
    }
    const { layer, findings } = await readGeoJson({
      bytes: town(),
      entry: { path: 'crowns.geojson' },
      layer: 'crowns',
    });
    expect(findings).toEqual([]);
    expect(layer?.features).toHaveLength(made);
    expect(layer?.features.at(-1)?.properties.tree_id).toBe(`T-${made - 1}`);
    const coordinatesMb = (made * VERTICES * 16) / MB;
    const seconds = ((performance.now() - started) / 1000).toFixed(0);
    const peakMb = (peak - rssBefore) / MB;
    console.log(
      `${made} crowns, 600 MB, ${seconds} s, peak ${peakMb.toFixed(0)} MB; coordinates alone ${coordinatesMb.toFixed(0)} MB`,
    );
    expect(peakMb).toBeLessThan(2 * coordinatesMb + ALLOWED_BESIDE_MB);
  },
  900_000,
);

function fifty(from: number): string[] {
  return Array.from({ length: 50 }, (_, k) => {
    const [lon, lat] = [((from + k) % 1000) / 5000, Math.floor((from + k) / 1000) / 5000];
    const ring = Array.from({ length: VERTICES }, (_, i) => {
      const angle = (2 * Math.PI * i) / VERTICES;
      return [lon + Math.cos(angle) * 4e-5, lat + Math.sin(angle) * 4e-5].map((degrees) => Number(degrees.toFixed(9)));
    });
    const properties = { tree_id: `T-${from + k}`, host: 'Terminalia buceras', height_m: 12 };
    return JSON.stringify({
      type: 'Feature',
      properties,
      geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]]] },
    });
  });
}
