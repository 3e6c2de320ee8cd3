/** Who is asking: by token or by session. Without a file of people everyone is the one at this machine. */
import { createHash, randomBytes } from 'node:crypto';
import { Refusal } from '../http/refusal.ts';
import { Attempts } from './attempts.ts';
import { type Person, ROLES, type Role } from './people-file.ts';
import { hashSecret, readToken, secretMatches } from './token.ts';

export interface Asker {
  readonly name: string;
  readonly role: Role;
}

/** What a request shows of itself. */
export interface Credentials {
  readonly address: string;
  readonly authorization?: string | undefined;
  readonly session?: string | undefined;
}

const SESSION_MS = 12 * 3_600_000;
const KNOWN_MS = 10 * 60_000;
/** Hashes reckoned at once and waiting; each takes 32 MiB and some 50 ms. */
const HASHES_AT_ONCE = 8;
const SESSIONS = 10_000;

interface Known {
  readonly personId: string;
  readonly until: number;
}

export class Gate {
  readonly #people: () => readonly Person[];
  readonly #now: () => number;
  readonly #attempts: Attempts;
  /** By digest: a token that was right a moment ago need not be hashed again for each request. */
  readonly #tokens = new Map<string, Known>();
  readonly #sessions = new Map<string, Known>();
  #hashing = 0;

  constructor(people: () => readonly Person[], now: () => number = Date.now) {
    this.#people = people;
    this.#now = now;
    this.#attempts = new Attempts(now);
  }

  /** The asker, or null without credentials. Throws a refusal: 401 for wrong ones, 429 after too many wrong ones. */
  async asker({ address, authorization, session }: Credentials): Promise<Asker | null> {
    const token = authorization === undefined ? undefined : tokenOf(authorization);
    if (token !== undefined) return this.#personOf(token, address);
    if (session === undefined) return null;
    const person = this.#known(this.#sessions, session);
    return person && askerOf(person);
  }

  /** Opens a session for the holder of a token; answers its secret, for a cookie. */
  async logIn(token: string, address: string): Promise<{ readonly session: string; readonly asker: Asker }> {
    const person = await this.#personOf(token, address);
    const session = randomBytes(32).toString('base64url');
    remember(this.#sessions, session, { personId: person.id, until: this.#now() + SESSION_MS });
    return { session, asker: askerOf(person) };
  }

  logOut(session: string): void {
    this.#sessions.delete(digest(session));
  }

  async #personOf(token: string, address: string): Promise<Person> {
    const known = this.#known(this.#tokens, token);
    if (known !== null) return known;
    const parts = readToken(token);
    const keys = [`address ${address}`, ...(parts === null ? [] : [`person ${parts.personId}`])];
    const wait = this.#attempts.wait(keys);
    if (wait > 0) throw tooMany(wait);
    const person = await this.#proved(parts);
    if (person === null) {
      this.#attempts.failed(keys);
      throw new Refusal(401, 'not-known', 'This token is not known here.');
    }
    remember(this.#tokens, token, { personId: person.id, until: this.#now() + KNOWN_MS });
    return person;
  }

  /** Takes as long for a person who is not there as for a wrong secret. */
  async #proved(parts: ReturnType<typeof readToken>): Promise<Person | null> {
    if (parts === null) return null;
    if (this.#hashing >= HASHES_AT_ONCE) throw tooMany(1);
    this.#hashing++;
    try {
      const person = this.#people().find(({ id }) => id === parts.personId);
      if (person === undefined) {
        await hashSecret(parts.secret);
        return null;
      }
      return (await secretMatches(parts.secret, person.token)) ? person : null;
    } finally {
      this.#hashing--;
    }
  }

  /** The person behind a secret that was proved before, as long as they are still in the file. */
  #known(among: Map<string, Known>, secret: string): Person | null {
    const known = among.get(digest(secret));
    if (known === undefined || known.until <= this.#now()) return null;
    return this.#people().find(({ id }) => id === known.personId) ?? null;
  }
}

/** Whether a role includes another. */
export const mayAct = (role: Role, needed: Role): boolean => ROLES.indexOf(role) >= ROLES.indexOf(needed);

const askerOf = ({ name, role }: Person): Asker => ({ name, role });

const digest = (secret: string): string => createHash('sha256').update(secret).digest('base64url');

function remember(among: Map<string, Known>, secret: string, known: Known): void {
  among.set(digest(secret), known);
  for (const key of among.keys()) {
    if (among.size <= SESSIONS) break;
    among.delete(key);
  }
}

/** `Bearer TOKEN`, or `Basic` with the token as password, which is what desktop GIS programs can send. */
function tokenOf(authorization: string): string {
  const [scheme, value = ''] = authorization.split(' ', 2);
  if (scheme.toLowerCase() === 'bearer') return value;
  if (scheme.toLowerCase() !== 'basic') throw new Refusal(401, 'not-known', 'Expected a Bearer token.');
  const text = Buffer.from(value, 'base64').toString('utf8');
  return text.slice(text.indexOf(':') + 1);
}

const tooMany = (seconds: number): Refusal =>
  new Refusal(429, 'too-many-attempts', `Too many attempts. Wait ${seconds} s.`, { retryAfter: seconds });
