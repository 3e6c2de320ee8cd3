import { finding } from '@crownfall/survey';
import { gather, oneChunk } from '../byte-stream.ts';
import { decodeText } from '../decode-text.ts';
import { findingSink } from '../finding-sink.ts';
import { inWords, type JsonBreak, type NotNumbers } from '../json/json-stream.ts';
import type { LayerReading, LayerSource } from '../layer-reading.ts';
import { featureCollector } from './feature-collector.ts';
import { streamFeatures } from './feature-stream.ts';
import type { FeatureTaker } from './feature-taker.ts';
import { checkGeometry } from './geojson-gate.ts';
import { isSequence, readSequence } from './geojson-sequence.ts';

/**
 * Files up to this size are parsed in one go, which is faster but needs several times the text's size in memory at once.
 * (The longest string of today's engines is about 512 MB.)
 */
export const ONE_STRING_BYTES = 64 * 1024 * 1024;

const GEOMETRY_TYPES = /^(?:(?:Multi)?(?:Point|LineString|Polygon)|GeometryCollection)$/;

/** File names that say what they hold. */
const SEQUENCE_NAME = /\.(?:geojsonl|geojsons|ndjson|jsonl)$/i;

/**
 * Reads GeoJSON (RFC 7946) into a layer: a FeatureCollection, one Feature, a bare geometry, or a sequence of them, one
 * per line (RFC 8142 or newline-delimited). The `crs` member of older files is heeded. Positions come out in longitude
 * and latitude, rings open; a position that is no number comes out as NaN. Beyond `oneStringBytes` the file is streamed
 * feature by feature, and memory holds the layer alone.
 *
 * Never throws for what the file holds. A truncated or broken file gives all features complete before the break and one
 * finding with line and column; an empty file gives an empty layer.
 */
export async function readGeoJson(source: LayerSource, oneStringBytes = ONE_STRING_BYTES): Promise<LayerReading> {
  const collector = featureCollector(source, findingSink());
  await takeGeoJson(source, collector, oneStringBytes);
  return collector.finish();
}

/** Hands the features of a GeoJSON file to whoever takes them; see `readGeoJson`. */
export async function takeGeoJson(
  source: LayerSource,
  collector: FeatureTaker,
  oneStringBytes = ONE_STRING_BYTES,
): Promise<void> {
  const { head, complete, all } = await gather(source.bytes, oneStringBytes);
  if (SEQUENCE_NAME.test(source.entry.path) || isSequence(head, complete)) await readSequence(all, collector);
  else if (!complete) await streamed(all, collector, true);
  else if (!takeWhole(head, collector)) await streamed(oneChunk(utf8(head)), collector, false);
}

/** True when the text is JSON; what it holds is then taken in. */
function takeWhole(bytes: Uint8Array, collector: FeatureTaker): boolean {
  const { text, encoding, guessed } = decodeText(bytes);
  if (guessed) collector.findings.add(finding('encoding-guessed', 'note/assumed', collector.place, { encoding }));
  if (text.trim() === '') {
    collector.findings.add(finding('not-json', 'warning/left_out', collector.place, { problem: 'the file is empty' }));
    return true;
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return false;
  }
  takeDocument(value, collector);
  return true;
}

function takeDocument(value: unknown, collector: FeatureTaker): void {
  const { type, features, crs } = (value ?? {}) as Record<string, unknown>;
  collector.crsMember(crs);
  if (type === 'FeatureCollection' && Array.isArray(features)) {
    features.forEach((feature, i) => {
      collector.addFeature(feature);
      features[i] = undefined; // lets the parsed text go while the layer grows
    });
  } else if (type === 'Feature') collector.addFeature(value);
  else if (typeof type === 'string' && GEOMETRY_TYPES.test(type)) {
    for (const problem of checkGeometry(value).structural) tellInvalid(collector, problem);
    collector.addFeature({ type: 'Feature', properties: {}, geometry: value });
  } else
    tellInvalid(
      collector,
      `type is ${JSON.stringify(type) ?? 'missing'}; a FeatureCollection with a list of features was expected`,
    );
}

/** Takes in what can be had of a text that is too large for one string, or broken. */
async function streamed(bytes: Parameters<typeof streamFeatures>[0], collector: FeatureTaker, large: boolean) {
  const { broken, notNumbers, type } = await streamFeatures(bytes, collector);
  if (notNumbers) tellInvalid(collector, notNumbersInWords(notNumbers), 'note/kept');
  if (broken) tellBreak(collector, broken);
  else if (type !== 'FeatureCollection') {
    if (large) collector.findings.add(finding('file-too-large', 'error/stops', collector.place, {}));
    else tellInvalid(collector, `type is ${JSON.stringify(type) ?? 'missing'}; a FeatureCollection was expected`);
  }
}

/** Tells where the text breaks and how much of it was kept. Nothing kept: the layer cannot be trusted to be there. */
function tellBreak(collector: FeatureTaker, broken: JsonBreak): void {
  const { line } = broken;
  const kept = collector.count();
  const what = inWords(broken);
  const problem = kept === 0 ? what : `${what}; the ${kept} complete features before it are kept`;
  if (broken.kind === 'truncated') {
    const facts = { problem: `line ${line}, ${problem}`, bytes: broken.offset };
    const grade = kept === 0 ? 'error/stops' : 'warning/left_out';
    collector.findings.add(finding('file-truncated', grade, collector.place, facts));
  } else {
    const grade = kept === 0 ? 'error/stops' : 'warning/left_out';
    collector.findings.add(finding('not-json', grade, collector.place, { problem, line }));
  }
}

function notNumbersInWords({ count, line, column }: NotNumbers): string {
  return `NaN or Infinity is not JSON (line ${line}, column ${column}, ${count} in all); taken as missing`;
}

function tellInvalid(
  collector: FeatureTaker,
  problem: string,
  grade: 'warning/left_out' | 'note/kept' = 'warning/left_out',
) {
  collector.findings.add(finding('geojson-invalid', grade, collector.place, { problem }));
}

function utf8(bytes: Uint8Array): Uint8Array {
  return new TextEncoder().encode(decodeText(bytes).text);
}
