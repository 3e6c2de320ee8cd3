/** How refusals and faults are told: a word for programs, a sentence for people, never where in the program it happened. */
import { Outage } from '@crownfall/exchange/node';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { Refusal } from './refusal.ts';

/** Codes of the framework's own refusals, by the status it gives them. */
const WORDS: Readonly<Record<number, string>> = {
  400: 'malformed-request',
  404: 'nothing-here',
  408: 'too-slow',
  413: 'too-large',
  414: 'address-too-long',
  415: 'media-type',
  416: 'beyond-its-end',
  431: 'head-too-large',
};

/** Answers every error of a route in one form. `onFault` is told of those that are ours. */
export function tellErrors(app: FastifyInstance, onFault: (error: unknown, request: FastifyRequest) => void): void {
  app.setErrorHandler((error, request, reply) => answerError(error, request, reply, onFault));
  app.setNotFoundHandler((_request, reply) => {
    const description = 'Nothing is at this address, or not for this method.';
    return reply.code(404).send({ code: 'nothing-here', description });
  });
}

export function answerError(
  error: unknown,
  request: FastifyRequest,
  reply: FastifyReply,
  onFault: (error: unknown, request: FastifyRequest) => void,
): FastifyReply {
  if (error instanceof Refusal) return refuse(request, reply, error);
  const {
    statusCode,
    validation,
    message,
    headers = {},
  } = error as FastifyError & { headers?: Record<string, string> };
  if (validation !== undefined) {
    return reply.code(400).send({ code: 'invalid-request', description: `${message}.` });
  }
  if (statusCode !== undefined && statusCode >= 400 && statusCode < 500) {
    return reply
      .code(statusCode)
      .headers(headers)
      .send({ code: WORDS[statusCode] ?? 'refused', description: message });
  }
  onFault(error, request);
  if (error instanceof Outage) {
    const description = 'The project cannot be read or written right now. Nothing was lost; try again.';
    return reply.code(503).header('retry-after', '5').send({ code: 'outage', description });
  }
  const description = `Something failed in the server. Its log says more under ${request.id}.`;
  return reply.code(500).send({ code: 'fault', description });
}

function refuse(request: FastifyRequest, reply: FastifyReply, { status, code, message, facts }: Refusal): FastifyReply {
  if (typeof facts.retryAfter === 'number') reply.header('retry-after', String(facts.retryAfter));
  if (status === 401) reply.header('www-authenticate', challenge(request.url));
  return reply.code(status).send({ code, description: message, ...facts });
}

/** Desktop GIS programs ask for a password when told `Basic`; a browser would open a window of its own, so it is not told. */
const challenge = (url: string): string =>
  url.startsWith('/ogc') ? 'Basic realm="crownfall", charset="UTF-8"' : 'Bearer realm="crownfall"';
