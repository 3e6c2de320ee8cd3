/** Stopping without breaking off what is being answered. */
import type { FastifyInstance } from 'fastify';

/** How long requests under way may take when the server is told to stop. */
const LAST_REQUESTS_MS = 10_000;
const LOOK_MS = 50;

/** Takes no new requests, lets those under way end as long as they end soon, and closes each connection when it falls idle. */
export async function stopGently(app: FastifyInstance): Promise<void> {
  const idle = setInterval(() => app.server.closeIdleConnections(), LOOK_MS);
  const late = setTimeout(() => app.server.closeAllConnections(), LAST_REQUESTS_MS);
  try {
    await app.close();
  } finally {
    clearInterval(idle);
    clearTimeout(late);
  }
}
