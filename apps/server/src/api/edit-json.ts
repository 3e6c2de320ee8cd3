/** Edits, their outcomes and conflicts on the wire. */

import type { Conflict, Edit, EditOutcome } from '@crownfall/exchange';
import { geometryToJson } from '@crownfall/exchange';
import type { LonLatGeometry } from '@crownfall/geometry';
import { LAYER_NAMES, type LayerName } from '@crownfall/survey';
import { geometryGiven, propertiesGiven, recordFeature } from './record-json.ts';

const NUMBER = { type: 'integer', minimum: 1, maximum: Number.MAX_SAFE_INTEGER } as const;

/** One edit as JSON Schema; `editGiven` checks geometry and properties further. */
export const EDIT_SCHEMA = {
  type: 'object',
  required: ['action', 'layer'],
  additionalProperties: false,
  properties: {
    action: { type: 'string', enum: ['insert', 'update', 'delete'] },
    layer: { type: 'string', enum: LAYER_NAMES },
    recordId: NUMBER,
    expectedVersion: NUMBER,
    geometry: { type: 'object', nullable: true },
    properties: { type: 'object', maxProperties: 500 },
  },
  oneOf: [
    { properties: { action: { enum: ['insert'] } }, required: ['properties'] },
    { properties: { action: { enum: ['update', 'delete'] } }, required: ['recordId', 'expectedVersion'] },
  ],
} as const;

export interface GivenEdit {
  readonly action: Edit['action'];
  readonly layer: LayerName;
  readonly recordId: number;
  readonly expectedVersion: number;
  readonly geometry?: unknown;
  readonly properties?: unknown;
}

export function editGiven({ action, layer, recordId, expectedVersion, geometry, properties }: GivenEdit): Edit {
  if (action === 'delete') return { action, layer, recordId, expectedVersion };
  if (action === 'insert') {
    return {
      action,
      layer,
      geometry: geometryGiven(layer, geometry ?? null),
      properties: propertiesGiven(layer, properties),
    };
  }
  return {
    action,
    layer,
    recordId,
    expectedVersion,
    ...(geometry === undefined ? {} : { geometry: geometryGiven(layer, geometry) }),
    ...(properties === undefined ? {} : { properties: propertiesGiven(layer, properties) }),
  };
}

export function outcomeJson(outcome: EditOutcome): object {
  if (outcome.outcome === 'unknown') return outcome;
  if (outcome.outcome === 'conflict') return { outcome: 'conflict', conflict: conflictJson(outcome.conflict) };
  return { ...outcome, record: outcome.record && recordFeature(outcome.record) };
}

/** Both sides of a conflict: what was given, and the record as it stands. */
export function conflictJson({ given, current, ...conflict }: Conflict): object {
  return { ...conflict, given: editJson(given), current: current && recordFeature(current) };
}

function editJson(edit: Edit): object {
  if (edit.action === 'delete' || edit.geometry === undefined) return edit;
  return { ...edit, geometry: geometryJson(edit.geometry) };
}

/** A geometry as GeoJSON, coordinates as stored. */
export const geometryJson = (geometry: LonLatGeometry): object | null => geometryToJson(geometry, (degrees) => degrees);
