/** What the command line asks for. */
import { isIP } from 'node:net';
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
  /** Address of background map tiles; null: none. */
  readonly background: string | null;
  /** Addresses of the proxies in front: those of this machine when there is a public address, and those named. */
  readonly proxies: readonly string[];
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
  proxy: { type: 'string', multiple: true },
  background: { type: 'string' },
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
    if (people === null && (publicUrl !== null || !LOOPBACK.includes(host))) return withoutPeople(publicUrl ?? host);
    if ((cert === undefined) !== (key === undefined)) return `${NAME} --tls-cert and --tls-key go together.`;
    if (publicUrl !== null && !isAddress(publicUrl)) return `${NAME} --public-url ${publicUrl} ${NO_ADDRESS}`;
    const { proxy = [], background = null } = values;
    if (background !== null && !isTiles(background)) return `${NAME} --background ${background} ${NO_TILES}`;
    const wrong = publicUrl === null ? proxy[0] : proxy.find((each) => isIP(each) === 0);
    if (wrong !== undefined) return `${NAME} --proxy ${wrong} ${NO_PROXY}`;
    const place = placeOf(positionals[0]);
    return {
      place,
      port,
      host,
      people,
      photos: values.photos ?? (place.kind === 'file' ? `${place.path.replace(/\.gpkg$/i, '')}-photos` : null),
      tls: cert === undefined || key === undefined ? null : { cert, key },
      publicUrl: publicUrl && new URL(publicUrl).origin,
      background,
      proxies: publicUrl === null ? [] : ['127.0.0.1', '::1', ...proxy],
      localName: values.as ?? userInfo().username,
      log: values.log || publicUrl !== null || !LOOPBACK.includes(host),
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

const withoutPeople = (address: string): string =>
  [
    `${NAME} ${address} can be reached from other machines, so it needs to know who may do what.`,
    'Add people first: crownfall people add FILE NAME --role reader|rater|editor',
    'Then give their file: --people FILE',
  ].join('\n');

const NO_ADDRESS = 'is none of the form https://trees.example.org, without a path: give the project a name of its own.';
const NO_PROXY = 'is no network address of a proxy before --public-url, for instance 10.1.2.3.';

const NO_TILES = 'is no address of map tiles such as https://tiles.example.org/{z}/{x}/{y}.png.';

const isTiles = (text: string): boolean =>
  /^https?:/.test(text) && URL.canParse(text) && ['{z}', '{x}', '{y}'].every((part) => text.includes(part));

function isAddress(text: string): boolean {
  if (!URL.canParse(text)) return false;
  const { protocol, pathname, search, hash, username } = new URL(text);
  return /^https?:$/.test(protocol) && pathname === '/' && `${search}${hash}${username}` === '';
}
