/** The HTTP face of one project: the viewer, its API, and the collections for other programs. */
import { resolve } from 'node:path';
import fastifyStatic from '@fastify/static';
import Fastify, { type FastifyInstance, type FastifyReply, type FastifyRequest } from 'fastify';
import { apiDescription } from './api/api-description.ts';
import { editRoutes } from './api/edit-routes.ts';
import { projectRoutes } from './api/project-routes.ts';
import { recordRoutes } from './api/record-routes.ts';
import { visitRoutes } from './api/visit-routes.ts';
import { changeRoutes, type Streams } from './changes/change-routes.ts';
import { guardAccess } from './http/access.ts';
import { answerError, tellErrors } from './http/answers.ts';
import { ApiBook } from './http/api-book.ts';
import { type LogLine, logFault, logRequests } from './http/log.ts';
import { validators } from './http/validators.ts';
import { imageryRoutes } from './imagery/imagery-routes.ts';
import { ImageryShelf } from './imagery/imagery-shelf.ts';
import { ogcRoutes } from './ogc/ogc-routes.ts';
import type { Gate } from './people/gate.ts';
import { logInRoutes } from './people/log-in-routes.ts';
import { photoRoutes } from './photos/photo-routes.ts';
import type { PhotoShelf } from './photos/photo-shelf.ts';
import type { LiveProject } from './project/live-project.ts';
import { sheetRoutes } from './sheets/sheet-routes.ts';

export interface AppOptions {
  readonly live: LiveProject;
  /** Where the paths of its pictures start. */
  readonly folder: string;
  /** Folder of the built viewer. */
  readonly viewerDir: string;
  /** The address that will be listened on; a loopback address also restricts the names that are answered to. */
  readonly host: string;
  /** Who may do what; null when only this machine reaches the server. */
  readonly gate: Gate | null;
  /** How the journal calls the person at this machine. */
  readonly localName: string;
  readonly photos: PhotoShelf | null;
  readonly tls: { readonly cert: Buffer; readonly key: Buffer } | null;
  /** The address that people use, where a proxy stands before the server; without a slash at its end. */
  readonly publicUrl: string | null;
  /** Network addresses of proxies whose word is taken for who is asking (X-Forwarded-For). */
  readonly proxies: readonly string[];
  /** Address of background map tiles with {z}, {x} and {y}, which the page fetches from another machine; none unless given. */
  readonly background?: string | null;
  readonly log: LogLine | null;
  /** Faults are told even when requests are not. */
  readonly faults: LogLine;
}

export interface App {
  readonly server: FastifyInstance;
  /** Tells listening pages that figures are new. */
  readonly streams: Streams;
}

const PAGES_DIR = resolve(import.meta.dirname, '../pages');
/** Records are small; photos and queues have limits of their own. */
const BODY_LIMIT = 4 << 20;

/** Builds the server without listening. */
export async function buildApp(options: AppOptions): Promise<App> {
  const { live, gate, log, faults } = options;
  const app = framework(options);
  const onFault = (error: unknown, request: FastifyRequest): void => logFault(faults, error, request);
  guardAccess(app, options);
  tellErrors(app, onFault);
  if (log !== null) logRequests(app, log);
  app.setValidatorCompiler(validators());
  app.removeContentTypeParser('text/plain');
  const book = new ApiBook(app);
  const baseOf = (request: FastifyRequest): string => options.publicUrl ?? addressOf(request);
  const imagery = new ImageryShelf(options.folder, () => live.figures.now.imagery);
  projectRoutes(book, live, { imagery, background: options.background ?? null });
  imageryRoutes(book, imagery);
  sheetRoutes(book, live, baseOf);
  recordRoutes(book, live);
  editRoutes(book, live);
  visitRoutes(book, live);
  const streams = changeRoutes(book, live);
  photoRoutes(app, book, options.photos);
  logInRoutes(book, gate, options.tls !== null || options.publicUrl?.startsWith('https:') === true);
  app.get('/api/openapi.json', { config: { needs: 'reader' } }, async (request, reply) =>
    reply
      .type('application/vnd.oai.openapi+json;version=3.0')
      .send(JSON.stringify(apiDescription(book.notes, baseOf(request)))),
  );
  ogcRoutes(app, { figures: () => live.figures.now, baseOf, now: () => new Date() });
  await servePages(app, options);
  return { server: app, streams };
}

function framework({ tls, faults, proxies }: AppOptions): FastifyInstance {
  const settings = {
    logger: false,
    forceCloseConnections: 'idle' as const,
    bodyLimit: BODY_LIMIT,
    trustProxy: proxies.length === 0 ? false : [...proxies],
    requestTimeout: 60_000,
    routerOptions: { maxParamLength: 500 },
    frameworkErrors: (error: unknown, request: FastifyRequest, reply: FastifyReply) =>
      answerError(error, request, reply, (fault, asked) => logFault(faults, fault, asked)),
  };
  return (tls === null ? Fastify(settings) : Fastify({ ...settings, https: tls })) as unknown as FastifyInstance;
}

/** The log-in page, and the viewer for all other addresses. */
async function servePages(app: FastifyInstance, { viewerDir, gate }: AppOptions): Promise<void> {
  app.addHook('onRequest', async (request, reply) => {
    const isFront = request.url === '/' || request.url.startsWith('/?') || request.url.startsWith('/index.html');
    if (isFront && gate !== null && request.asker === null) return reply.redirect('/log-in/', 303);
  });
  await app.register(fastifyStatic, {
    root: PAGES_DIR,
    prefix: '/log-in/',
    index: 'log-in.html',
    decorateReply: false,
  });
  await app.register(fastifyStatic, { root: resolve(viewerDir), index: 'index.html', cacheControl: false });
}

/** As the asker wrote it; the header has been checked where that matters, and it stays in this answer. */
function addressOf({ protocol, headers, socket }: FastifyRequest): string {
  const host = /^[\w.:[\]-]{1,255}$/.test(headers.host ?? '')
    ? headers.host
    : `${socket.localAddress}:${socket.localPort}`;
  return `${protocol}://${host}`;
}
