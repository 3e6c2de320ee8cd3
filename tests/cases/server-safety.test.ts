/** What the server must not let happen: to people without a token, to files outside the project, to those who were photographed. */

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { main as serverMain } from '../../apps/server/src/main.ts';
import { addPerson, type Person, readPeople, removePerson } from '../../apps/server/src/people/people-file.ts';
import { captured, crownfallHere } from '../journeys/crownfall-here.ts';
import { crownfall, type Ending, temporaryFolder } from '../journeys/crownfall-process.ts';
import { writeTinyTown } from '../journeys/tiny-town.ts';
import { exifSegment } from './exif-segment.ts';
import { call, packedProject, type Running, runServer } from './server-running.ts';

const town = (): string => writeTinyTown(join(temporaryFolder(), 'town'));
const RATING = { properties: { tree_id: 'T-CLEAN', rated_on: '2026-05-21', browned_pct: 5 } };
const CROWN = { geometry: { type: 'Point', coordinates: [-79.4, 27.4] }, properties: { spread_m: 4 } };

describe('people and roles', () => {
  const file = join(temporaryFolder(), 'people.json');
  const tokens: Record<string, string> = {};
  let running: Running;
  let api: string;
  const people: Person[] = [];

  beforeAll(async () => {
    for (const role of ['reader', 'rater', 'editor'] as const)
      tokens[role] = await addPerson(file, `The ${role}`, role);
    people.push(...(await readPeople(file)));
    running = await runServer(await packedProject(town()), { people });
    api = `${running.url}/api`;
  });
  afterAll(() => running?.close());

  const as = (role: string): Record<string, string> => ({ authorization: `Bearer ${tokens[role]}` });

  test('the file holds no token, only salted hashes, and is its owner’s alone', () => {
    const text = readFileSync(file, 'utf8');
    // The secret is the rest after two underscores; it may hold further ones itself.
    for (const token of Object.values(tokens)) expect(text).not.toContain(token.split('_').slice(2).join('_'));
    expect(statSync(file).mode & 0o077).toBe(0);
    const hashes = JSON.parse(text).people.map(({ token }: { token: { salt: string; n: number } }) => token);
    expect(new Set(hashes.map(({ salt }: { salt: string }) => salt)).size).toBe(3);
    // OWASP's least cost for scrypt is N = 2^17 with r = 8 for passwords people choose; these are 256 random bits.
    for (const { n } of hashes) expect(n).toBeGreaterThanOrEqual(2 ** 15);
  });

  test.each([
    '/api/assessment',
    '/api/layers/blocks.geojson',
    '/api/records/crowns',
    '/api/changes',
    '/api/imagery/aerial.tif',
    '/api/sheets/GALLED',
    '/api/openapi.json',
    '/ogc',
    '/ogc/collections/crowns/items',
  ])('without a token nothing of the project: %s', async (path) => {
    const { status, headers, body } = await call(`${running.url}${path}`, 'GET');
    expect(status).toBe(401);
    expect(headers.get('www-authenticate')).toMatch(path.startsWith('/ogc') ? /^Basic/ : /^Bearer/);
    expect(JSON.stringify(body)).not.toMatch(/Tiny Town|T-GALLED/);
  });

  test('health and readiness are open and tell nothing of the project', async () => {
    expect((await call(`${api}/health`, 'GET')).body).toEqual({ state: 'ok' });
    expect((await call(`${api}/ready`, 'GET')).body.state).toBe('ready');
  });

  test.each([
    ['reader', 403, 403],
    ['rater', 201, 403],
    ['editor', 201, 201],
  ])('a %s: rating %i, crown %i', async (role, rating, crown) => {
    expect((await call(`${running.url}/ogc/collections`, 'GET', undefined, as(role))).status).toBe(200);
    expect((await call(`${api}/records/ratings`, 'POST', RATING, as(role))).status).toBe(rating);
    expect((await call(`${api}/records/crowns`, 'POST', CROWN, as(role))).status).toBe(crown);
    const batch = { edits: [{ action: 'insert', layer: 'crowns', ...CROWN }] };
    expect((await call(`${api}/edits`, 'POST', batch, as(role))).status).toBe(crown === 201 ? 200 : 403);
  });

  test('the journal names the person', async () => {
    await call(`${api}/records/ratings`, 'POST', RATING, as('rater'));
    const { changes } = (await call(`${api}/journal`, 'GET', undefined, as('reader'))).body;
    expect(changes.at(-1).author).toBe('The rater');
  });

  test('a desktop program sends the token as a password', async () => {
    const authorization = `Basic ${Buffer.from(`anyone:${tokens.reader}`).toString('base64')}`;
    expect((await call(`${running.url}/ogc/collections`, 'GET', undefined, { authorization })).status).toBe(200);
  });

  test('a session in a cookie that scripts cannot read and other sites cannot send', async () => {
    const opened = await call(`${api}/session`, 'POST', { token: tokens.editor });
    const cookie = opened.headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/HttpOnly/);
    expect(cookie).toMatch(/SameSite=Strict/);
    expect(opened.body).toEqual({ name: 'The editor', role: 'editor' });
    const session = { cookie: cookie.split(';')[0] };
    expect((await call(`${api}/project`, 'GET', undefined, session)).body.asker.role).toBe('editor');
    const forged = await call(`${api}/records/crowns`, 'POST', CROWN, {
      ...session,
      origin: 'https://elsewhere.example',
    });
    expect(forged.status).toBe(403);
    await call(`${api}/session`, 'DELETE', undefined, session);
    expect((await call(`${api}/project`, 'GET', undefined, session)).status).toBe(401);
  });

  test('a person taken out is out, even with a token that was proved a moment ago', async () => {
    expect((await call(`${api}/project`, 'GET', undefined, as('reader'))).status).toBe(200);
    expect(await removePerson(file, 'The reader')).toBe(true);
    people.splice(0, people.length, ...(await readPeople(file)));
    expect((await call(`${api}/project`, 'GET', undefined, as('reader'))).status).toBe(401);
  });

  test('guessing is slowed down: after ten wrong tokens even the right one has to wait', async () => {
    const wrong = `crownfall_${tokens.rater.split('_')[1]}_${'A'.repeat(43)}`;
    const statuses: number[] = [];
    for (let i = 0; i < 14; i++) statuses.push((await call(`${api}/session`, 'POST', { token: wrong })).status);
    expect(statuses.filter((status) => status === 401).length).toBeLessThanOrEqual(10);
    expect(statuses.at(-1)).toBe(429);
    const { status, headers } = await call(`${api}/session`, 'POST', { token: wrong });
    expect(status).toBe(429);
    expect(Number(headers.get('retry-after'))).toBeGreaterThan(0);
  });

  test('the log holds no name, no token, no address, no id', () => {
    const text = JSON.stringify(running.log);
    expect(running.log.length).toBeGreaterThan(20);
    for (const secret of ['The rater', 'T-GALLED', '127.0.0.1', ...Object.values(tokens)])
      expect(text).not.toContain(secret);
    for (const line of running.log)
      expect(Object.keys(line).sort()).toEqual(['method', 'ms', 'request', 'role', 'route', 'status']);
  });
});

