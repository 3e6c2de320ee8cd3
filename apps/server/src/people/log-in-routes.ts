/** Logging in with a token for a session in a cookie, so that a page need not hold the token. */
import { SESSION_COOKIE, sessionOf } from '../http/access.ts';
import type { ApiBook } from '../http/api-book.ts';
import { Refusal } from '../http/refusal.ts';
import type { Gate } from './gate.ts';

const BODY = {
  type: 'object',
  required: ['token'],
  additionalProperties: false,
  properties: { token: { type: 'string', minLength: 1, maxLength: 200 } },
} as const;

/** `secure`: whether the server speaks TLS, or a proxy before it does; cookies then never travel in the clear. */
export function logInRoutes(book: ApiBook, gate: Gate | null, secure: boolean): void {
  const attributes = `Path=/; HttpOnly; SameSite=Strict${secure ? '; Secure' : ''}`;
  const session = { path: '/api/session', needs: 'open' } as const;
  book.add<{ Body: { token: string } }>({
    ...session,
    method: 'POST',
    summary: 'Opens a session for the holder of a token.',
    body: BODY,
    answers: { 200: 'Name and role; the session is in a cookie.', 429: 'Too many wrong tokens; wait.' },
    handler: async (request, reply) => {
      if (gate === null)
        throw new Refusal(409, 'no-log-in', 'This server is for this machine alone and has no log-in.');
      const { session, asker } = await gate.logIn(request.body.token, request.ip);
      reply.header('set-cookie', `${SESSION_COOKIE}=${session}; Max-Age=43200; ${attributes}`);
      return asker;
    },
  });
  book.add({
    ...session,
    method: 'GET',
    summary: 'Who is asking.',
    answers: { 200: 'Name and role; null without a session.' },
    handler: async (request) => request.asker ?? { name: null, role: null },
  });
  book.add({
    ...session,
    method: 'DELETE',
    summary: 'Ends the session.',
    answers: { 204: 'There is none any more.' },
    handler: async (request, reply) => {
      const open = sessionOf(request);
      if (open !== undefined) gate?.logOut(open);
      return reply.header('set-cookie', `${SESSION_COOKIE}=; Max-Age=0; ${attributes}`).code(204).send();
    },
  });
}
