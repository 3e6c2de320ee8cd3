/** Single records: read, added, changed and deleted with the version that the person saw. */
import type { Edit, EditOutcome, RecordQuery } from '@crownfall/exchange';
import { LAYER_NAMES, type LayerName } from '@crownfall/survey';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { askerOf } from '../http/access.ts';
import type { ApiBook } from '../http/api-book.ts';
import { Refusal } from '../http/refusal.ts';
import { readBox } from '../ogc/item-query.ts';
import { type LiveProject, writerOf } from '../project/live-project.ts';
import { conflictJson, outcomeJson } from './edit-json.ts';
import { mayWrite } from './may-write.ts';
import { geometryGiven, propertiesGiven, recordFeature } from './record-json.ts';

const LAYER = { type: 'string', enum: LAYER_NAMES } as const;
const RECORD_ID = { type: 'integer', minimum: 1, maximum: Number.MAX_SAFE_INTEGER } as const;
const TEXT = { type: 'string', minLength: 1, maxLength: 200 } as const;
const REQUEST_ID = { type: 'string', minLength: 8, maxLength: 100, pattern: '^[A-Za-z0-9._:-]+$' } as const;
const IF_MATCH = { type: 'string', maxLength: 40, description: 'The version seen: `"v3"`.' } as const;
const GEOMETRY = { type: 'object', nullable: true, description: 'A GeoJSON geometry (RFC 7946) or null.' } as const;
const PROPERTIES = { type: 'object', maxProperties: 500 } as const;

interface OfLayer {
  Params: { layer: LayerName };
  Querystring: { bbox?: string; after?: number; limit?: number; tree_id?: string; block_id?: string };
}
interface OfRecord {
  Params: { layer: LayerName; recordId: number };
  Body: { geometry?: unknown; properties?: unknown };
}

export function recordRoutes(book: ApiBook, live: LiveProject): void {
  const ofLayer = { layer: LAYER };
  const ofRecord = { layer: LAYER, recordId: RECORD_ID };

  book.add<OfLayer>({
    method: 'GET',
    path: '/api/records/{layer}',
    needs: 'reader',
    summary: 'Records of a layer, in pages, as GeoJSON features with their versions.',
    params: ofLayer,
    query: {
      bbox: { type: 'string', maxLength: 200, description: 'west,south,east,north in degrees' },
      after: { type: 'integer', minimum: 0, maximum: Number.MAX_SAFE_INTEGER },
      limit: { type: 'integer', minimum: 1, maximum: 10_000 },
      tree_id: TEXT,
      block_id: TEXT,
    },
    answers: { 200: 'A page; `next` is the `after` of the page that follows, null when there is none.' },
    handler: async ({ params, query }) => {
      const { records, next } = await live.reading().records(params.layer, recordQuery(query));
      return { type: 'FeatureCollection', next, features: records.map(recordFeature) };
    },
  });

  book.add<OfRecord>({
    method: 'GET',
    path: '/api/records/{layer}/{recordId}',
    needs: 'reader',
    summary: 'One record with its version, which is also its ETag.',
    params: ofRecord,
    answers: { 200: 'The record as a GeoJSON feature.' },
    handler: async ({ params }, reply) => {
      const record = await live.reading().record(params.layer, params.recordId);
      if (record === null) throw noSuchRecord();
      reply.header('etag', etag(record.version));
      return recordFeature(record);
    },
  });

  book.add<OfLayer & { Body: OfRecord['Body'] }>({
    method: 'POST',
    path: '/api/records/{layer}',
    needs: 'rater',
    summary: 'Adds a record. With an Idempotency-Key a repeated request adds nothing and answers the same.',
    params: ofLayer,
    headers: { 'idempotency-key': REQUEST_ID },
    body: {
      type: 'object',
      required: ['properties'],
      additionalProperties: false,
      properties: { geometry: GEOMETRY, properties: PROPERTIES },
    },
    answers: { 201: 'The record as it was stored.' },
    handler: async (request, reply) => {
      const { layer } = request.params;
      const geometry = geometryGiven(layer, request.body.geometry ?? null);
      const properties = propertiesGiven(layer, request.body.properties);
      const outcome = await applyOne(live, request, { action: 'insert', layer, geometry, properties });
      if (outcome.outcome === 'applied') {
        reply.code(201).header('location', `/api/records/${layer}/${outcome.recordId}`);
      }
      return answered(reply, outcome);
    },
  });

  book.add<OfRecord>({
    method: 'PATCH',
    path: '/api/records/{layer}/{recordId}',
    needs: 'rater',
    summary: 'Changes a record that is still as it was seen (If-Match). Fields not given stay; null empties one.',
    params: ofRecord,
    headers: { 'if-match': IF_MATCH, 'idempotency-key': REQUEST_ID },
    body: {
      type: 'object',
      minProperties: 1,
      additionalProperties: false,
      properties: { geometry: GEOMETRY, properties: PROPERTIES },
    },
    answers: { 200: 'The record as it is now.', 412: 'Somebody wrote first: both are kept, see `conflict`.' },
    handler: async (request, reply) => {
      const { layer, recordId } = request.params;
      const { geometry, properties } = request.body;
      const edit: Edit = {
        action: 'update',
        layer,
        recordId,
        expectedVersion: versionSeen(request),
        ...(geometry === undefined ? {} : { geometry: geometryGiven(layer, geometry) }),
        ...(properties === undefined ? {} : { properties: propertiesGiven(layer, properties) }),
      };
      return answered(reply, await applyOne(live, request, edit));
    },
  });

  book.add<OfRecord>({
    method: 'DELETE',
    path: '/api/records/{layer}/{recordId}',
    needs: 'rater',
    summary: 'Deletes a record that is still as it was seen (If-Match). The journal keeps it; undo brings it back.',
    params: ofRecord,
    headers: { 'if-match': IF_MATCH, 'idempotency-key': REQUEST_ID },
    answers: { 200: 'It is deleted.', 412: 'Somebody wrote first: both are kept, see `conflict`.' },
    handler: async (request, reply) => {
      const { layer, recordId } = request.params;
      const edit: Edit = { action: 'delete', layer, recordId, expectedVersion: versionSeen(request) };
      return answered(reply, await applyOne(live, request, edit));
    },
  });
}

