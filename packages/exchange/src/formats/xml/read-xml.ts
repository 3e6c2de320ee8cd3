/** XML piece by piece, with nothing that reaches outside the file or swells: no document type, no entities of its own. */
import { SaxesParser } from 'saxes';
import type { ByteStream } from '../../byte-stream.ts';

/** Told of elements by their local names (`gx:Track` is `Track`); text comes in whole runs. */
export interface XmlHandlers {
  open(name: string, attributes: Readonly<Record<string, string>>): void;
  text(text: string): void;
  close(name: string): void;
  /** After each piece of the stream. */
  ready(): Promise<void>;
}

/** How reading ended: well, at a fault of the file, or because it is refused. */
export type XmlEnd = { readonly as: 'whole' } | { readonly as: 'damaged' | 'refused'; readonly problem: string };

/** Elements within elements; honest files stay below twenty. */
const DEEPEST = 200;
/** One run of text or one tag; a ring of a million vertices has about 40 MB. */
const LONGEST_RUN = 64 << 20;
const PIECE = 1 << 16;

type Decoder = InstanceType<typeof TextDecoder>;

/** Reads XML to its end or its first fault. Never throws for what the file holds. */
export async function readXml(bytes: ByteStream, handlers: XmlHandlers): Promise<XmlEnd> {
  const parser = new SaxesParser({ xmlns: false, position: true });
  let end: XmlEnd = { as: 'whole' };
  let depth = 0;
  let sinceEvent = 0;
  const stop = (as: 'damaged' | 'refused', problem: string): void => {
    if (end.as === 'whole') end = { as, problem };
  };
  const heard = (): boolean => {
    sinceEvent = 0;
    return end.as === 'whole';
  };
  parser.on('error', (error) => stop('damaged', error.message.slice(0, 160)));
  parser.on('doctype', () =>
    stop('refused', 'it has a document type declaration, which can make it swell or reach out'),
  );
  parser.on('opentag', ({ name, attributes }) => {
    if (++depth > DEEPEST) stop('refused', `its elements lie more than ${DEEPEST} deep`);
    if (heard()) handlers.open(localName(name), attributes as Readonly<Record<string, string>>);
  });
  parser.on('closetag', ({ name }) => {
    depth--;
    if (heard()) handlers.close(localName(name));
  });
  for (const event of ['text', 'cdata'] as const) {
    parser.on(event, (text) => {
      if (heard()) handlers.text(text);
    });
  }

  let decoder: Decoder | null = null;
  for await (const piece of bytes) {
    decoder ??= decoderFor(piece, stop);
    for (let at = 0; at < piece.length && end.as === 'whole'; at += PIECE) {
      const part = piece.subarray(at, at + PIECE);
      sinceEvent += part.length;
      if (sinceEvent > LONGEST_RUN) stop('refused', 'one value in it is larger than 64 MB');
      else parser.write(decoder?.decode(part, { stream: true }) ?? '');
      await handlers.ready();
    }
  }
  if (end.as === 'whole') parser.close();
  await handlers.ready();
  return end;
}

function localName(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}

/** By the byte order mark, else the declaration, else UTF-8 (XML 1.0, section 4.3.3 and appendix F). */
function decoderFor(piece: Uint8Array, stop: (as: 'damaged', problem: string) => void): Decoder | null {
  if (piece[0] === 0xff && piece[1] === 0xfe) return new TextDecoder('utf-16le');
  if (piece[0] === 0xfe && piece[1] === 0xff) return new TextDecoder('utf-16be');
  const declared = /^\s*<\?xml[^>]*\sencoding\s*=\s*["']([\w.:-]+)["']/i;
  const label = declared.exec(new TextDecoder('latin1').decode(piece.subarray(0, 256)))?.[1] ?? 'utf-8';
  try {
    return new TextDecoder(label);
  } catch {
    stop('damaged', `its encoding ${label} is not known`);
    return null;
  }
}
