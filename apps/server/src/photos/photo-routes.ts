/** Photos from the field: taken in without their position, given out as pictures and nothing else. */
import type { FastifyInstance } from 'fastify';
import type { ApiBook } from '../http/api-book.ts';
import { Refusal } from '../http/refusal.ts';
import type { PhotoShelf } from './photo-shelf.ts';
import { photoWithoutPosition } from './photo-without-position.ts';

const MOST_BYTES = 25 << 20;
const NAME = { type: 'string', pattern: '^[0-9a-f]{64}$' } as const;

/** `shelf` null where no folder for photos was named. */
export function photoRoutes(app: FastifyInstance, book: ApiBook, shelf: PhotoShelf | null): void {
  app.addContentTypeParser('image/jpeg', { parseAs: 'buffer', bodyLimit: MOST_BYTES }, (_request, body, done) => {
    done(null, body);
  });
  book.add<{ Querystring: { keep_position?: 'yes' | 'no' }; Body: Buffer }>({
    method: 'POST',
    path: '/api/photos',
    needs: 'rater',
    summary:
      'Keeps a JPEG photo. Position and all else but orientation and time go from its EXIF, unless keep_position=yes.',
    query: { keep_position: { type: 'string', enum: ['yes', 'no'] } },
    body: { type: 'string', format: 'binary' },
    bodyType: 'image/jpeg',
    bodyLimit: MOST_BYTES,
    answers: { 201: 'It is kept under the name given.', 200: 'It was kept before.' },
    handler: async (request, reply) => {
      if (shelf === null) throw new Refusal(409, 'no-photos', 'This server was given no folder for photos.');
      if (!Buffer.isBuffer(request.body)) throw new Refusal(415, 'media-type', 'Expected a photo as image/jpeg.');
      const photo = photoWithoutPosition(request.body, request.query.keep_position === 'yes');
      if (photo === null) throw new Refusal(415, 'no-photo', 'The bytes are no whole JPEG photo.');
      const { name, known } = await shelf.keep(photo.bytes);
      const { width, height, takenAt } = photo;
      return reply.code(known ? 200 : 201).send({ photo: name, width, height, takenAt });
    },
  });
  book.add<{ Params: { photo: string } }>({
    method: 'GET',
    path: '/api/photos/{photo}',
    needs: 'reader',
    summary: 'A photo by its name.',
    params: { photo: NAME },
    answers: { 200: 'The photo.' },
    answerType: 'image/jpeg',
    handler: async ({ params }, reply) => {
      const bytes = await shelf?.photo(params.photo);
      if (!bytes) throw new Refusal(404, 'no-such-photo', 'There is no photo with this name.');
      return reply
        .type('image/jpeg')
        .header('content-security-policy', "default-src 'none'; sandbox")
        .header('cache-control', 'private, max-age=31536000, immutable')
        .send(bytes);
    },
  });
}
