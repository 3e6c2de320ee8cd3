/**
 * OGC API – Features Part 1 Core 1.0.1 (OGC 17-069r4), requirement by requirement as the standard names them: the 35 files of
 * `core/standard/requirements/core` at tag 1.0.1, with the classes oas30 and geojson. Served from the two-block town.
 */
import { request } from 'node:http';
import { join } from 'node:path';
import { Validator } from '@seriousme/openapi-schema-validator';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../journeys/crownfall-process.ts';
import { STAINED_M2, writeTinyTown } from '../journeys/tiny-town.ts';
import { type Answer, call, type Running, runServer } from './server-running.ts';

const CRS84 = 'http://www.opengis.net/def/crs/OGC/1.3/CRS84';
const COLLECTIONS = ['crowns', 'pavement', 'blocks'];
const COUNTS: Readonly<Record<string, number>> = { crowns: 2, pavement: 2, blocks: 2 };

interface Link {
  readonly href: string;
  readonly rel: string;
  readonly type?: string;
}

let running: Running;
let root: string;

beforeAll(async () => {
  running = await runServer(writeTinyTown(join(temporaryFolder(), 'town')));
  root = `${running.url}/ogc`;
});
afterAll(() => running?.close());

const get = (path: string, headers: Readonly<Record<string, string>> = {}): Promise<Answer> =>
  call(path.startsWith('http') ? path : `${root}${path}`, 'GET', undefined, headers);

const items = (query = '', name = 'crowns'): Promise<Answer> => get(`/collections/${name}/items${query}`);
const rel = (links: readonly Link[], wanted: string): Link | undefined => links.find((link) => link.rel === wanted);
const ids = (answer: Answer): unknown[] => answer.body.features.map(({ id }: { id: string }) => id);

/** What the API definition says of an operation's parameter. */
async function parameter(name: string): Promise<Record<string, unknown>> {
  const { body } = await get('/api');
  const { parameters } = body.paths['/collections/crowns/items'].get;
  const resolved = parameters.map(
    ({ $ref }: { $ref: string }) => body.components.parameters[$ref.split('/').at(-1) ?? ''],
  );
  return resolved.find((each: { name: string }) => each.name === name);
}

