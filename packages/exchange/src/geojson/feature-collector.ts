import type { LonLatGeometry, Place } from '@crownfall/geometry';
import { finding, type RawFeature } from '@crownfall/survey';
import { fieldMapping, type Properties } from '../field-mapping.ts';
import type { FindingSink } from '../finding-sink.ts';
import { bringToLonLat } from '../layer-in-lonlat.ts';
import { featureName, ID_FIELD, type LayerReading, type LayerSource, placeOf } from '../layer-reading.ts';
import { crsOfMember } from './crs-member.ts';
import { checkFeature } from './geojson-gate.ts';
import { geometryFromJson } from './geometry-from-json.ts';

/** Takes in the features of one file, however they arrive, and makes the layer of them. */
export interface FeatureCollector {
  readonly place: Place;
  readonly findings: FindingSink;
  /** How many features were taken in. */
  count(): number;
  /** `row` is the feature's position in the file, from 1; by default one more than the last. */
  addFeature(feature: unknown, row?: number): void;
  /** The value of the file's `crs` member (of GeoJSON before RFC 7946). */
  crsMember(member: unknown): void;
  finish(): LayerReading;
}

/** A collector for one file. Structural faults are told as `geojson-invalid` with the feature's name. */
export function featureCollector(
  source: Pick<LayerSource, 'entry' | 'layer'>,
  findings: FindingSink,
): FeatureCollector {
  const { entry, layer } = source;
  const place = placeOf(source);
  const mapping = fieldMapping(entry, place, findings);
  const features: RawFeature[] = [];
  let fileCrs: string | undefined;

  function addFeature(feature: unknown, row = features.length + 1): void {
    const report = checkFeature(feature);
    const { properties, geometry, id } = asRecord(feature);
    const values = withId(mapping.apply(asRecord(properties)), layer === undefined ? undefined : ID_FIELD[layer], id);
    const where = { ...place, feature: featureName(layer, values, row) };
    const taken = takeGeometry(geometry, where);
    for (const problem of report.structural) {
      const lost = taken.kind === 'none' && geometry !== null && geometry !== undefined;
      findings.add(finding('geojson-invalid', lost ? 'warning/left_out' : 'warning/kept', where, { problem }));
    }
    features.push({ row, geometry: taken, properties: values });
  }

  function takeGeometry(geometry: unknown, where: Place): LonLatGeometry {
    return geometryFromJson(geometry, {
      unclosed(polygon, ring) {
        const facts = { polygon, ring };
        findings.add({ code: 'ring-unclosed', severity: 'warning', effect: 'mended', where, facts });
      },
      collectionMixed(kept, leftOut) {
        const problem = `a GeometryCollection of several kinds: ${kept} kept, ${leftOut} other left out`;
        findings.add(finding('geojson-invalid', 'warning/left_out', where, { problem }));
      },
    });
  }

  return {
    place,
    findings,
    count: () => features.length,
    addFeature,
    crsMember(member) {
      fileCrs = crsOfMember(member);
    },
    finish() {
      mapping.finish();
      const stated = { byProject: entry.crs, byFile: fileCrs, byFormat: 'OGC:CRS84' };
      const crs = bringToLonLat(features, stated, place, findings);
      return {
        layer: crs === null ? null : { file: entry.path, shape: 'features', crs, features },
        findings: findings.all(),
      };
    },
  };
}

function asRecord(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : {};
}

/** A feature's own `id` (RFC 7946, section 3.2) names the record when no field does. */
function withId(properties: Properties, field: string | undefined, id: unknown): Properties {
  if (field === undefined || (typeof id !== 'string' && typeof id !== 'number')) return properties;
  return properties[field] === undefined || properties[field] === null ? { ...properties, [field]: id } : properties;
}
