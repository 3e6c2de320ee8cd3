/** The OpenAPI 3.0 description of the viewer's and the field's API, written from the routes themselves. */
import type { RouteNote } from '../http/api-book.ts';

const REFUSALS = [400, 401, 403, 404, 409, 412, 413, 415, 421, 428, 429];

export function apiDescription(notes: readonly RouteNote[], base: string): object {
  const paths: Record<string, Record<string, object>> = {};
  for (const note of notes) {
    paths[note.path] = { ...paths[note.path], [note.method.toLowerCase()]: operation(note) };
  }
  return {
    openapi: '3.0.3',
    info: {
      title: 'Crownfall server',
      description:
        'Records, visits, figures and photos of one project. Records carry versions: changes name the version seen (If-Match); ' +
        'where two people changed the same record both are kept until a person decides.',
      version: '1.0.0',
    },
    servers: [{ url: base }],
    security: [{ token: [] }, { session: [] }, {}],
    paths,
    components: {
      schemas: {
        Refusal: {
          type: 'object',
          required: ['code', 'description'],
          properties: { code: { type: 'string' }, description: { type: 'string' } },
        },
      },
      securitySchemes: {
        token: { type: 'http', scheme: 'bearer' },
        session: { type: 'apiKey', in: 'cookie', name: 'crownfall_session' },
      },
    },
  };
}

function operation(note: RouteNote): object {
  const { method, path, summary, needs, body, bodyType = 'application/json' } = note;
  const role = needs === 'open' ? 'No log-in needed.' : `Role: ${needs}.`;
  return {
    operationId: `${method.toLowerCase()}${path.replace(/[^A-Za-z]+(\w?)/g, (_all, letter: string) => letter.toUpperCase())}`,
    summary,
    description: role,
    parameters: parameters(note),
    ...(body === undefined ? {} : { requestBody: { required: true, content: { [bodyType]: { schema: body } } } }),
    responses: responses(note),
  };
}

function parameters({ params, query, headers }: RouteNote): object[] {
  const places = { path: params, query, header: headers };
  return Object.entries(places).flatMap(([place, schemas]) =>
    Object.entries(schemas ?? {}).map(([name, { description, ...schema }]) => ({
      name,
      in: place,
      required: place === 'path',
      ...(description === undefined ? {} : { description }),
      schema,
    })),
  );
}

function responses({ answers, answerType = 'application/json' }: RouteNote): object {
  const refusal = (description: string): object => ({
    description,
    content: { 'application/json': { schema: { $ref: '#/components/schemas/Refusal' } } },
  });
  const told = Object.entries(answers).map(([status, description]) => [
    status,
    Number(status) < 400 ? { description, content: { [answerType]: {} } } : refusal(description),
  ]);
  const others = REFUSALS.filter((status) => answers[status] === undefined).map((status) => [
    String(status),
    refusal('Refused; the body says why.'),
  ]);
  return Object.fromEntries([...told, ...others]);
}
