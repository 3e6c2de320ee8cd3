/** Who may ask what: the name asked under, the page asked from, the person asking and the role that the route needs. */
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { type Asker, type Gate, mayAct } from '../people/gate.ts';
import type { Role } from '../people/people-file.ts';
import { Refusal } from './refusal.ts';
import { answersTo, securityHeaders } from './security.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Role that a route needs; `reader` when it says nothing, `open` for those that tell nothing of the project. */
    readonly needs?: Role | 'open';
  }
  interface FastifyRequest {
    asker: Asker | null;
  }
}

export interface AccessOptions {
  /** The address listened on. */
  readonly host: string;
  /** Null when everyone who reaches this server is the person at this machine, called `localName`. */
  readonly gate: Gate | null;
  readonly localName: string;
  /** The address that people use where a proxy stands before the server, without a slash at its end. */
  readonly publicUrl: string | null;
  /** Address of map tiles that the page may fetch from another machine; null: none. */
  readonly background?: string | null;
}

export const SESSION_COOKIE = 'crownfall_session';
const SAFE_METHODS = ['GET', 'HEAD', 'OPTIONS'];

export function guardAccess(
  app: FastifyInstance,
  { host, gate, localName, publicUrl, background = null }: AccessOptions,
): void {
  const headers = securityHeaders(background);
  const local: Asker = { name: localName, role: 'editor' };
  app.decorateRequest('asker', null);
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(headers);
    if (!answersTo(request.headers.host, host, publicUrl)) {
      throw new Refusal(421, 'wrong-name', 'This server answers only to the machine it runs on.');
    }
    if (!SAFE_METHODS.includes(request.method) && isFromElsewhere(request, publicUrl)) {
      throw new Refusal(
        403,
        'from-elsewhere',
        'Changes are taken only from this server’s own pages and from programs.',
      );
    }
    const needs = neededFor(request);
    request.asker = gate === null ? local : await gate.asker(credentials(request, needs));
    if (needs === 'open') return;
    if (request.asker === null) throw new Refusal(401, 'log-in', 'Log in, or send a token.');
    if (!mayAct(request.asker.role, needs)) {
      throw new Refusal(403, 'role', `This needs the role ${needs}; yours is ${request.asker.role}.`);
    }
  });
}

/** The viewer's program files tell nothing of the project; whatever is below the two APIs does unless it says otherwise. */
function neededFor({ routeOptions }: FastifyRequest): Role | 'open' {
  const ofProject = /^\/(api|ogc)(\/|$)/.test(routeOptions.url ?? '');
  return routeOptions.config?.needs ?? (ofProject ? 'reader' : 'open');
}

/** The session's secret from the request's cookies. */
export function sessionOf(request: FastifyRequest): string | undefined {
  const cookies = (request.headers.cookie ?? '').split(';').map((each) => each.trim());
  return cookies.find((each) => each.startsWith(`${SESSION_COOKIE}=`))?.slice(SESSION_COOKIE.length + 1);
}

/** The asker of a route that needs one; the hook has seen to it. */
export function askerOf(request: FastifyRequest): Asker {
  if (request.asker === null) throw new Refusal(401, 'log-in', 'Log in, or send a token.');
  return request.asker;
}

/** What tells nothing of the project looks at no token, so that a probe cannot be made to wait for a hash. */
function credentials(request: FastifyRequest, needs: Role | 'open') {
  const authorization = needs === 'open' ? undefined : request.headers.authorization;
  return { address: request.ip, authorization, session: sessionOf(request) };
}

/** Browsers say where a request comes from; programs say nothing. A proxy may have put another name into the Host header. */
function isFromElsewhere({ headers }: FastifyRequest, publicUrl: string | null): boolean {
  const { origin, host } = headers;
  if (origin !== undefined && origin === publicUrl) return false;
  if (origin === undefined) return headers['sec-fetch-site'] === 'cross-site';
  return !/^https?:\/\//.test(origin) || origin.replace(/^https?:\/\//, '') !== host;
}
