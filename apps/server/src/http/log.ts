/**
 * The log: one JSON line a request on standard error, without personal data. A route's pattern is logged, not the address
 * asked for (ids and searches may name people), a role, not a name, and no network address.
 */
import type { FastifyInstance, FastifyRequest } from 'fastify';

export type LogLine = (line: Readonly<Record<string, unknown>>) => void;

/** Writes lines to a stream of text, each with its time. */
export function jsonLines(write: (text: string) => void, now: () => Date): LogLine {
  return (line) => write(`${JSON.stringify({ time: now().toISOString(), ...line })}\n`);
}

/** Logs every request when it has been answered. */
export function logRequests(app: FastifyInstance, log: LogLine): void {
  app.addHook('onResponse', async (request, reply) => {
    log({ ...about(request), status: reply.statusCode, ms: Math.round(reply.elapsedTime * 10) / 10 });
  });
}

/** A fault of ours, with where it happened: for the log alone. */
export function logFault(log: LogLine, error: unknown, request: FastifyRequest): void {
  const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
  log({ ...about(request), level: 'fault', error: words });
}

function about(request: FastifyRequest): Record<string, unknown> {
  const { id, method, asker, routeOptions } = request;
  return { request: id, method, route: routeOptions.url ?? 'none', role: asker?.role ?? 'none' };
}
