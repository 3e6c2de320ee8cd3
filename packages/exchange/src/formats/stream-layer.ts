import type { CoordinateSystem, Finding } from '@crownfall/geometry';
import { isCrsFinding } from '@crownfall/geometry';
import { finding, type RawFeature } from '@crownfall/survey';
import { findingSink } from '../finding-sink.ts';
import { crsOfMember } from '../geojson/crs-member.ts';
import { NOTHING_STATED, statedBy } from '../geojson/feature-collector.ts';
import { featureIntake } from '../geojson/feature-intake.ts';
import type { FeatureTaker } from '../geojson/feature-taker.ts';
import { isLonLat, systemOf } from '../layer-in-lonlat.ts';
import type { LayerReading, LayerSource } from '../layer-reading.ts';
import { convertPositions, lonLatJudge } from '../positions.ts';
import { type Give, handedOver } from './handed-over.ts';
import { readInto } from './read-into.ts';

/** A layer that passes by instead of being held: its features in batches, in longitude and latitude. */
export interface LayerStream {
  readonly batches: AsyncIterable<readonly RawFeature[]>;
  /** The system the file is in; null until the first batch has come. */
  crs(): string | null;
  /** What is known only when the last batch has passed. */
  end(): LayerStreamEnd;
}

export interface LayerStreamEnd {
  /** The system the file was in; null when its positions could not be placed, and what passed by is worth nothing. */
  readonly crs: string | null;
  readonly shape: 'features' | 'table';
  readonly count: number;
  readonly findings: readonly Finding[];
}

/** So many features are handed over at once: enough that handing over costs nothing, few enough to hold. */
const BATCH = 1024;
/** Beyond this a GeoJSON document is read feature by feature. */
const ONE_STRING_BYTES = 4 << 20;

/**
 * Reads a layer of any format without holding it: memory stays within a few batches, whatever the file's size (for
 * GeoParquet a few row groups; delimited text is held whole, as its columns are judged as wholes). Whether positions can
 * be longitude and latitude is known only at the end: an error there makes all that passed by worthless.
 */
export function streamLayer(source: LayerSource): LayerStream {
  const findings = findingSink();
  let end: LayerStreamEnd | null = null;
  let crs: string | null = null;
  const batches = handedOver<readonly RawFeature[]>(async (give) => {
    const taker = streamTaker(source, findings, give, (its) => {
      crs = its;
    });
    const table = await readInto(source, taker, ONE_STRING_BYTES);
    crs = table?.layer?.crs ?? crs;
    end = table ? await tableEnd(table, give) : { ...(await taker.finish()), shape: 'features' };
  });
  return {
    batches,
    crs: () => crs,
    end() {
      if (end === null) throw new RangeError('expected all batches to have been read before the end is asked for');
      return end;
    },
  };
}

async function tableEnd({ layer, findings }: LayerReading, give: Give<readonly RawFeature[]>): Promise<LayerStreamEnd> {
  const features = layer?.features ?? [];
  for (let at = 0; at < features.length; at += BATCH) await give(features.slice(at, at + BATCH));
  return { crs: layer?.crs ?? null, shape: 'table', count: features.length, findings };
}

interface StreamTaker extends FeatureTaker {
  finish(): Promise<Omit<LayerStreamEnd, 'shape'>>;
}

function streamTaker(
  source: LayerSource,
  findings: ReturnType<typeof findingSink>,
  give: Give<readonly RawFeature[]>,
  onCrs: (crs: string) => void,
): StreamTaker {
  const intake = featureIntake(source, findings);
  const { place } = intake;
  const judge = lonLatJudge();
  const stated = { byProject: source.entry.crs, ...NOTHING_STATED };
  let system: CoordinateSystem | 'refused' | null = null;
  let count = 0;
  let held: RawFeature[] = [];

  /** The system is settled with the first feature that passes: what the file says of it later comes too late. */
  function settled(): CoordinateSystem | 'refused' {
    if (system !== null) return system;
    const found = systemOf(stated, place, findings);
    if (isCrsFinding(found)) findings.add(found);
    else onCrs(found.code);
    system = isCrsFinding(found) ? 'refused' : found;
    return system;
  }

  async function handOver(): Promise<void> {
    const batch = held;
    held = [];
    const its = settled();
    if (its === 'refused' || batch.length === 0) return;
    if (isLonLat(its.code)) judge.add(batch);
    else convertPositions(batch, its.toLonLat);
    await give(batch);
  }

  function late(said: string | undefined): void {
    if (system === null || said === undefined || stated.byProject !== undefined) return;
    const problem = `its coordinate system (${said.slice(0, 60)}) is told only after its features; state it as crs`;
    findings.add(finding('geojson-invalid', 'error/stops', place, { problem }));
    system = 'refused';
  }

  return {
    place,
    findings,
    count: () => count,
    addFeature(feature, row = count + 1) {
      count++;
      held.push(intake.take(feature, row));
    },
    crsMember(member) {
      stated.byFile = crsOfMember(member);
      late(stated.byFile);
    },
    statedCrs(text) {
      Object.assign(stated, statedBy(text));
      late(text ?? undefined);
    },
    async ready() {
      if (held.length >= BATCH) await handOver();
    },
    async finish() {
      await handOver();
      intake.finish();
      const its = settled();
      const judged = its === 'refused' || !isLonLat(its.code) ? null : judge.verdict(place);
      if (judged) findings.add(judged);
      const crs = its === 'refused' || judged ? null : its.code;
      return { crs, count, findings: findings.all() };
    },
  };
}
