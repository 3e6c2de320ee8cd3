/**
 * Bad requests made from the server's own OpenAPI descriptions, at least 2,000 of them, seeded: whatever is asked, no answer is a
 * 5xx, none tells where in the program something happened, and the project is as usable afterwards as before.
 */
import { request } from 'node:http';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from '../journeys/crownfall-process.ts';
import { writeTinyTown } from '../journeys/tiny-town.ts';
import { call, packedProject, type Running, runServer } from './server-running.ts';

const REQUESTS = 2400;
const SEED = 20_260_525;

let running: Running;

beforeAll(async () => {
  running = await runServer(await packedProject(writeTinyTown(join(temporaryFolder(), 'town'))));
});
afterAll(() => running?.close());

// biome-ignore lint/suspicious/noExplicitAny: a schema's members are of every shape.
type Schema = Readonly<Record<string, any>>;

interface Operation {
  readonly method: string;
  readonly path: string;
  readonly parameters: readonly { readonly name: string; readonly in: string; readonly schema: Schema }[];
  readonly body: Schema | null;
  readonly bodyType: string;
}

async function operations(): Promise<Operation[]> {
  const found: Operation[] = [];
  for (const [address, prefix] of [
    ['/ogc/api', '/ogc'],
    ['/api/openapi.json', ''],
  ]) {
    const { body } = await call(`${running.url}${address}`, 'GET');
    for (const [path, methods] of Object.entries<Schema>(body.paths)) {
      for (const [method, operation] of Object.entries(methods)) {
        const parameters = (operation.parameters ?? []).map((each: Schema) =>
          each.$ref === undefined ? each : body.components.parameters[each.$ref.split('/').at(-1)],
        );
        const content = Object.entries<Schema>(operation.requestBody?.content ?? {})[0];
        found.push({
          method: method.toUpperCase(),
          path: `${prefix}${path}`,
          parameters,
          body: content?.[1].schema ?? null,
          bodyType: content?.[0] ?? 'application/json',
        });
      }
    }
  }
  return found;
}

/** Text that programs stumble over. */
const NASTY = [
  '',
  ' ',
  '0',
  '-1',
  '1e309',
  'NaN',
  'null',
  'true',
  '[]',
  '{}',
  '../../etc/passwd',
  '..%2f..%2fetc%2fpasswd',
  '%00',
  '%',
  '%zz',
  "' OR 1=1 --",
  '"; DROP TABLE crowns; --',
  '<script>alert(1)</script>',
  '$' + '{7*7}',
  '\u0000',
  '\ud800',
  '𝒳',
  'ﷺ'.repeat(50),
  'A'.repeat(5000),
  '9'.repeat(400),
  '2026-02-30',
  '0000-00-00',
  '..',
  '/',
  '//',
  '\\',
  '%2e%2e%2f',
  '__proto__',
  'constructor',
  'toString',
  '-0',
  '1.5',
  '0x10',
  '1,2,3,4',
  '181,0,182,1',
  'NaN,NaN,NaN,NaN',
  '1,2,3,4,5,6,7',
  '9007199254740993',
  '-79.5,27,-79,28',
];