/** The head of a TIFF and some bytes: the server looks no further. */
const PICTURE = Buffer.concat([Buffer.from('II*\0'), Buffer.from(Array.from({ length: 996 }, (_, i) => i % 251))]);

/** A town that lists a picture, a file that is none, and one that is not there. */
function picturedTown(): string {
  const folder = town();
  writeFileSync(join(folder, 'flown #1.tif'), PICTURE);
  writeFileSync(join(folder, 'notes.tif'), 'no picture');
  const path = join(folder, 'project.json');
  const project = JSON.parse(readFileSync(path, 'utf8'));
  project.layers.imagery = ['flown #1.tif', 'notes.tif', 'gone.tif'].map((name) => join(folder, name));
  writeFileSync(path, JSON.stringify(project));
  return folder;
}

describe('on this machine alone', () => {
  let running: Running;
  let project: string;
  beforeAll(async () => {
    project = await packedProject(picturedTown());
    running = await runServer(project);
  });
  afterAll(() => running?.close());

  test('no page from elsewhere can write, nor can one that dresses JSON as text', async () => {
    const address = `${running.url}/api/records/crowns`;
    for (const origin of ['https://elsewhere.example', 'null', running.url.replace('127.0.0.1', '127.0.0.2')]) {
      expect((await call(address, 'POST', CROWN, { origin })).status).toBe(403);
    }
    expect((await call(address, 'POST', CROWN, { 'sec-fetch-site': 'cross-site' })).status).toBe(403);
    expect((await call(address, 'POST', CROWN, { origin: running.url })).status).toBe(201);
    const dressed = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'text/plain' },
      body: JSON.stringify(CROWN),
    });
    expect(dressed.status).toBe(415);
  });

  test('strict headers on every answer, refusals and streams among them', async () => {
    for (const path of ['/api/assessment', '/ogc', '/nothing', '/api/records/none', '/api/changes', '/log-in/']) {
      const abort = new AbortController();
      const { headers } = await fetch(`${running.url}${path}`, { signal: abort.signal });
      expect(headers.get('content-security-policy'), path).toMatch(/default-src 'none'/);
      // WebAssembly of this server may be compiled; no script is made from text, none comes from elsewhere.
      const policy = headers.get('content-security-policy')?.replace("'wasm-unsafe-eval'", '');
      expect(policy).not.toMatch(/unsafe|\*|https?:/);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      abort.abort();
    }
  });

  test('a body that is too large is refused', async () => {
    const big = { properties: { note: 'x'.repeat(5 << 20) } };
    const { status, body } = await call(`${running.url}/api/records/crowns`, 'POST', big).catch(() => ({
      status: 413,
      body: { code: 'too-large' },
    }));
    expect(status).toBe(413);
    expect(body.code).toBe('too-large');
  });

  test('HTML in names stays text: nothing that is served is read as a page', async () => {
    const name = '<img src=x onerror=alert(1)>';
    const made = await call(`${running.url}/api/records/crowns`, 'POST', {
      ...CROWN,
      properties: { tree_id: name, host: name, spread_m: 4 },
    });
    const read = await call(`${running.url}/api/records/crowns/${made.body.recordId}`, 'GET');
    expect(read.body.properties.tree_id).toBe(name);
    for (const path of [
      `/api/records/crowns/${made.body.recordId}`,
      `/api/trees/${encodeURIComponent(name)}/history`,
      `/ogc/collections/crowns/items/${encodeURIComponent(name)}`,
      `/${encodeURIComponent(name)}`,
    ]) {
      const { headers } = await call(`${running.url}${path}`, 'GET');
      expect(headers.get('content-type')).toMatch(/^application\/(geo\+)?json/);
    }
  });

  test('a picture of the project is given in parts, and nothing else that lies about', async () => {
    const ask = (name: string, range?: string) =>
      fetch(`${running.url}/api/imagery/${encodeURIComponent(name)}`, { headers: range ? { range } : {} });
    expect((await call(`${running.url}/api/project`, 'GET')).body.imagery).toEqual(['flown #1.tif']);
    // RFC 9110, 14.2, 14.4, 15.3.7 and 15.5.17.
    const part = await ask('flown #1.tif', 'bytes=4-9');
    expect([part.status, part.headers.get('content-range')]).toEqual([206, 'bytes 4-9/1000']);
    expect(Buffer.from(await part.arrayBuffer())).toEqual(PICTURE.subarray(4, 10));
    expect(part.headers.get('content-type')).toBe('image/tiff');
    expect(part.headers.get('cache-control')).toBe('private, no-cache');
    const tail = await ask('flown #1.tif', 'bytes=990-5000');
    expect([tail.status, tail.headers.get('content-range')]).toEqual([206, 'bytes 990-999/1000']);
    const beyond = await ask('flown #1.tif', 'bytes=1000-1001');
    expect([beyond.status, beyond.headers.get('content-range')]).toEqual([416, 'bytes */1000']);
    expect(((await beyond.json()) as { code: string }).code).toBe('beyond-its-end');
    const whole = await ask('flown #1.tif');
    expect([whole.status, (await whole.arrayBuffer()).byteLength]).toEqual([200, 1000]);
    for (const name of ['notes.tif', 'gone.tif', 'project.json', '../notes.tif', '../town/project.json'])
      expect((await ask(name)).status, name).toBe(404);
  });

  test('a visit sheet: its size is told before it is fetched, and it is the one that the command writes', async () => {
    const address = `${running.url}/api/sheets/GALLED?paper=a4&language=es&units=us`;
    const head = await fetch(address, { method: 'HEAD' });
    const sheet = Buffer.from(await (await fetch(address)).arrayBuffer());
    expect([head.status, head.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    expect(Number(head.headers.get('content-length'))).toBe(sheet.length);
    const out = join(temporaryFolder(), 'galled.pdf');
    const wish = ['--paper', 'a4', '--language', 'es', '--units', 'us', '--quiet'];
    const { code } = await crownfallHere(['sheet', project, '--block', 'GALLED', '--out', out, ...wish]);
    expect(code).toBe(0);
    expect(sheet.equals(readFileSync(out))).toBe(true);
    const unknown = await call(`${running.url}/api/sheets/NOWHERE`, 'GET');
    expect([unknown.status, unknown.body.code]).toEqual([404, 'no-such-block']);
    const wrong = await call(`${running.url}/api/sheets/GALLED?paper=a3`, 'GET');
    expect([wrong.status, wrong.body.code]).toEqual([400, 'invalid-request']);
  });

  test.each([
    '/api/photos/..%2f..%2ftown.gpkg',
    '/api/photos/%2e%2e',
    '/log-in/..%2f..%2fpackage.json',
    '/log-in/../src/app.ts',
    '/..%5c..%5cpackage.json',
  ])('no way out of the project: %s', async (path) => {
    const { hostname, port } = new URL(running.url);
    const answer = await new Promise<{ status: number; text: string }>((done, fail) => {
      request({ hostname, port, path }, (incoming) => {
        let text = '';
        incoming.on('data', (piece) => {
          text += piece;
        });
        incoming.on('end', () => done({ status: incoming.statusCode ?? 0, text }));
      })
        .on('error', fail)
        .end();
    });
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
    expect(answer.text).not.toMatch(/dependencies|import /);
  });

  describe('photos', () => {
    const post = (bytes: Uint8Array, query = ''): Promise<Response> =>
      fetch(`${running.url}/api/photos${query}`, {
        method: 'POST',
        headers: { 'content-type': 'image/jpeg' },
        body: bytes as BodyInit,
      });

    test.each([
      ['a text', Buffer.from('<html><script>alert(1)</script></html>')],
      ['a PNG head', Buffer.from('89504e470d0a1a0a', 'hex')],
      ['a JPEG cut off', Buffer.from('ffd8ffe000104a46494600010100000100010000ffdb', 'hex')],
      ['nothing', Buffer.alloc(0)],
    ])('%s is no photo, whatever it says it is', async (_what, bytes) => {
      const { status } = await post(bytes);
      expect(status).toBeGreaterThanOrEqual(400);
      expect(status).toBeLessThan(500);
    });

    const magick = spawnSync('convert', ['-version']).status === 0;
    test.skipIf(!magick)('a photo loses its position and keeps its pixels and its way up', async () => {
      const folder = temporaryFolder();
      const plain = join(folder, 'plain.jpg');
      spawnSync('convert', ['-size', '64x48', 'plasma:', '-quality', '90', plain]);
      const withExif = Buffer.concat([
        readFileSync(plain).subarray(0, 2),
        exifSegment(),
        readFileSync(plain).subarray(2),
        Buffer.from('GPS 27.25 -79.5 after the end'),
      ]);
      const given = join(folder, 'given.jpg');
      writeFileSync(given, withExif);
      // ImageMagick 6 as the outside reader: it finds the position in what was sent, and none in what is kept.
      expect(identify(given, '%[EXIF:GPSLatitude]')).toMatch(/27/);
      const response = await post(withExif);
      expect(response.status).toBe(201);
      const { photo, width, height, takenAt } = (await response.json()) as Record<string, unknown>;
      expect([width, height, takenAt]).toEqual([64, 48, '2026:05:20 09:30:00']);
      const kept = Buffer.from(await (await fetch(`${running.url}/api/photos/${photo}`)).arrayBuffer());
      const keptFile = join(folder, 'kept.jpg');
      writeFileSync(keptFile, kept);
      expect(identify(keptFile, '%[EXIF:GPSLatitude]%[EXIF:GPSLongitude]%[EXIF:Make]')).toBe('');
      expect(identify(keptFile, '%[EXIF:Orientation]')).toBe('6');
      expect(identify(keptFile, '%[EXIF:DateTimeOriginal]')).toBe('2026:05:20 09:30:00');
      expect(kept.includes('GPS')).toBe(false);
      expect(identify(keptFile, '%#')).toBe(identify(plain, '%#'));
      expect((await post(withExif)).status).toBe(200);
      const meant = (await (await post(withExif, '?keep_position=yes')).json()) as { photo: string };
      const asSent = Buffer.from(await (await fetch(`${running.url}/api/photos/${meant.photo}`)).arrayBuffer());
      expect(asSent.equals(withExif)).toBe(true);
      expect(existsSync(running.photosDir)).toBe(true);
      for (const name of readdirSync(running.photosDir)) expect(name).toMatch(/^[0-9a-f]{64}\.jpg$/);
    });
  });
});

