/** Tokens: made once for a person, shown once, kept only as a scrypt hash. */
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { promisify } from 'node:util';

/** How a token is kept: salt and hash in base64url, and the costs it was hashed with, so that they can rise later. */
export interface TokenHash {
  readonly salt: string;
  readonly hash: string;
  readonly n: number;
  readonly r: number;
  readonly p: number;
}

/**
 * scrypt (RFC 7914) with 32 MiB a hash. The secret is 256 random bits, which no cost could help to guess; the cost is for the
 * day a person is allowed to choose one.
 */
const COST = { n: 32_768, r: 8, p: 1 } as const;
const KEY_BYTES = 32;
const TOKEN = /^crownfall_([a-z0-9]{12})_([A-Za-z0-9_-]{43})$/;

const derive = promisify(scrypt) as (
  secret: string,
  salt: Buffer,
  bytes: number,
  options: { N: number; r: number; p: number; maxmem: number },
) => Promise<Buffer>;

/** A new id for a person: 12 letters and digits, random. */
export const newPersonId = (): string => randomBytes(6).toString('hex');

/** A new token of a person, to be shown once. */
export const newToken = (personId: string): string =>
  `crownfall_${personId}_${randomBytes(KEY_BYTES).toString('base64url')}`;

/** The parts of a token; null for what is none. */
export function readToken(text: string): { readonly personId: string; readonly secret: string } | null {
  const found = TOKEN.exec(text);
  return found && { personId: found[1], secret: found[2] };
}

export async function hashSecret(secret: string): Promise<TokenHash> {
  const salt = randomBytes(16);
  const key = await derive(secret, salt, KEY_BYTES, options(COST));
  return { salt: salt.toString('base64url'), hash: key.toString('base64url'), ...COST };
}

/** Compares in constant time. */
export async function secretMatches(secret: string, kept: TokenHash): Promise<boolean> {
  const key = await derive(secret, Buffer.from(kept.salt, 'base64url'), KEY_BYTES, options(kept));
  return timingSafeEqual(key, Buffer.from(kept.hash, 'base64url'));
}

const options = ({ n, r, p }: { n: number; r: number; p: number }) => ({ N: n, r, p, maxmem: 160 * n * r });