const nastyText = fc.oneof(fc.constantFrom(...NASTY), fc.string({ unit: 'binary', maxLength: 40 }));
const anything = fc.oneof(
  nastyText,
  fc.jsonValue({ maxDepth: 4 }),
  fc.constantFrom(null, 0, -1, 1.5, 2 ** 53, -(2 ** 31), true, [], {}, [[[[[[[[]]]]]]]]),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

const GEOMETRIES = fc.oneof(
  anything,
  fc.record({
    type: fc.constantFrom('Point', 'LineString', 'Polygon', 'MultiPolygon', 'GeometryCollection', 'Circle'),
    coordinates: anything,
  }),
  fc.constantFrom(
    { type: 'Point', coordinates: [-79.5, 27.25] },
    { type: 'Point', coordinates: [1e300, 1e300] },
    { type: 'Point', coordinates: [] },
    {
      type: 'Polygon',
      coordinates: [
        [
          [0, 0],
          [1, 1],
          [0, 0],
        ],
      ],
    },
    {
      type: 'Polygon',
      coordinates: [
        [
          [0, 0],
          [1, 0],
          [1, 1],
          [0, 0],
        ],
      ],
    },
    { type: 'LineString', coordinates: [[0, 0]] },
  ),
);

/** A value that fits the schema in most places, and in some does not. */
function ofSchema(schema: Schema, name = ''): fc.Arbitrary<unknown> {
  const fitting = fittingValue(schema, name);
  return fc.oneof({ weight: 6, arbitrary: fitting }, { weight: 1, arbitrary: anything });
}

function fittingValue(schema: Schema, name: string): fc.Arbitrary<unknown> {
  if (name === 'geometry') return GEOMETRIES;
  if (name === 'layer') return fc.constantFrom('crowns', 'pavement', 'ratings', 'bloom', 'water', 'streets');
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  if (schema.type === 'integer') return fc.oneof(fc.integer({ min: 1, max: 4 }), fc.integer());
  if (schema.type === 'number') return fc.double();
  if (schema.type === 'boolean') return fc.boolean();
  if (schema.type === 'array') return fc.array(ofSchema(schema.items ?? {}), { maxLength: 4 });
  if (schema.type === 'object') return objectOf(schema);
  if (schema.format === 'uuid') return fc.uuid();
  if (schema.format === 'date') return fc.constantFrom('2026-05-20', '2026-02-30', '1-1-1');
  return nastyText;
}

function objectOf({ properties = {} }: Schema): fc.Arbitrary<unknown> {
  const fields = Object.fromEntries(
    Object.entries<Schema>(properties).map(([name, each]) => [name, ofSchema(each, name)]),
  );
  const known = fc.record(fields, { requiredKeys: [] });
  return fc
    .tuple(known, fc.dictionary(nastyText, anything, { maxKeys: 3 }), fc.nat(3))
    .map(([own, further, extra]) =>
      extra === 0 || Object.keys(properties).length === 0 ? { ...own, ...further } : own,
    );
}

interface Asked {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Buffer | null;
}

function badRequest(operation: Operation): fc.Arbitrary<Asked> {
  const values = operation.parameters.map(({ schema, name }) => ofSchema(schema ?? {}, name));
  const body = operation.body === null ? fc.constant(undefined) : fc.oneof(ofSchema(operation.body), anything);
  return fc
    .record({
      values: fc.tuple(...values),
      skip: fc.array(fc.boolean(), { minLength: values.length, maxLength: values.length }),
      further: fc.oneof(
        { weight: 7, arbitrary: fc.constant(null) },
        { weight: 1, arbitrary: fc.tuple(nastyText, nastyText) },
      ),
      method: fc.oneof(
        { weight: 9, arbitrary: fc.constant(operation.method) },
        { weight: 1, arbitrary: fc.constantFrom('GET', 'POST', 'PUT', 'PATCH', 'DELETE', 'OPTIONS', 'HEAD') },
      ),
      raw: fc.nat(9),
      type: fc.oneof(
        { weight: 8, arbitrary: fc.constant(operation.bodyType) },
        {
          weight: 1,
          arbitrary: fc.constantFrom('text/plain', 'application/xml', 'image/jpeg', 'multipart/form-data; boundary=x'),
        },
      ),
      cut: fc.nat(20),
      body,
    })
    .map((made) => asked(operation, made));
}

function asked(
  operation: Operation,
  made: {
    values: unknown[];
    skip: boolean[];
    further: [string, string] | null;
    method: string;
    raw: number;
    type: string;
    cut: number;
    body: unknown;
  },
): Asked {
  let path = operation.path;
  const query: string[] = [];
  const headers: Record<string, string> = {};
  operation.parameters.forEach((parameter, i) => {
    const text = typeof made.values[i] === 'string' ? (made.values[i] as string) : JSON.stringify(made.values[i] ?? '');
    const encoded = made.raw === 0 ? text : encodeURIComponent(wellFormed(text));
    if (parameter.in === 'path') path = path.replace(`{${parameter.name}}`, encoded);
    else if (made.skip[i]) return;
    else if (parameter.in === 'query') query.push(`${parameter.name}=${encoded}`);
    else headers[parameter.name] = printable(text);
  });
  if (made.further !== null) query.push(made.further.map((each) => encodeURIComponent(wellFormed(each))).join('='));
  const address = `${path}${query.length === 0 ? '' : `?${query.join('&')}`}`;
  if (made.body === undefined) return { method: made.method, path: sendable(address), headers, body: null };
  const text = typeof made.body === 'string' ? made.body : JSON.stringify(made.body);
  const body = Buffer.from(made.cut === 0 ? text.slice(0, text.length / 2) : text);
  return {
    method: made.method,
    path: sendable(address),
    headers: { ...headers, 'content-type': made.type, 'content-length': String(body.length) },
    body,
  };
}

/** What a client can put on a line at all; Node refuses the rest before it is sent. */
const sendable = (path: string): string =>
  path.replace(/[^\x21-\x7e]/g, (letter) => encodeURIComponent(wellFormed(letter))).slice(0, 8000);
/** Half surrogates cannot be written as UTF-8. */
const wellFormed = (text: string): string => text.replace(/\p{Surrogate}/gu, '?');
const printable = (text: string): string => text.replace(/[^\x20-\x7e]/g, '?').slice(0, 4000);

function send({ method, path, headers, body }: Asked): Promise<{ status: number; text: string }> {
  const { hostname, port } = new URL(running.url);
  return new Promise((done, fail) => {
    const outgoing = request({ hostname, port, method, path, headers, agent: false }, (answer) => {
      // The feed never ends by itself.
      if (/event-stream/.test(answer.headers['content-type'] ?? '')) {
        done({ status: answer.statusCode ?? 0, text: '' });
        outgoing.destroy();
        return;
      }
      let text = '';
      answer.setEncoding('utf8');
      answer.on('data', (piece: string) => {
        text += piece;
      });
      answer.on('end', () => done({ status: answer.statusCode ?? 0, text }));
    });
    outgoing.on('error', (error) =>
      fail(new Error(`${error.message} for ${method} ${path}\n${JSON.stringify(headers)}\n${body ?? ''}`)),
    );
    outgoing.end(body ?? undefined);
  });
}

const TRACE = /\bat .{0,200}\.(ts|js|mjs):\d+|node:internal|node_modules|SqliteError|\/apps\/server\/|\/packages\//;

test(`${REQUESTS} bad requests: never a 5xx, never a stack trace`, { timeout: 600_000 }, async () => {
  const all = await operations();
  expect(all.length).toBeGreaterThan(30);
  const each = Math.ceil(REQUESTS / all.length);
  const statuses = new Map<number, number>();
  for (const [i, operation] of all.entries()) {
    for (const bad of fc.sample(badRequest(operation), { numRuns: each, seed: SEED + i })) {
      const { status, text } = await send(bad);
      statuses.set(status, (statuses.get(status) ?? 0) + 1);
      if (status >= 500 || TRACE.test(text)) {
        throw new Error(
          `${status} for ${bad.method} ${bad.path}\n${bad.body ?? ''}\n${text}\n${JSON.stringify(running.faults.at(-1))}`,
        );
      }
    }
  }
  const sent = [...statuses.values()].reduce((sum, count) => sum + count, 0);
  console.info(
    `fuzz: ${sent} requests over ${all.length} operations, answers ${JSON.stringify(Object.fromEntries([...statuses].sort()))}`,
  );
  expect(sent).toBeGreaterThanOrEqual(2000);
  expect((statuses.get(400) ?? 0) / sent).toBeGreaterThan(0.2);
  expect((statuses.get(200) ?? 0) + (statuses.get(201) ?? 0)).toBeGreaterThan(50);
  expect(running.faults).toEqual([]);
  expect((await call(`${running.url}/api/ready`, 'GET')).status).toBe(200);
});
