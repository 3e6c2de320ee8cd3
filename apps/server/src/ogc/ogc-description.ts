/**
 * The OpenAPI 3.0 description of the collections' API. Parameters follow the fragments of OGC 17-069r4, requirements
 * fc-limit-definition, fc-bbox-definition and fc-time-definition.
 */
import { COLLECTION_NAMES, type CollectionName } from '../figures/figures.ts';
import type { OpenFigures } from '../figures/open-figures.ts';
import { COLLECTION_NOTES, propertySchemas } from './collection-fields.ts';
import { GEOJSON_TYPE, JSON_TYPE, OPENAPI_TYPE, SCHEMA_TYPE } from './documents.ts';
import { LIMIT } from './item-query.ts';

export function ogcDescription({ title, collections }: OpenFigures, base: string): object {
  const ids = (name: CollectionName): string | undefined => collections[name].set.ids[0];
  return {
    openapi: '3.0.3',
    info: {
      title: `${title}: collections`,
      description:
        'Crowns, pavement and blocks with their figures. Areas in m², positions in WGS 84 longitude/latitude.',
      version: '1.0.0',
    },
    servers: [{ url: base }],
    tags: [{ name: 'Capabilities' }, { name: 'Data' }],
    paths: {
      '/': read('landingPage', 'Landing page', 'LandingPage', JSON_TYPE, 'Capabilities'),
      '/api': read('apiDescription', 'This description', 'AnyObject', OPENAPI_TYPE, 'Capabilities'),
      '/conformance': read('conformance', 'Conformance classes', 'ConfClasses', JSON_TYPE, 'Capabilities'),
      '/collections': read('collections', 'The collections', 'Collections', JSON_TYPE, 'Capabilities'),
      ...Object.assign({}, ...COLLECTION_NAMES.map((name) => collectionPaths(name, ids(name)))),
    },
    components: { parameters: PARAMETERS, responses: RESPONSES, schemas: { ...SCHEMAS, ...featureSchemas() } },
  };
}

function collectionPaths(name: CollectionName, example: string | undefined): object {
  const { title } = COLLECTION_NOTES[name];
  const schema = capital(name);
  const id = {
    name: 'featureId',
    in: 'path',
    required: true,
    description: `Id of a feature of ${name}.`,
    schema: { type: 'string' },
    ...(example === undefined ? {} : { example }),
  };
  const feature = read(`${name}Feature`, `One feature of ${title}`, `${schema}Feature`, GEOJSON_TYPE, 'Data');
  return {
    [`/collections/${name}`]: read(name, title, 'Collection', JSON_TYPE, 'Capabilities'),
    [`/collections/${name}/schema`]: read(
      `${name}Schema`,
      `Properties of ${title}`,
      'AnyObject',
      SCHEMA_TYPE,
      'Capabilities',
    ),
    [`/collections/${name}/items`]: withParameters(
      read(`${name}Features`, `Features of ${title}`, `${schema}Features`, GEOJSON_TYPE, 'Data'),
      ['limit', 'offset', 'bbox', 'datetime'].map(parameter),
    ),
    [`/collections/${name}/items/{featureId}`]: withParameters(feature, [id], ['404']),
  };
}

const read = (operationId: string, summary: string, schema: string, type: string, tag: string) => ({
  get: {
    operationId,
    summary,
    tags: [tag],
    parameters: [parameter('f')] as object[],
    responses: {
      '200': { description: summary, content: { [type]: { schema: { $ref: `#/components/schemas/${schema}` } } } },
      ...refusals(['400', '401', '403', '421', '429']),
    },
  },
});

function withParameters(
  { get }: ReturnType<typeof read>,
  more: readonly object[],
  codes: readonly string[] = [],
): object {
  return {
    get: { ...get, parameters: [...more, ...get.parameters], responses: { ...get.responses, ...refusals(codes) } },
  };
}

const parameter = (name: string): object => ({ $ref: `#/components/parameters/${name}` });

