/** The HTTP face of one reckoned project: the viewer's page, its figures, its map layers. Reads only; changes nothing. */
import { resolve } from 'node:path';
import fastifyStatic from '@fastify/static';
import Fastify, { type FastifyInstance, type FastifyReply } from 'fastify';
import { answersTo, SECURITY_HEADERS } from './security.ts';
import { LAYER_NAMES, type LayerName, type ServedProject } from './served-project.ts';

export interface AppOptions {
  readonly project: ServedProject;
  /** Folder of the built viewer. */
  readonly viewerDir: string;
  /** The address that will be listened on; a loopback address also restricts the names that are answered to. */
  readonly host: string;
}

/**
 * Builds the server without listening. Routes: `/` the viewer, `/api/health`, `/api/assessment`, `/api/layers/NAME.geojson`.
 * Every body under `/api` is made once, when the project is opened, so that a request costs no reckoning.
 */
export async function buildApp({ project, viewerDir, host }: AppOptions): Promise<FastifyInstance> {
  const app = Fastify({ logger: false, forceCloseConnections: true, routerOptions: { maxParamLength: 200 } });
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(SECURITY_HEADERS);
    if (!answersTo(request.headers.host, host)) {
      return reply.code(421).send({ message: 'This server answers only to the machine it runs on.' });
    }
  });
  app.get('/api/health', async () => ({ state: 'ok', title: project.title }));
  app.get('/api/assessment', async (_request, reply) => sendText(reply, 'application/json', project.assessment));
  app.get<{ Params: { file: string } }>('/api/layers/:file', async (request, reply) => {
    const name = layerNamed(request.params.file);
    if (name === undefined) return reply.code(404).send({ message: unknownLayer(request.params.file) });
    return sendText(reply, 'application/geo+json', project.layers[name]);
  });
  await app.register(fastifyStatic, { root: resolve(viewerDir), index: 'index.html', cacheControl: false });
  app.setNotFoundHandler((request, reply) => reply.code(404).send({ message: `Nothing is at ${request.url}.` }));
  return app;
}

const layerNamed = (file: string): LayerName | undefined => LAYER_NAMES.find((name) => file === `${name}.geojson`);

const unknownLayer = (file: string): string =>
  `There is no layer ${file}. Layers: ${LAYER_NAMES.map((name) => `${name}.geojson`).join(', ')}.`;

function sendText(reply: FastifyReply, type: string, body: string): FastifyReply {
  return reply.type(`${type}; charset=utf-8`).header('cache-control', 'no-store').send(body);
}
