/** `crownfall people`: who may use a served project. */
import { Command, Option } from 'commander';
import type { Finish } from './common-options.ts';

const ABOUT = [
  'Keeps a file of the people who may use a served project. Each has a role: reader (sees everything), rater (also rates, ' +
    'observes and records visits), editor (also changes every record).',
  'add prints the person\u2019s token once; the file holds only a hash of it. A served project notices changes within seconds.',
].join('\n\n');

export function peopleCommand(finish: Finish): Command {
  return new Command('people')
    .summary('say who may use a served project')
    .description(ABOUT)
    .argument('<ACTION>', 'add, list or remove')
    .argument('<FILE>', 'file of people; made when absent')
    .argument('[NAME]', 'the person, as the journal calls them')
    .addOption(new Option('--role <ROLE>', 'what the person may do').choices(['reader', 'rater', 'editor']))
    .helpOption('-h, --help', 'print this help')
    .addHelpText('after', '\nExample:\n  crownfall people add people.json "R. Rowan" --role rater')
    .action(async (action: string, file: string, name: string | undefined, options: { role?: string }) => {
      const { keepPeople } = await import('../jobs/serve.ts');
      const role = options.role === undefined ? [] : ['--role', options.role];
      finish(await keepPeople([action, file, ...(name === undefined ? [] : [name]), ...role]));
    });
}
