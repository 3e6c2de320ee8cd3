/** The project's pictures over HTTP, in parts: who looks at a window of one fetches no more than that. */
import { basename, dirname } from 'node:path';
import type { ApiBook } from '../http/api-book.ts';
import { Refusal } from '../http/refusal.ts';
import type { ImageryShelf } from './imagery-shelf.ts';

export function imageryRoutes(book: ApiBook, shelf: ImageryShelf): void {
  book.add<{ Params: { file: string } }>({
    method: 'GET',
    path: '/api/imagery/{file}',
    needs: 'reader',
    summary: 'A GeoTIFF of the project, whole or in part. /api/project names those there are.',
    params: { file: { type: 'string' } },
    headers: { range: { type: 'string', description: 'Bytes wanted: `bytes=0-65535` (RFC 9110, 14.2).' } },
    answers: { 200: 'The whole file.', 206: 'The part asked for.', 416: 'The file ends before that part.' },
    answerType: 'image/tiff',
    handler: async ({ params }, reply) => {
      const path = await shelf.path(params.file);
      if (path === null) throw new Refusal(404, 'no-such-imagery', 'The project has no picture of this name.');
      reply.header('cache-control', 'private, no-cache');
      return reply.sendFile(basename(path), dirname(path), { cacheControl: false });
    },
  });
}
