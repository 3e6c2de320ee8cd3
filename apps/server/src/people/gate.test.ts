import { describe, expect, test } from 'vitest';
import { Attempts } from './attempts.ts';
import { Gate } from './gate.ts';
import type { Person } from './people-file.ts';
import { hashSecret, newPersonId, newToken, readToken, secretMatches } from './token.ts';

async function person(name: string): Promise<{ person: Person; token: string }> {
  const id = newPersonId();
  const token = newToken(id);
  return { person: { id, name, role: 'rater', token: await hashSecret(readToken(token)?.secret ?? '') }, token };
}

describe('tokens', () => {
  test('scrypt as RFC 7914 section 12 gives it (third vector)', async () => {
    const kept = {
      salt: Buffer.from('SodiumChloride').toString('base64url'),
      hash: Buffer.from('7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2', 'hex').toString(
        'base64url',
      ),
      n: 16_384,
      r: 8,
      p: 1,
    };
    expect(await secretMatches('pleaseletmein', kept)).toBe(true);
    expect(await secretMatches('pleaseletmeout', kept)).toBe(false);
  });

  test('only the whole form is a token', () => {
    const token = newToken(newPersonId());
    expect(readToken(token)).not.toBeNull();
    for (const other of ['', token.slice(1), `${token}x`, token.replace('crownfall', 'other')])
      expect(readToken(other)).toBeNull();
  });
});

describe('attempts', () => {
  test('ten failures, then a wait until the window has passed', () => {
    let now = 0;
    const attempts = new Attempts(() => now);
    for (let i = 0; i < 9; i++) attempts.failed(['a']);
    expect(attempts.wait(['a'])).toBe(0);
    attempts.failed(['a', 'b']);
    expect(attempts.wait(['a'])).toBe(300);
    expect(attempts.wait(['b'])).toBe(0);
    now = 299_001;
    expect(attempts.wait(['a'])).toBe(1);
    now = 300_000;
    expect(attempts.wait(['a'])).toBe(0);
  });
});

describe('the gate', () => {
  test('a session ends after twelve hours and with its person', async () => {
    let now = 0;
    const { person: ann, token } = await person('Ann');
    let people: readonly Person[] = [ann];
    const gate = new Gate(
      () => people,
      () => now,
    );
    const { session } = await gate.logIn(token, 'here');
    expect(await gate.asker({ address: 'here', session })).toEqual({ name: 'Ann', role: 'rater' });
    now = 12 * 3_600_000;
    expect(await gate.asker({ address: 'here', session })).toBeNull();
    const second = (await gate.logIn(token, 'here')).session;
    people = [];
    expect(await gate.asker({ address: 'here', session: second })).toBeNull();
    await expect(gate.logIn(token, 'here')).rejects.toMatchObject({ status: 401 });
  });

  test('one address that guesses locks out itself, not the others', async () => {
    const { person: ann, token } = await person('Ann');
    const gate = new Gate(
      () => [ann],
      () => 0,
    );
    for (let i = 0; i < 10; i++) {
      await expect(gate.logIn('guess', 'far')).rejects.toMatchObject({ status: 401 });
    }
    await expect(gate.logIn('guess', 'far')).rejects.toMatchObject({ status: 429 });
    expect((await gate.logIn(token, 'here')).asker.name).toBe('Ann');
  });
});
