/** Visit sheets as PDF: what a phone takes along, and what is printed. */
import type { FastifyRequest } from 'fastify';
import type { ApiBook } from '../http/api-book.ts';
import { Refusal } from '../http/refusal.ts';
import { LOOPBACK } from '../http/security.ts';
import type { LiveProject } from '../project/live-project.ts';
import type { SheetWish } from './sheet-maker.ts';

/** Asked for their size, then fetched: so many are kept, each some 100 kB. */
const KEPT = 100;

interface Asked {
  Params: { block: string };
  Querystring: { paper: SheetWish['paper']; language: SheetWish['language']; units?: 'metric' | 'us' };
}

export function sheetRoutes(book: ApiBook, live: LiveProject, baseOf: (request: FastifyRequest) => string): void {
  const kept = new Map<string, Promise<Uint8Array | null>>();
  const sheetOf = (wish: SheetWish): Promise<Uint8Array | null> => {
    const key = JSON.stringify([live.figures.now.journal, wish]);
    const known = kept.get(key);
    if (known) return known;
    const made = live.figures.sheet(wish);
    kept.set(key, made);
    made.catch(() => kept.delete(key));
    for (const oldest of kept.keys()) if (kept.size > KEPT) kept.delete(oldest);
    return made;
  };
  book.add<Asked>({
    method: 'GET',
    path: '/api/sheets/{block}',
    needs: 'reader',
    summary: 'The visit sheet of a block as a PDF. HEAD tells its size.',
    params: { block: { type: 'string', minLength: 1, maxLength: 500 } },
    query: {
      paper: { type: 'string', enum: ['letter', 'a4'], default: 'letter' },
      language: { type: 'string', enum: ['en', 'es'], default: 'en' },
      units: { type: 'string', enum: ['metric', 'us'] },
    },
    answers: { 200: 'The sheet.' },
    answerType: 'application/pdf',
    handler: async (request, reply) => {
      const { block: blockId } = request.params;
      const { paper, language, units = null } = request.query;
      const { journal } = live.figures.now;
      const pdf = await sheetOf({ blockId, paper, language, units, link: linkTo(blockId, baseOf(request)) });
      if (pdf === null) throw new Refusal(404, 'no-such-block', 'There is no block with this id.');
      return reply
        .type('application/pdf')
        .header('content-disposition', `inline; filename*=UTF-8''${encodeURIComponent(`${blockId}.pdf`)}`)
        .header('cache-control', 'no-store')
        .header('crownfall-journal', String(journal))
        .send(Buffer.from(pdf.buffer, pdf.byteOffset, pdf.length));
    },
  });
}

/** No code is printed for an address that no phone reaches. */
function linkTo(blockId: string, base: string): string | null {
  return LOOPBACK.includes(new URL(base).hostname) ? null : `${base}/walk.html#block=${encodeURIComponent(blockId)}`;
}
