/** The server from outside: what it serves, what it refuses, how it stops. */
import { readFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { crownfall, type Served, serve, temporaryFolder } from './crownfall-process.ts';
import { writeTinyTown } from './tiny-town.ts';

interface Answer {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** Sends the path exactly as given; fetch would tidy it first. */
function ask(url: string, path: string, headers: Readonly<Record<string, string>> = {}): Promise<Answer> {
  const { hostname, port } = new URL(url);
  return new Promise((done, fail) => {
    request({ hostname, port, path, headers }, (response) => {
      let body = '';
      response.setEncoding('utf8');
      response.on('data', (piece: string) => {
        body += piece;
      });
      response.on('end', () => done({ status: response.statusCode, headers: response.headers, body }));
    })
      .on('error', fail)
      .end();
  });
}

describe('the server', () => {
  const town = writeTinyTown(join(temporaryFolder(), 'town'));
  let served: Served;

  beforeAll(async () => {
    served = await serve(town);
  });

  afterAll(async () => {
    await served?.stop();
  });

  test('listens on this machine only', () => {
    expect(new URL(served.url).hostname).toBe('127.0.0.1');
  });

  test('serves the very layers that reckon writes', async () => {
    const out = join(temporaryFolder(), 'out');
    expect(crownfall(['reckon', town, '--out', out, '--quiet']).code).toBe(0);
    for (const layer of ['blocks', 'trees', 'pavement']) {
      const { status, headers, body } = await ask(served.url, `/api/layers/${layer}.geojson`);
      expect(status).toBe(200);
      expect(headers['content-type']).toContain('application/geo+json');
      expect(body).toBe(readFileSync(join(out, `${layer}.geojson`), 'utf8'));
    }
  });

  test('serves figures, findings and health as JSON', async () => {
    const { blocks, bounds } = JSON.parse((await ask(served.url, '/api/assessment')).body);
    expect(blocks.map((block: { blockId: string }) => block.blockId)).toEqual(['GALLED', 'CLEAN']);
    expect(bounds).toHaveLength(4);
    expect(JSON.parse((await ask(served.url, '/api/health')).body).state).toBe('ok');
  });

  test('lets the page load nothing from elsewhere', async () => {
    const { headers } = await ask(served.url, '/');
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    // WebAssembly of this server may be compiled (the plan's solver); no script is made from text, none comes from elsewhere.
    expect(policy.replace("'wasm-unsafe-eval'", '')).not.toMatch(/https?:|\*|unsafe/);
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  test.each([
    '/../package.json',
    '/..%2f..%2fpackage.json',
    '/%2e%2e/%2e%2e/package.json',
    '/assets/../../package.json',
    '/..\\..\\package.json',
    '/api/layers/..%2f..%2f..%2fpackage.json',
    '/api/layers/secret.geojson',
  ])('gives nothing for %s', async (path) => {
    const { status, body } = await ask(served.url, path);
    expect(status).toBeGreaterThanOrEqual(400);
    expect(status).toBeLessThan(500);
    expect(body).not.toContain('"dependencies"');
  });

  test('answers to no other name than this machine’s own (DNS rebinding)', async () => {
    expect((await ask(served.url, '/api/assessment', { host: 'trees.example' })).status).toBe(421);
  });

  test('says which port is taken', () => {
    const { port } = new URL(served.url);
    const { code, stderr } = crownfall(['serve', town, '--port', port]);
    expect(code).toBe(3);
    expect(stderr).toContain(`port ${port} is in use`);
  });

  test('stops when told to, with exit code 0', async () => {
    const second = await serve(town);
    expect(await second.stop()).toBe(0);
    await expect(ask(second.url, '/api/health')).rejects.toThrow();
  });
});
