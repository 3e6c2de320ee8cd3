/** The project as a whole, its figures and map layers, and how the server fares. */
import type { FastifyReply } from 'fastify';
import { LAYER_NAMES, type LayerName } from '../figures/figures.ts';
import { askerOf } from '../http/access.ts';
import type { ApiBook } from '../http/api-book.ts';
import type { ImageryShelf } from '../imagery/imagery-shelf.ts';
import type { LiveProject } from '../project/live-project.ts';

interface Beside {
  readonly imagery: ImageryShelf;
  readonly background: string | null;
}

export function projectRoutes(book: ApiBook, live: LiveProject, { imagery, background }: Beside): void {
  book.add({
    method: 'GET',
    path: '/api/health',
    needs: 'open',
    summary: 'Whether the server runs.',
    answers: { 200: 'It does.' },
    handler: async () => ({ state: 'ok' }),
  });
  book.add({
    method: 'GET',
    path: '/api/ready',
    needs: 'open',
    summary: 'Whether the project can be read now.',
    answers: { 200: 'It can; with the number of the journal that the figures hold for.', 503: 'It cannot.' },
    handler: async (_request, reply) => {
      const answers = await live.answers();
      return reply
        .code(answers ? 200 : 503)
        .send({ state: answers ? 'ready' : 'waiting', journal: live.figures.now.journal });
    },
  });
  book.add({
    method: 'GET',
    path: '/api/project',
    needs: 'reader',
    summary: 'What the project is, who asks, and what they may do.',
    answers: { 200: 'Title, layers, names of its imagery, asker.' },
    handler: async (request) => ({
      title: live.figures.now.title,
      asker: askerOf(request),
      writable: live.writable,
      layers: live.storing ? await live.reading().layers() : null,
      figures: live.figures.state,
      imagery: await imagery.names(),
      background,
    }),
  });
  book.add({
    method: 'GET',
    path: '/api/figures',
    needs: 'reader',
    summary: 'Which number of the journal the figures hold for, and whether newer ones are being reckoned.',
    answers: { 200: 'The state of the figures.' },
    handler: async () => live.figures.state,
  });
  book.add({
    method: 'GET',
    path: '/api/assessment',
    needs: 'reader',
    summary: 'Figures, score parts and findings of the project, without outlines.',
    answers: { 200: 'The figures.' },
    handler: async (_request, reply) => {
      const { assessment, journal } = live.figures.now;
      return sendBytes(reply, 'application/json; charset=utf-8', assessment, journal);
    },
  });
  book.add<{ Params: { file: `${LayerName}.geojson` } }>({
    method: 'GET',
    path: '/api/layers/{file}',
    needs: 'reader',
    summary: 'A map layer as GeoJSON: the text of the file that `crownfall reckon` writes.',
    params: { file: { type: 'string', enum: LAYER_NAMES.map((name) => `${name}.geojson`) } },
    answers: { 200: 'The layer.' },
    answerType: 'application/geo+json',
    handler: async ({ params }, reply) => {
      const { layers, journal } = live.figures.now;
      const name = params.file.replace('.geojson', '') as LayerName;
      return sendBytes(reply, 'application/geo+json; charset=utf-8', layers[name], journal);
    },
  });
}

function sendBytes(reply: FastifyReply, type: string, bytes: Uint8Array, journal: number): FastifyReply {
  return reply
    .type(type)
    .header('cache-control', 'no-store')
    .header('crownfall-journal', String(journal))
    .send(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length));
}
