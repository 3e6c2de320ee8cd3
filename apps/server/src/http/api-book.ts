/** The routes of the API, each told once: what the server checks and what the OpenAPI description says are the same words. */
import type { FastifyInstance, FastifyReply, FastifyRequest, RouteGenericInterface } from 'fastify';
import type { Role } from '../people/people-file.ts';

type Schema = Readonly<Record<string, unknown>>;

export interface ApiRoute<Parts extends RouteGenericInterface> {
  readonly method: 'GET' | 'POST' | 'PATCH' | 'DELETE';
  /** With parameters in braces: `/api/records/{layer}`. */
  readonly path: string;
  readonly needs: Role | 'open';
  readonly summary: string;
  readonly params?: Readonly<Record<string, Schema>>;
  readonly query?: Readonly<Record<string, Schema>>;
  readonly headers?: Readonly<Record<string, Schema>>;
  readonly body?: Schema;
  /** Media type of a body that is not JSON. */
  readonly bodyType?: string;
  readonly bodyLimit?: number;
  /** What is answered, by status; refusals need not be listed. */
  readonly answers: Readonly<Record<number, string>>;
  readonly answerType?: string;
  readonly handler: (request: FastifyRequest<Parts>, reply: FastifyReply) => Promise<unknown>;
}

/** What the description needs of a route. */
export type RouteNote = Omit<ApiRoute<RouteGenericInterface>, 'handler'>;

export class ApiBook {
  readonly notes: RouteNote[] = [];
  readonly #app: FastifyInstance;

  constructor(app: FastifyInstance) {
    this.#app = app;
  }

  add<Parts extends RouteGenericInterface>(route: ApiRoute<Parts>): void {
    const { handler, ...note } = route;
    this.notes.push(note);
    const { params, query, headers, body, bodyType } = route;
    this.#app.route<Parts>({
      method: route.method,
      url: route.path.replaceAll('{', ':').replaceAll('}', ''),
      config: { needs: route.needs },
      schema: {
        ...(params === undefined ? {} : { params: object(params, Object.keys(params)) }),
        querystring: object(query ?? {}, []),
        ...(headers === undefined ? {} : { headers: { type: 'object', properties: headers } }),
        ...(body === undefined || bodyType !== undefined ? {} : { body }),
      },
      ...(route.bodyLimit === undefined ? {} : { bodyLimit: route.bodyLimit }),
      handler: handler as never,
    });
  }
}

const object = (properties: Readonly<Record<string, Schema>>, required: readonly string[]): Schema => ({
  type: 'object',
  properties,
  required,
  additionalProperties: false,
});
