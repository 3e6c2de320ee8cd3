/** Behind a reverse proxy that speaks TLS to the world and plain HTTP to the server: right links, right people, right askers. */
import { createServer, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addPerson, readPeople } from '../../apps/server/src/people/people-file.ts';
import { temporaryFolder } from '../journeys/crownfall-process.ts';
import { writeTinyTown } from '../journeys/tiny-town.ts';
import { packedProject, type Running, runServer } from './server-running.ts';

const PUBLIC = 'https://trees.example.org';
const CROWN = { geometry: { type: 'Point', coordinates: [-79.4, 27.4] }, properties: { spread_m: 4 } };

interface Asked {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

interface Ask {
  readonly method?: string;
  readonly body?: unknown;
  readonly headers?: Readonly<Record<string, string>>;
  /** The address on this machine that the request comes from. */
  readonly from?: string;
}

/** As a client: Host is that of the public address, whoever is connected to. */
function ask(port: number, path: string, { method = 'GET', body, headers = {}, from }: Ask = {}): Promise<Asked> {
  const json: Record<string, string> = body === undefined ? {} : { 'content-type': 'application/json' };
  const told = { host: new URL(PUBLIC).host, ...json, ...headers };
  const local = from === undefined ? {} : { localAddress: from };
  return new Promise((answered, failed) => {
    const asking = request({ host: '127.0.0.1', port, path, method, headers: told, ...local }, (answer) => {
      let text = '';
      answer.setEncoding('utf8').on('data', (piece) => {
        text += piece;
      });
      answer.on('end', () => answered({ status: answer.statusCode ?? 0, headers: answer.headers, text }));
    });
    asking.on('error', failed).end(body === undefined ? undefined : JSON.stringify(body));
  });
}

/** A proxy as nginx and Caddy are set up: it adds the client's address to those it is told, and may put its own Host. */
function proxyTo(target: number, keepsHost: boolean): Promise<Server> {
  const server = createServer((incoming, outgoing) => {
    const before = incoming.headers['x-forwarded-for'];
    const forwarded = [...(before === undefined ? [] : [before]), incoming.headers['x-test-client'] ?? '203.0.113.9'];
    const headers = {
      ...incoming.headers,
      'x-forwarded-for': forwarded.join(', '),
      'x-forwarded-proto': 'https',
      'x-forwarded-host': incoming.headers.host ?? '',
      host: keepsHost ? incoming.headers.host : `127.0.0.1:${target}`,
    };
    const { method, url: path } = incoming;
    const passedOn = request({ host: '127.0.0.1', port: target, method, path, headers }, (answer) => {
      outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(outgoing);
    });
    incoming.pipe(passedOn);
  });
  return new Promise((listening) => server.listen(0, '127.0.0.1', () => listening(server)));
}

const portOf = (server: Server): number => (server.address() as AddressInfo).port;

describe.each([
  ['that keeps the name asked for', true],
  ['that puts its own name', false],
])('a proxy %s', (_how, keepsHost) => {
  let running: Running;
  let proxy: Server;
  let port: number;
  let token: string;

  beforeAll(async () => {
    const file = join(temporaryFolder(), 'people.json');
    token = await addPerson(file, 'The editor', 'editor');
    const project = await packedProject(writeTinyTown(join(temporaryFolder(), 'town')));
    running = await runServer(project, { people: await readPeople(file), publicUrl: PUBLIC });
    proxy = await proxyTo(Number(new URL(running.url).port), keepsHost);
    port = portOf(proxy);
  });
  afterAll(async () => {
    proxy?.close();
    await running?.close();
  });

  const bearer = (): Record<string, string> => ({ authorization: `Bearer ${token}` });

  test('every link of the collections and both descriptions lead to the public address', async () => {
    const paths = [
      '/ogc',
      '/ogc/api',
      '/ogc/collections',
      '/ogc/collections/crowns',
      '/ogc/collections/crowns/schema',
      '/ogc/collections/crowns/items?limit=1',
      '/ogc/collections/crowns/items?limit=1&offset=1',
      '/ogc/collections/crowns/items/T-GALLED',
      '/api/openapi.json',
    ];
    for (const path of paths) {
      const { status, text } = await ask(port, path, { headers: bearer() });
      expect(status).toBe(200);
      const links = [...text.matchAll(/"(?:href|url|\$id)":"([^"]+)"/g)].map(([, link]) => link);
      expect(links.length).toBeGreaterThan(0);
      for (const link of links.filter((each) => !/opengis\.net|apache\.org/.test(each))) {
        expect(link.startsWith(`${PUBLIC}/`) || link === PUBLIC).toBe(true);
      }
    }
    const { text } = await ask(port, '/ogc/collections/crowns/items?limit=1', { headers: bearer() });
    const next = JSON.parse(text).links.find(({ rel }: { rel: string }) => rel === 'next');
    const following = await ask(port, next.href.replace(PUBLIC, ''), { headers: bearer() });
    expect(JSON.parse(following.text).numberReturned).toBe(1);
  });

  test('a page of the public address may log in and write, its cookie never travels in the clear; other pages may not', async () => {
    const login = await ask(port, '/api/session', { method: 'POST', body: { token }, headers: { origin: PUBLIC } });
    expect(login.status).toBe(200);
    expect(String(login.headers['set-cookie'])).toMatch(/HttpOnly; SameSite=Strict; Secure/);
    const cookie = String(login.headers['set-cookie']).split(';')[0];
    const write = (origin: string): Promise<Asked> =>
      ask(port, '/api/records/crowns', { method: 'POST', body: CROWN, headers: { cookie, origin } });
    expect((await write(PUBLIC)).status).toBe(201);
    expect((await write('https://elsewhere.example')).status).toBe(403);
    expect((await write('http://trees.example.org')).status).toBe(keepsHost ? 201 : 403);
  });

  test('guessing is counted by who asks, not by the proxy; what a client claims about itself is not believed', async () => {
    const guess = (client: string, claimed?: string): Promise<Asked> =>
      ask(port, '/api/records/crowns', {
        headers: {
          authorization: 'Bearer wrong',
          'x-test-client': client,
          ...(claimed === undefined ? {} : { 'x-forwarded-for': claimed }),
        },
      });
    for (let i = 0; i < 10; i++) expect((await guess('203.0.113.1', `198.51.100.${i}`)).status).toBe(401);
    expect((await guess('203.0.113.1', '198.51.100.77')).status).toBe(429);
    expect((await guess('203.0.113.2')).status).toBe(401);
    // Past the proxy, from an address that is none of its own, the header counts for nothing.
    const past = (claimed: string): Promise<Asked> =>
      ask(Number(new URL(running.url).port), '/api/records/crowns', {
        headers: { authorization: 'Bearer wrong', 'x-forwarded-for': claimed },
        from: '127.0.0.2',
      });
    for (let i = 0; i < 10; i++) expect((await past(`198.51.100.${i}`)).status).toBe(401);
    expect((await past('198.51.100.200')).status).toBe(429);
  });

  test('a name that is neither this machine’s nor the public one gets nothing', async () => {
    const direct = Number(new URL(running.url).port);
    expect((await ask(direct, '/api/health', { headers: { host: 'rebound.example' } })).status).toBe(421);
    expect((await ask(direct, '/api/health')).status).toBe(200);
  });
});