test('health says that the server runs, readiness that its project can be read', async () => {
  const running = await runServer(await packedProject(town()));
  const ask = async (path: string) => (await call(`${running.url}/api/${path}`, 'GET')).status;
  expect([await ask('health'), await ask('ready')]).toEqual([200, 200]);
  await running.store?.close();
  expect([await ask('health'), await ask('ready')]).toEqual([200, 503]);
  await running.close();
});

describe('the command', () => {
  test('does not open to the network without saying who may do what', () => {
    const { code, stderr } = crownfall(['serve', town(), '--host', '0.0.0.0', '--port', '0']);
    expect(code).toBe(2);
    expect(stderr).toContain('crownfall people add');
  });

  test('people: adds, lists, removes; the token is printed once and alone on standard output', {
    timeout: 300_000,
  }, async () => {
    const file = join(temporaryFolder(), 'people.json');
    const people = (...words: string[]): Promise<Ending> => captured(() => serverMain(['people', ...words]));
    const added = crownfall(['people', 'add', file, 'R. Rowan (invented)', '--role', 'rater']);
    expect(added.code).toBe(0);
    expect(added.stdout).toMatch(/^crownfall_[a-z0-9]{12}_[\w-]{43}\n$/);
    expect((await people('list', file)).stdout).toBe('rater\tR. Rowan (invented)\n');
    expect((await people('remove', file, 'R. Rowan (invented)')).code).toBe(0);
    expect((await people('list', file)).stdout).toBe('');
  });
});

const identify = (file: string, format: string): string =>
  spawnSync('identify', ['-quiet', '-format', format, file], { encoding: 'utf8' }).stdout.trim();