describe('requirements class core', () => {
  test('/req/core/root-op', async () => {
    expect((await get('')).status).toBe(200);
    expect((await get('/')).status).toBe(200);
  });

  test('/req/core/root-success', async () => {
    const { status, body } = await get('/');
    expect(status).toBe(200);
    expect(rel(body.links, 'service-desc')?.href).toBe(`${root}/api`);
    expect(rel(body.links, 'conformance')?.href).toBe(`${root}/conformance`);
    expect(rel(body.links, 'data')?.href).toBe(`${root}/collections`);
  });

  test('/req/core/api-definition-op', async () => {
    const { body } = await get('/');
    expect((await get(rel(body.links, 'service-desc')?.href ?? '')).status).toBe(200);
  });

  test('/req/core/api-definition-success', async () => {
    const link = rel((await get('/')).body.links, 'service-desc');
    const { status, headers, body } = await get(link?.href ?? '', { accept: link?.type ?? '' });
    expect(status).toBe(200);
    expect(headers.get('content-type')?.replace('; ', ';')).toBe(link?.type);
    expect(body.openapi).toMatch(/^3\.0\./);
  });

  test('/req/core/conformance-op', async () => {
    expect((await get('/conformance')).status).toBe(200);
  });

  test('/req/core/conformance-success', async () => {
    const { body } = await get('/conformance');
    expect(body.conformsTo).toEqual(
      ['core', 'oas30', 'geojson'].map((each) => `http://www.opengis.net/spec/ogcapi-features-1/1.0/conf/${each}`),
    );
  });

  test('/req/core/http', async () => {
    const { hostname, port } = new URL(root);
    const version = await new Promise((found) => {
      request({ hostname, port, path: '/ogc/', method: 'HEAD' }, (answer) => found(answer.httpVersion)).end();
    });
    expect(version).toBe('1.1');
    const { status, headers } = await call(`${root}/collections`, 'POST', {});
    expect(status).toBe(405);
    expect(headers.get('allow')).toContain('GET');
  });

  test.each([
    '',
    '/',
    '/conformance',
    '/collections',
    '/collections/crowns',
    '/collections/crowns/items',
    '/collections/crowns/items/T-GALLED',
  ])('/req/core/query-param-unknown on %s', async (path) => {
    const { status, body } = await get(`${path}?no_such=1`);
    expect(status).toBe(400);
    expect(body.description).toContain('no_such');
  });

  test.each([
    ['limit=0'],
    ['limit=-1'],
    ['limit=many'],
    ['limit=1.5'],
    ['limit='],
    ['limit=5&limit=6'],
    ['offset=-1'],
    ['bbox=1,2,3'],
    ['bbox=1,2,3,4,5'],
    ['bbox=a,b,c,d'],
    ['bbox='],
    ['bbox=0,10,1,5'],
    ['bbox=-200,0,1,1'],
    ['bbox=0,0,1,91'],
    ['bbox=0,0,,1'],
    ['datetime=yesterday'],
    ['datetime=2026-13-01T00:00:00Z'],
    ['datetime=2026-02-30'],
    ['datetime=2026-05-02T00:00:00Z/2026-05-01T00:00:00Z'],
    ['datetime=../..'],
    ['datetime='],
    ['f=xml'],
  ])('/req/core/query-param-invalid: %s', async (query) => {
    const { status, body } = await items(`?${query}`);
    expect(status).toBe(400);
    expect(body.code).toBe('invalid-parameter');
    expect(body.description).toContain(query.split('=')[0]);
  });

  test('/req/core/crs84', async () => {
    const { body } = await items();
    for (const { geometry } of body.features) {
      const [lon, lat] = geometry.coordinates.flat(1)[0];
      expect(lon).toBeCloseTo(-79.5, 1);
      expect(lat).toBeCloseTo(27.25, 1);
    }
  });

  test('/req/core/fc-md-op', async () => {
    expect((await get('/collections')).status).toBe(200);
  });

  test('/req/core/fc-md-success', async () => {
    const { status, body } = await get('/collections');
    expect(status).toBe(200);
    expect(Array.isArray(body.links)).toBe(true);
    for (const collection of body.collections) {
      expect(typeof collection.id).toBe('string');
      expect(Array.isArray(collection.links)).toBe(true);
    }
  });

  test('/req/core/fc-md-links', async () => {
    const { body } = await get('/collections');
    expect(rel(body.links, 'self')).toMatchObject({ href: `${root}/collections`, type: 'application/json' });
    // There is no other media type, so there is no link `alternate`.
    expect(rel(body.links, 'alternate')).toBeUndefined();
  });

  test('/req/core/fc-md-items', async () => {
    const { body } = await get('/collections');
    expect(body.collections.map(({ id }: { id: string }) => id)).toEqual(COLLECTIONS);
  });

  test('/req/core/fc-md-items-links', async () => {
    for (const { id, links } of (await get('/collections')).body.collections) {
      expect(rel(links, 'items')).toMatchObject({
        href: `${root}/collections/${id}/items`,
        type: 'application/geo+json',
      });
      for (const link of links) expect([typeof link.rel, typeof link.type]).toEqual(['string', 'string']);
    }
  });

  test.each(COLLECTIONS)('/req/core/fc-md-extent holds all features of %s', async (name) => {
    const { extent } = (await get(`/collections/${name}`)).body;
    expect(extent.spatial.crs).toBe(CRS84);
    const [[west, south, east, north]] = extent.spatial.bbox;
    for (const { geometry } of (await items('', name)).body.features) {
      for (const [lon, lat] of geometry.coordinates.flat(1)) {
        expect(lon).toBeGreaterThanOrEqual(west);
        expect(lon).toBeLessThanOrEqual(east);
        expect(lat).toBeGreaterThanOrEqual(south);
        expect(lat).toBeLessThanOrEqual(north);
      }
    }
    if (name === 'crowns') expect(extent.temporal.interval).toEqual([['2026-05-04T00:00:00Z', '2026-05-04T23:59:59Z']]);
  });

  test('/req/core/fc-md-extent-multi', async () => {
    for (const { extent } of (await get('/collections')).body.collections) expect(extent.spatial.bbox).toHaveLength(1);
  });

  test('/req/core/sfc-md-op and /req/core/sfc-md-success', async () => {
    const { body } = await get('/collections');
    for (const collection of body.collections) {
      const single = await get(rel(collection.links, 'self')?.href ?? '');
      expect(single.status).toBe(200);
      expect(single.body).toEqual(collection);
    }
    expect((await get('/collections/none')).status).toBe(404);
  });

  test.each(COLLECTIONS)('/req/core/fc-op on %s', async (name) => {
    expect((await items('', name)).status).toBe(200);
  });

  test('/req/core/fc-limit-definition', async () => {
    expect(await parameter('limit')).toMatchObject({
      in: 'query',
      required: false,
      schema: { type: 'integer', minimum: 1, maximum: 10_000, default: 100 },
      style: 'form',
      explode: false,
    });
  });

  test('/req/core/fc-limit-response-1, and more than the maximum is no error', async () => {
    expect((await items('?limit=1')).body.features).toHaveLength(1);
    const much = await items('?limit=100000');
    expect(much.status).toBe(200);
    expect(much.body.features).toHaveLength(2);
  });

  test('/req/core/fc-bbox-definition', async () => {
    expect(await parameter('bbox')).toMatchObject({
      in: 'query',
      required: false,
      schema: {
        type: 'array',
        oneOf: [
          { minItems: 4, maxItems: 4 },
          { minItems: 6, maxItems: 6 },
        ],
        items: { type: 'number' },
      },
      style: 'form',
      explode: false,
    });
  });

  test('/req/core/fc-bbox-response', async () => {
    // The galled tree stands in the western block, the clean one 0.0008° further east.
    expect(ids(await items('?bbox=-79.6,27,-79.4997,27.5'))).toEqual(['T-GALLED']);
    expect(ids(await items('?bbox=-79.6,27,-100,-79.4997,27.5,100'))).toEqual(['T-GALLED']);
    expect(ids(await items('?bbox=10,10,11,11'))).toEqual([]);
    // West of 179° to east of -79.3°, over the 180th meridian.
    expect(ids(await items('?bbox=179,27,-79.4997,28'))).toEqual(['T-GALLED']);
    // A corner of the circle's own box that the circle does not reach: the geometry counts, not its box.
    const [[west, south]] = (await get('/collections/crowns')).body.extent.spatial.bbox;
    const e = 0.000002;
    expect(ids(await items(`?bbox=${west},${south},${west + e},${south + e}`))).toEqual([]);
    // A box wholly inside a crown meets it.
    const x = -79.5 + 0.0008 / 5;
    expect(ids(await items(`?bbox=${x},27.25,${x + e},${27.25 + e}`))).toEqual(['T-GALLED']);
  });

  test('/req/core/fc-time-definition', async () => {
    expect(await parameter('datetime')).toMatchObject({
      in: 'query',
      required: false,
      schema: { type: 'string' },
      style: 'form',
      explode: false,
    });
  });

  test.each([
    ['2026-05-04T12:00:00Z', 2],
    ['2026-05-04', 2],
    ['2026-05-03T12:00:00Z', 0],
    ['2026-05-05T01:30:00%2B02:00', 2],
    ['2026-05-05T02:30:00%2B02:00', 0],
    ['2026-05-01T00:00:00Z/2026-05-31T00:00:00Z', 2],
    ['../2026-05-04T00:00:00Z', 2],
    ['/2026-05-03T23:59:59Z', 0],
    ['2026-05-04T23:59:59Z/..', 2],
    ['2026-05-05T00:00:00Z/', 0],
  ])('/req/core/fc-time-response: %s matches %i crowns', async (datetime, count) => {
    const { status, body } = await items(`?datetime=${datetime}`);
    expect(status).toBe(200);
    expect(body.numberMatched).toBe(count);
    // Pavement has no time of its own: it matches any.
    expect((await items(`?datetime=${datetime}`, 'pavement')).body.numberMatched).toBe(2);
  });

  test('/req/core/fc-response', async () => {
    for (const name of COLLECTIONS) {
      const { status, body } = await items('', name);
      expect(status).toBe(200);
      expect(body.features).toHaveLength(COUNTS[name]);
    }
  });

  test('/req/core/fc-links, and pages linked by next (/rec/core/fc-next-1)', async () => {
    const seen: unknown[] = [];
    let url: string | undefined = `${root}/collections/crowns/items?limit=1`;
    for (let page = 0; url !== undefined && page < 10; page++) {
      const { body }: Answer = await get(url);
      expect(rel(body.links, 'self')?.href).toBe(url);
      seen.push(...body.features.map(({ id }: { id: string }) => id));
      url = rel(body.links, 'next')?.href;
    }
    expect(seen).toEqual(['T-GALLED', 'T-CLEAN']);
    const filtered = await items('?limit=1&bbox=-80,27,-79,28');
    expect(rel(filtered.body.links, 'next')?.href).toContain('bbox=-80%2C27%2C-79%2C28');
  });

  test('/req/core/fc-rel-type', async () => {
    for (const link of (await items('?limit=1')).body.links) expect(typeof link.type).toBe('string');
  });

  test('/req/core/fc-timeStamp', async () => {
    const before = Date.now();
    const { timeStamp } = (await items()).body;
    expect(timeStamp).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d+Z$/);
    expect(Date.parse(timeStamp)).toBeGreaterThanOrEqual(before);
    expect(Date.parse(timeStamp)).toBeLessThanOrEqual(Date.now());
  });

  test('/req/core/fc-numberMatched', async () => {
    expect((await items('?limit=1')).body.numberMatched).toBe(2);
    expect((await items('?bbox=-79.6,27,-79.4997,27.5&limit=1')).body.numberMatched).toBe(1);
  });

  test('/req/core/fc-numberReturned', async () => {
    for (const query of ['?limit=1', '?limit=1&offset=1', '?offset=2', '?bbox=10,10,11,11']) {
      const { body } = await items(query);
      expect(body.numberReturned).toBe(body.features.length);
    }
  });

  test('/req/core/f-op', async () => {
    for (const name of COLLECTIONS) {
      for (const id of ids(await items('', name))) {
        expect((await get(`/collections/${name}/items/${id}`)).status).toBe(200);
      }
    }
    expect((await get('/collections/crowns/items/no-such-tree')).status).toBe(404);
  });

  test('/req/core/f-success, with the figure that closed form gives', async () => {
    const { status, headers, body } = await get('/collections/crowns/items/T-GALLED');
    expect(status).toBe(200);
    expect(headers.get('content-type')).toBe('application/geo+json');
    expect(body).toMatchObject({
      type: 'Feature',
      id: 'T-GALLED',
      properties: { tree_id: 'T-GALLED', severity_pct: 50 },
    });
    // π r² (1 − e^−s): half of the crown of 4 m radius browned, no drift; areas are exact to 0.1 % of the outline.
    expect(body.properties.stained_m2).toBeCloseTo(STAINED_M2, 1);
  });

  test('/req/core/f-links', async () => {
    const { links } = (await get('/collections/crowns/items/T-GALLED')).body;
    expect(rel(links, 'self')).toMatchObject({
      href: `${root}/collections/crowns/items/T-GALLED`,
      type: 'application/geo+json',
    });
    expect(rel(links, 'collection')).toMatchObject({ href: `${root}/collections/crowns`, type: 'application/json' });
  });
});