const refusals = (codes: readonly string[]): object =>
  Object.fromEntries(codes.map((code) => [code, { $ref: '#/components/responses/Refusal' }]));

const capital = (name: string): string => name[0].toUpperCase() + name.slice(1);

const query = (name: string, description: string, schema: object): object => ({
  name,
  in: 'query',
  description,
  required: false,
  schema,
  style: 'form',
  explode: false,
});

const PARAMETERS = {
  limit: query('limit', 'Most features of a page. More than the maximum is taken as the maximum.', {
    type: 'integer',
    minimum: 1,
    maximum: LIMIT.max,
    default: LIMIT.default,
  }),
  offset: query('offset', 'Matching features before the page.', { type: 'integer', minimum: 0, default: 0 }),
  bbox: query('bbox', 'Only features that meet this box: west,south,east,north in degrees (WGS 84).', {
    type: 'array',
    oneOf: [
      { minItems: 4, maxItems: 4 },
      { minItems: 6, maxItems: 6 },
    ],
    items: { type: 'number' },
  }),
  datetime: query('datetime', 'Only features observed then: an instant or an interval with .. for an open end.', {
    type: 'string',
  }),
  f: query('f', 'Format of the answer.', { type: 'string', enum: ['json'] }),
};

const text = { type: 'string' } as const;
const numbers = { type: 'array', items: { type: 'number' } } as const;
const list = (items: object): object => ({ type: 'array', items });
const shape = (required: readonly string[], properties: object): object => ({ type: 'object', required, properties });
const ref = (name: string): object => ({ $ref: `#/components/schemas/${name}` });

const SCHEMAS = {
  AnyObject: { type: 'object', additionalProperties: true },
  Link: shape(['href'], { href: text, rel: text, type: text, title: text }),
  LandingPage: shape(['links'], { title: text, description: text, links: list(ref('Link')) }),
  ConfClasses: shape(['conformsTo'], { conformsTo: list(text) }),
  Extent: {
    type: 'object',
    properties: {
      spatial: { type: 'object', properties: { bbox: list(numbers), crs: text } },
      temporal: { type: 'object', properties: { interval: list(list({ ...text, nullable: true })), trs: text } },
    },
  },
  Collection: shape(['id', 'links'], {
    id: text,
    title: text,
    description: text,
    itemType: text,
    crs: list(text),
    extent: ref('Extent'),
    links: list(ref('Link')),
  }),
  Collections: shape(['links', 'collections'], { links: list(ref('Link')), collections: list(ref('Collection')) }),
  Geometry: {
    ...shape(['type', 'coordinates'], { type: text, coordinates: list({}) }),
    description: 'By RFC 7946, in WGS 84 longitude/latitude.',
    nullable: true,
  },
  Refusal: shape(['code'], { code: text, description: text }),
};

const RESPONSES = {
  Refusal: {
    description: 'Why the request is not fulfilled.',
    content: { [JSON_TYPE]: { schema: ref('Refusal') } },
  },
};

function featureSchemas(): Record<string, object> {
  return Object.assign({}, ...COLLECTION_NAMES.map(schemasOf));
}

function schemasOf(name: CollectionName): Record<string, object> {
  const links = list(ref('Link'));
  const properties = { type: 'object', properties: propertySchemas(name), additionalProperties: true };
  const count = { type: 'integer', minimum: 0 };
  return {
    [`${capital(name)}Feature`]: shape(['type', 'id', 'geometry', 'properties'], {
      type: { ...text, enum: ['Feature'] },
      id: text,
      geometry: ref('Geometry'),
      properties,
      links,
    }),
    [`${capital(name)}Features`]: shape(['type', 'features'], {
      type: { ...text, enum: ['FeatureCollection'] },
      features: list(ref(`${capital(name)}Feature`)),
      links,
      timeStamp: { ...text, format: 'date-time' },
      numberMatched: count,
      numberReturned: count,
    }),
  };
}
