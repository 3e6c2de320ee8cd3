import { describe, expect, test } from 'vitest';
import { readWish } from './wish.ts';

const PUBLIC = 'https://trees.example.org';

describe('what the command line asks for', () => {
  test.each([
    [['--host', '0.0.0.0'], 'crownfall people add'],
    [['--public-url', PUBLIC], 'crownfall people add'],
    [['--public-url', `${PUBLIC}/trees`, '--people', 'people.json'], 'without a path'],
    [['--public-url', 'trees.example.org', '--people', 'people.json'], 'of the form https://'],
    [['--proxy', '10.1.2.3'], 'before --public-url'],
    [['--public-url', PUBLIC, '--people', 'people.json', '--proxy', 'the proxy'], 'no network address'],
    [['--port', '70000'], 'no port'],
    [['--tls-cert', 'cert.pem'], 'go together'],
    [['--colour', 'red'], '--colour'],
  ])('%j is wrong use', (options, words) => {
    expect(readWish(['town.gpkg', ...options])).toContain(words);
  });

  test('on this machine alone nobody is asked who they are, nothing is logged, no header of a proxy counts', () => {
    expect(readWish(['town.gpkg'])).toMatchObject({ host: '127.0.0.1', people: null, log: false, proxies: [] });
  });

  test('behind a proxy: its address without a slash, the proxies of this machine and those named, a log', () => {
    const options = ['--public-url', `${PUBLIC}/`, '--people', 'people.json', '--proxy', '10.1.2.3'];
    const wish = { publicUrl: PUBLIC, proxies: ['127.0.0.1', '::1', '10.1.2.3'], log: true };
    expect(readWish(['town.gpkg', ...options])).toMatchObject(wish);
  });
});
