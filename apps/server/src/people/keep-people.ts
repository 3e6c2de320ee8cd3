/** `people add|list|remove FILE …`: who may use a served project. */
import { parseArgs } from 'node:util';
import { EXIT, say } from '../exit.ts';
import { addPerson, ROLES, type Role, readPeople, removePerson } from './people-file.ts';

const USE = [
  'crownfall people add FILE NAME --role reader|rater|editor',
  'crownfall people list FILE',
  'crownfall people remove FILE NAME',
].join('\n');

export async function keepPeople(argv: string[]): Promise<number> {
  const wish = readWish(argv);
  if (wish === null) return say(USE, EXIT.misuse);
  const { action, file, name, role } = wish;
  try {
    if (action === 'list') {
      for (const person of await readPeople(file)) process.stdout.write(`${person.role}\t${person.name}\n`);
      return EXIT.done;
    }
    if (action === 'remove')
      return (await removePerson(file, name)) ? EXIT.done : say(`${name} is not in ${file}.`, EXIT.misuse);
    const token = await addPerson(file, name, role);
    process.stdout.write(`${token}\n`);
    return say(`The token of ${name} (${role}). It is shown once and kept nowhere: hand it over in person.`, EXIT.done);
  } catch (error) {
    return say(error instanceof Error ? error.message : String(error), EXIT.outage);
  }
}

interface PeopleWish {
  readonly action: 'add' | 'list' | 'remove';
  readonly file: string;
  readonly name: string;
  readonly role: Role;
}

function readWish(argv: string[]): PeopleWish | null {
  try {
    const { values, positionals } = parseArgs({
      args: argv,
      allowPositionals: true,
      options: { role: { type: 'string', default: 'reader' } },
    });
    const [action, file, name = ''] = positionals;
    const known =
      (action === 'list' && positionals.length === 2) || (NAMED.includes(action) && positionals.length === 3);
    const role = ROLES.find((each) => each === values.role);
    const nameFits = action === 'list' || /^\P{Cc}{1,100}$/u.test(name);
    return known && role !== undefined && nameFits
      ? { action: action as PeopleWish['action'], file, name, role }
      : null;
  } catch {
    return null;
  }
}

const NAMED = ['add', 'remove'];
