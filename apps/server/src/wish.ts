/** What the command line asks for. */
import { userInfo } from 'node:os';
import { parseArgs } from 'node:util';
import { LOOPBACK } from './http/security.ts';
import { type ProjectPlace, placeOf } from './project/project-place.ts';

export interface Wish {
  readonly place: ProjectPlace;
  readonly port: number;
  readonly host: string;
  /** File of the people who may use the project; null on loopback alone. */
  readonly people: string | null;
  /** Folder of photos; null where there is none. */
  readonly photos: string | null;
  readonly tls: { readonly cert: string; readonly key: string } | null;
  readonly publicUrl: string | null;
  /** How the journal calls the person at this machine. */
  readonly localName: string;
  /** Whether every request is logged. */
  readonly log: boolean;
}

const OPTIONS = {
  port: { type: 'string', default: '8137' },
  host: { type: 'string', default: '127.0.0.1' },
  people: { type: 'string' },
  photos: { type: 'string' },
  'tls-cert': { type: 'string' },
  'tls-key': { type: 'string' },
  'public-url': { type: 'string' },
  as: { type: 'string' },
  log: { type: 'boolean', default: false },
} as const;

/** The wish, or in words why it cannot be one. */
export function readWish(argv: string[]): Wish | string {
  try {
    const { values, positionals } = parseArgs({ args: argv, allowPositionals: true, options: OPTIONS });
    if (positionals.length !== 1) return `${NAME} expected one PROJECT, and optionally ${names()}.`;
    const port = Number(values.port);
    if (!/^\d+$/.test(values.port) || port > 65535) return `${NAME} --port ${values.port} is no port.`;
    const { people = null, host, 'tls-cert': cert, 'tls-key': key, 'public-url': publicUrl = null } = values;
    if (people === null && !LOOPBACK.includes(host)) return withoutPeople(host);
    if ((cert === undefined) !== (key === undefined)) return `${NAME} --tls-cert and --tls-key go together.`;
    if (publicUrl !== null && !isAddress(publicUrl)) return `${NAME} --public-url ${publicUrl} is no http(s) address.`;
    const place = placeOf(positionals[0]);
    return {
      place,
      port,
      host,
      people,
      photos: values.photos ?? (place.kind === 'file' ? `${place.path.replace(/\.gpkg$/i, '')}-photos` : null),
      tls: cert === undefined || key === undefined ? null : { cert, key },
      publicUrl: publicUrl?.replace(/\/+$/, '') ?? null,
      localName: values.as ?? userInfo().username,
      log: values.log || !LOOPBACK.includes(host),
    };
  } catch (error) {
    return `${NAME} ${error instanceof Error ? error.message : String(error)}`;
  }
}

const NAME = 'crownfall-server:';

const names = (): string =>
  Object.keys(OPTIONS)
    .map((name) => `--${name}`)
    .join(', ');

const withoutPeople = (host: string): string =>
  [
    `${NAME} ${host} can be reached from other machines, so it needs to know who may do what.`,
    'Add people first: crownfall people add FILE NAME --role reader|rater|editor',
    `Then: crownfall serve PROJECT --host ${host} --people FILE`,
  ].join('\n');

function isAddress(text: string): boolean {
  return URL.canParse(text) && ['http:', 'https:'].includes(new URL(text).protocol);
}