async function applyOne(live: LiveProject, request: FastifyRequest, edit: Edit): Promise<EditOutcome> {
  const asker = askerOf(request);
  mayWrite(asker, edit);
  const requestId = request.headers['idempotency-key'];
  const named = typeof requestId === 'string' ? { requestId } : {};
  const { outcomes } = await live.writing().applyEdits([edit], { ...writerOf(asker), ...named });
  live.look();
  return outcomes[0];
}

function answered(reply: FastifyReply, outcome: EditOutcome): object {
  if (outcome.outcome === 'unknown') throw noSuchRecord();
  if (outcome.outcome === 'conflict') {
    const words = 'Somebody wrote to this record first. Nothing was changed; both are kept until a person decides.';
    throw new Refusal(412, 'conflict', words, { conflict: conflictJson(outcome.conflict) });
  }
  reply.header('etag', etag(outcome.version));
  return outcomeJson(outcome);
}

function recordQuery({ bbox, tree_id, block_id, ...page }: OfLayer['Querystring']): RecordQuery {
  const where = { ...(tree_id === undefined ? {} : { tree_id }), ...(block_id === undefined ? {} : { block_id }) };
  return {
    ...page,
    ...(bbox === undefined ? {} : { bbox: readBox(bbox) }),
    ...(Object.keys(where).length === 0 ? {} : { where }),
  };
}

const etag = (version: number): string => `"v${version}"`;

/** The version of If-Match. Without it nothing may be changed (RFC 6585, section 3). */
function versionSeen({ headers }: FastifyRequest): number {
  const given = headers['if-match'];
  if (given === undefined) throw new Refusal(428, 'version-needed', 'Say which version you saw: If-Match: "v3".');
  const found = /^"v(\d{1,15})"$/.exec(given.trim());
  if (found === null) throw new Refusal(400, 'invalid-version', 'If-Match: expected one version such as "v3".');
  return Number(found[1]);
}

const noSuchRecord = (): Refusal => new Refusal(404, 'no-such-record', 'The layer holds no record with this number.');
