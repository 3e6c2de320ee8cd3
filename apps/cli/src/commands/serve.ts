/** `crownfall serve`: the viewer and the API over a project. */
import type { Command } from 'commander';
import type { ServeOptions } from '../jobs/serve.ts';
import { type Finish, projectCommand, readPort } from './common-options.ts';

const ABOUT = [
  'Reckons a project and shows it as a map in the browser, until stopped with Ctrl-C. Other programs read crowns, pavement and ' +
    'blocks with their figures at /ogc (OGC API - Features).',
  'A folder is only read. A GeoPackage file (.gpkg) or a PostGIS database (postgres://...) takes edits from many people at once.',
  'Listens on this machine only, unless --host names another address; then --people says who may do what.',
].join('\n\n');

export function serveCommand(finish: Finish): Command {
  return projectCommand('serve', ABOUT, 'crownfall serve sample-geo --port 8137')
    .summary('show a project as a map in the browser')
    .option('--port <N>', 'port to listen on; 0 takes any free one', readPort, 8137)
    .option('--host <ADDRESS>', 'address to listen on', '127.0.0.1')
    .option('--people <FILE>', 'who may use it and their roles; see crownfall people')
    .option('--as <NAME>', 'how the journal calls you when there is no --people')
    .option('--photos <DIR>', 'folder for photos; beside a .gpkg file unless given')
    .option('--tls-cert <FILE>', 'certificate, to serve https')
    .option('--tls-key <FILE>', 'its private key')
    .option('--public-url <URL>', 'the address people use, when a proxy stands before this server')
    .option('--proxy <ADDRESS>', "that proxy's network address, when it runs on another machine")
    .option('--background <URL>', 'map tiles beneath the map, with {z}, {x} and {y}: the page then asks that machine')
    .option('--log', 'log every request to standard error, without personal data')
    .option('--quiet', 'print only the address')
    .action(async (project: string, options: ServeOptions) => {
      const { serve } = await import('../jobs/serve.ts');
      finish(await serve(project, options));
    });
}