describe('requirements class geojson', () => {
  test('/req/geojson/definition and /req/geojson/content', async () => {
    const { headers, body } = await items();
    expect(headers.get('content-type')).toBe('application/geo+json');
    expect(body.type).toBe('FeatureCollection');
    for (const feature of body.features)
      expect(feature).toMatchObject({ type: 'Feature', geometry: { type: 'Polygon' } });
  });
});

describe('requirements class oas30', () => {
  test('/req/oas30/oas-definition-2: valid by the schema of OpenAPI 3.0', async () => {
    for (const address of [`${root}/api`, `${running.url}/api/openapi.json`]) {
      const { body } = await get(address);
      const result = await new Validator().validate(body);
      expect(result.errors ?? []).toEqual([]);
      expect(result.valid).toBe(true);
    }
  });

  test('/req/oas30/oas-impl: every path that is described answers', async () => {
    const { body } = await get('/api');
    for (const path of Object.keys(body.paths)) {
      const name = path.split('/')[2];
      const example = name === undefined ? '' : encodeURIComponent(String(ids(await items('?limit=1', name))[0]));
      expect((await get(path.replace('{featureId}', example))).status).toBe(200);
    }
  });

  test('every property of every feature is described, measures with their unit', async () => {
    const units: Readonly<Record<string, string>> = { m: 'm', m2: 'm²', pct: '%' };
    for (const name of COLLECTIONS) {
      const { body } = await get(`/collections/${name}/schema`);
      for (const { properties } of (await items('', name)).body.features) {
        expect(Object.keys(properties).sort()).toEqual(
          Object.keys(body.properties)
            .filter((field) => field !== 'geometry')
            .sort(),
        );
        for (const field of Object.keys(properties)) {
          expect(body.properties[field], field).toMatchObject({
            title: expect.any(String),
            description: expect.any(String),
          });
          const unit = units[field.split('_').at(-1) ?? ''];
          if (unit !== undefined) expect(body.properties[field]['x-unit']).toBe(unit);
        }
      }
    }
  });
});
