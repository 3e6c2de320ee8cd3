/** `crownfall serve`: the viewer over a project. */
import type { Command } from 'commander';
import type { ServeOptions } from '../jobs/serve.ts';
import { type Finish, projectCommand, readPort } from './common-options.ts';

const ABOUT = [
  'Reckons a project and shows it as a map in the browser, until stopped with Ctrl-C.',
  'Listens on this machine only, unless --host names another address. It has no log-in: open it to a network ' +
    'only where everyone on that network may see the data.',
].join('\n\n');

export function serveCommand(finish: Finish): Command {
  return projectCommand('serve', ABOUT, 'crownfall serve sample-geo --port 8137')
    .summary('show a project as a map in the browser')
    .option('--port <N>', 'port to listen on; 0 takes any free one', readPort, 8137)
    .option('--host <ADDRESS>', 'address to listen on', '127.0.0.1')
    .option('--quiet', 'print only the address')
    .action(async (project: string, options: ServeOptions) => {
      const { serve } = await import('../jobs/serve.ts');
      finish(await serve(project, options));
    });
}
