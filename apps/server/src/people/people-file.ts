/** The people who may use a served project: a file of its own, beside the project and not in it, so that copies carry no hashes. */
import { randomBytes } from 'node:crypto';
import { chmod, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { hashSecret, newPersonId, newToken, readToken, type TokenHash } from './token.ts';

/** What a person may do: read; also rate and visit; also edit every record. Each includes those before it. */
export const ROLES = ['reader', 'rater', 'editor'] as const;
export type Role = (typeof ROLES)[number];

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly token: TokenHash;
}

/** Reads the file; a file that does not exist has no people. Throws when it is not such a file. */
export async function readPeople(file: string): Promise<readonly Person[]> {
  const text = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return '{"people":[]}';
    throw error;
  });
  const people = parsed(text)?.people;
  if (!Array.isArray(people) || !people.every(isPerson)) throw new Error(`${file} is not a file of people`);
  return people;
}

/** Adds a person and answers their token, which is not kept and cannot be shown again. A name may be there once. */
export async function addPerson(file: string, name: string, role: Role): Promise<string> {
  const people = await readPeople(file);
  if (people.some((person) => person.name === name)) throw new Error(`${name} is there already; remove them first`);
  const id = newPersonId();
  const token = newToken(id);
  const { secret } = readToken(token) as { secret: string };
  await writePeople(file, [...people, { id, name, role, token: await hashSecret(secret) }]);
  return token;
}

/** Takes a person's token away; false when there was no such person. */
export async function removePerson(file: string, name: string): Promise<boolean> {
  const people = await readPeople(file);
  const rest = people.filter((person) => person.name !== name);
  if (rest.length < people.length) await writePeople(file, rest);
  return rest.length < people.length;
}

/** Whole or not at all, and readable by its owner alone. */
async function writePeople(file: string, people: readonly Person[]): Promise<void> {
  const draft = `${file}.${randomBytes(6).toString('hex')}`;
  try {
    await writeFile(draft, `${JSON.stringify({ people }, null, 2)}\n`, { mode: 0o600, flag: 'wx' });
    await chmod(draft, 0o600);
    await rename(draft, file);
  } finally {
    await rm(draft, { force: true });
  }
}

function parsed(text: string): { people?: unknown } | null {
  try {
    return JSON.parse(text) as { people?: unknown } | null;
  } catch {
    return null;
  }
}

function isPerson(value: unknown): value is Person {
  const { id, name, role, token } = (value ?? {}) as Record<string, unknown>;
  const { salt, hash, n, r, p } = (token ?? {}) as Record<string, unknown>;
  const texts = [id, name, salt, hash].every((each) => typeof each === 'string' && each !== '');
  return texts && ROLES.includes(role as Role) && [n, r, p].every((each) => Number.isSafeInteger(each));
}
