import type { RawFeature } from '@crownfall/survey';
import type { FindingSink } from '../finding-sink.ts';
import { bringToLonLat } from '../layer-in-lonlat.ts';
import type { LayerReading, LayerSource } from '../layer-reading.ts';
import { crsOfMember } from './crs-member.ts';
import { featureIntake } from './feature-intake.ts';
import type { FeatureTaker } from './feature-taker.ts';

/** Takes in the features of one file and makes the layer of them. */
export interface FeatureCollector extends FeatureTaker {
  finish(): LayerReading;
}

/** A collector for one file. Structural faults are told as `geojson-invalid` with the feature's name. */
export function featureCollector(
  source: Pick<LayerSource, 'entry' | 'layer'>,
  findings: FindingSink,
): FeatureCollector {
  const { entry } = source;
  const intake = featureIntake(source, findings);
  const { place } = intake;
  const features: RawFeature[] = [];
  const stated = { byProject: entry.crs, ...NOTHING_STATED };

  return {
    place,
    findings,
    count: () => features.length,
    addFeature(feature, row = features.length + 1) {
      features.push(intake.take(feature, row));
    },
    crsMember(member) {
      stated.byFile = crsOfMember(member);
    },
    statedCrs(text) {
      Object.assign(stated, statedBy(text));
    },
    ready: () => Promise.resolve(),
    finish() {
      intake.finish();
      const crs = bringToLonLat(features, stated, place, findings);
      return {
        layer: crs === null ? null : { file: entry.path, shape: 'features', crs, features },
        findings: findings.all(),
      };
    },
  };
}

/** What holds until a file says otherwise: GeoJSON is longitude and latitude (RFC 7946, section 4). */
export const NOTHING_STATED: { byFile: string | undefined; byFormat: string | undefined } = {
  byFile: undefined,
  byFormat: 'OGC:CRS84',
};

/** What a file says of its system, as the reckoning of systems wants it. */
export function statedBy(text: string | null): typeof NOTHING_STATED {
  return text === null ? { byFile: undefined, byFormat: undefined } : { byFile: text, byFormat: undefined };
}
