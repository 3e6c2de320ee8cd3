import type { LonLatGeometry, Place } from '@crownfall/geometry';
import { finding, type RawFeature } from '@crownfall/survey';
import { fieldMapping, type Properties } from '../field-mapping.ts';
import type { FindingSink } from '../finding-sink.ts';
import { featureName, ID_FIELD, type LayerSource, placeOf } from '../layer-reading.ts';
import { checkFeature } from './geojson-gate.ts';
import { geometryFromJson } from './geometry-from-json.ts';

/** Makes raw features of GeoJSON features, one by one, still in the coordinates of their file. */
export interface FeatureIntake {
  readonly place: Place;
  take(feature: unknown, row: number): RawFeature;
  /** Tells which mapped columns were in no record; call it once, after the last one. */
  finish(): void;
}

/** The intake for one file: fields mapped, structural faults told as `geojson-invalid` with the feature's name. */
export function featureIntake(source: Pick<LayerSource, 'entry' | 'layer'>, findings: FindingSink): FeatureIntake {
  const { entry, layer } = source;
  const place = placeOf(source);
  const mapping = fieldMapping(entry, place, findings);

  function take(feature: unknown, row: number): RawFeature {
    const report = checkFeature(feature);
    const { properties, geometry, id } = asRecord(feature);
    const values = withId(mapping.apply(asRecord(properties)), layer === undefined ? undefined : ID_FIELD[layer], id);
    const where = { ...place, feature: featureName(layer, values, row) };
    const taken = takeGeometry(geometry, where);
    for (const problem of report.structural) {
      const lost = taken.kind === 'none' && geometry !== null && geometry !== undefined;
      findings.add(finding('geojson-invalid', lost ? 'warning/left_out' : 'warning/kept', where, { problem }));
    }
    return { row, geometry: taken, properties: values };
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

  return { place, take, finish: () => mapping.finish() };
}

function asRecord(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : {};
}

/** A feature's own `id` (RFC 7946, section 3.2) names the record when no field does. */
function withId(properties: Properties, field: string | undefined, id: unknown): Properties {
  if (field === undefined || (typeof id !== 'string' && typeof id !== 'number')) return properties;
  return properties[field] === undefined || properties[field] === null ? { ...properties, [field]: id } : properties;
}
