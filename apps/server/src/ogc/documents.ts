/** The documents of OGC API – Features Part 1 Core 1.0.1 (OGC 17-069r4) that describe the service and its collections. */
import { COLLECTION_NAMES, type CollectionName } from '../figures/figures.ts';
import type { OpenFigures } from '../figures/open-figures.ts';
import { COLLECTION_NOTES, propertySchemas } from './collection-fields.ts';

export const JSON_TYPE = 'application/json';
export const GEOJSON_TYPE = 'application/geo+json';
export const OPENAPI_TYPE = 'application/vnd.oai.openapi+json;version=3.0';
export const SCHEMA_TYPE = 'application/schema+json';

const CRS84 = 'http://www.opengis.net/def/crs/OGC/1.3/CRS84';
const GREGORIAN = 'http://www.opengis.net/def/uom/ISO-8601/0/Gregorian';
const CONFORMANCE = 'http://www.opengis.net/spec/ogcapi-features-1/1.0/conf';

export interface Link {
  readonly href: string;
  readonly rel: string;
  readonly type: string;
  readonly title: string;
}

export const link = (href: string, rel: string, type: string, title: string): Link => ({ href, rel, type, title });

/** Requirement root-success. `base` is the address of this document, without a slash at its end. */
export function landingPage({ title }: OpenFigures, base: string): object {
  return {
    title,
    description: `Crowns, pavement and blocks of ${title} with their figures, to be read by other programs.`,
    links: [
      link(`${base}`, 'self', JSON_TYPE, 'This document'),
      link(`${base}/api`, 'service-desc', OPENAPI_TYPE, 'The API in OpenAPI 3.0'),
      link(`${base}/conformance`, 'conformance', JSON_TYPE, 'Conformance classes that are met'),
      link(`${base}/collections`, 'data', JSON_TYPE, 'The collections'),
    ],
  };
}

/** Requirement conformance-success. */
export function conformance(): object {
  return { conformsTo: ['core', 'oas30', 'geojson'].map((each) => `${CONFORMANCE}/${each}`) };
}

/** Requirements fc-md-success, fc-md-links, fc-md-items. */
export function collectionsDocument(figures: OpenFigures, base: string): object {
  return {
    links: [link(`${base}/collections`, 'self', JSON_TYPE, 'This document')],
    crs: [CRS84],
    collections: COLLECTION_NAMES.map((name) => collectionDocument(figures, name, base)),
  };
}

/** Requirements sfc-md-success, fc-md-items-links, fc-md-extent. */
export function collectionDocument(figures: OpenFigures, name: CollectionName, base: string): object {
  const { title, description } = COLLECTION_NOTES[name];
  const here = `${base}/collections/${name}`;
  const extent = extentOf(figures, name);
  return {
    id: name,
    title,
    description: `${description} The figures hold all edits up to number ${figures.journal} of the project’s journal.`,
    itemType: 'feature',
    crs: [CRS84],
    ...(extent === null ? {} : { extent }),
    links: [
      link(here, 'self', JSON_TYPE, 'This document'),
      link(`${here}/items`, 'items', GEOJSON_TYPE, `${title} as GeoJSON`),
      link(`${here}/schema`, 'describedby', SCHEMA_TYPE, 'What each property means, with units'),
    ],
  };
}

/** What each property means, as JSON Schema with the unit of every measure. */
export function schemaDocument(name: CollectionName, base: string): object {
  const { title, description, geometry } = COLLECTION_NOTES[name];
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    $id: `${base}/collections/${name}/schema`,
    title,
    description,
    type: 'object',
    properties: {
      geometry: { title: geometry, 'x-ogc-role': 'primary-geometry', format: 'geometry-any' },
      ...propertySchemas(name),
    },
    additionalProperties: true,
  };
}

function extentOf({ collections }: OpenFigures, name: CollectionName): object | null {
  const { bounds, days } = collections[name];
  if (bounds === null && days === null) return null;
  const interval = days && [[`${days[0]}T00:00:00Z`, `${days[1]}T23:59:59Z`]];
  return {
    ...(bounds === null ? {} : { spatial: { bbox: [bounds], crs: CRS84 } }),
    ...(interval === null ? {} : { temporal: { interval, trs: GREGORIAN } }),
  };
}
