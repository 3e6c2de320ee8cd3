/** OGC API – Features Part 1 Core 1.0.1 (OGC 17-069r4) with GeoJSON and OpenAPI 3.0, below `/ogc`. Reads only. */
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { COLLECTION_NAMES, type CollectionName } from '../figures/figures.ts';
import type { OpenFigures } from '../figures/open-figures.ts';
import { Refusal } from '../http/refusal.ts';
import {
  collectionDocument,
  collectionsDocument,
  conformance,
  GEOJSON_TYPE,
  JSON_TYPE,
  landingPage,
  OPENAPI_TYPE,
  SCHEMA_TYPE,
  schemaDocument,
} from './documents.ts';
import { readFormatOnly, readItemQuery } from './item-query.ts';
import { featureDocument, itemsDocument } from './items-document.ts';
import { ogcDescription } from './ogc-description.ts';

export interface OgcOptions {
  readonly figures: () => OpenFigures;
  /** Address under which the asker reaches this server, without a slash at its end. */
  readonly baseOf: (request: FastifyRequest) => string;
  readonly now: () => Date;
}

type Query = Readonly<Record<string, unknown>>;
type OgcRequest = FastifyRequest<{ Params: { name: string; id: string }; Querystring: Query }>;
type Document = (request: OgcRequest, base: string) => { type: string; body: object | Buffer };

export function ogcRoutes(app: FastifyInstance, { figures, baseOf, now }: OgcOptions): void {
  const get = (path: string, document: Document): void => {
    app.get(`/ogc${path}`, async (request, reply) => {
      const { type, body } = document(request as OgcRequest, `${baseOf(request)}/ogc`);
      return sendDocument(reply, type, body, figures().journal);
    });
  };
  /** A document that takes no parameter but `f`. */
  const plain = (path: string, type: string, body: (request: OgcRequest, base: string) => object | Buffer): void =>
    get(path, (request, base) => {
      readFormatOnly(request.query);
      return { type, body: body(request, base) };
    });

  plain('', JSON_TYPE, (_request, base) => landingPage(figures(), base));
  plain('/', JSON_TYPE, (_request, base) => landingPage(figures(), base));
  plain('/api', OPENAPI_TYPE, (_request, base) => ogcDescription(figures(), base));
  plain('/conformance', JSON_TYPE, () => conformance());
  plain('/collections', JSON_TYPE, (_request, base) => collectionsDocument(figures(), base));
  plain('/collections/:name', JSON_TYPE, ({ params }, base) =>
    collectionDocument(figures(), collectionNamed(params.name), base),
  );
  plain('/collections/:name/schema', SCHEMA_TYPE, ({ params }, base) =>
    schemaDocument(collectionNamed(params.name), base),
  );
  get('/collections/:name/items', ({ params, query }, base) => {
    const name = collectionNamed(params.name);
    const address = { collection: `${base}/collections/${name}`, query };
    const served = figures().collections[name];
    const body = itemsDocument(served, readItemQuery(query), address, now().toISOString());
    return { type: GEOJSON_TYPE, body };
  });
  plain('/collections/:name/items/:id', GEOJSON_TYPE, ({ params }, base) => {
    const name = collectionNamed(params.name);
    const served = figures().collections[name];
    const position = served.position(params.id);
    if (position === undefined) throw new Refusal(404, 'no-such-feature', `${name} holds no feature with this id.`);
    return featureDocument(served, position, name, base);
  });
  app.route({
    method: ['POST', 'PUT', 'PATCH', 'DELETE'],
    url: '/ogc/*',
    handler: async (_request, reply) => {
      reply.header('allow', 'GET, HEAD');
      throw new Refusal(405, 'method-not-allowed', 'The collections are read here, not changed.');
    },
  });
}

function collectionNamed(name: string): CollectionName {
  const found = COLLECTION_NAMES.find((each) => each === name);
  if (found !== undefined) return found;
  throw new Refusal(
    404,
    'no-such-collection',
    `There is no such collection. Collections: ${COLLECTION_NAMES.join(', ')}.`,
  );
}

function sendDocument(reply: FastifyReply, type: string, body: object | Buffer, journal: number): FastifyReply {
  return reply
    .type(type)
    .header('cache-control', 'no-cache')
    .header('crownfall-journal', String(journal))
    .send(Buffer.isBuffer(body) ? body : Buffer.from(JSON.stringify(body)));
}
