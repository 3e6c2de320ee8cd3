/** The files a plan reads beside the project: those a person gave, else those the settings name where the project lies. */
import type { Address } from '@crownfall/assessment';
import { readAddresses, readTemperatures } from '@crownfall/exchange';
import type { DailyTemperature } from '@crownfall/priority';
import { openFile, type ProjectPlace } from '../project/project-files.ts';

export interface PlanFiles {
  readonly temperatures: readonly DailyTemperature[];
  readonly addresses: readonly Address[];
  readonly notRead: readonly string[];
}

/** What a person gave instead of what the settings name. */
export interface GivenFiles {
  readonly temperatures: File | null;
  readonly addresses: File | null;
}

export interface NamedFiles {
  readonly temperatures: string;
  readonly addresses: string;
}

/** A file that is missing or wrong is told and leaves its list empty. */
export async function planFiles(place: ProjectPlace, named: NamedFiles, given: GivenFiles): Promise<PlanFiles> {
  const notRead: string[] = [];
  const read = async <Row>(
    of: keyof GivenFiles,
    reader: (bytes: Uint8Array, file: string) => readonly Row[] | Promise<readonly Row[]>,
  ): Promise<readonly Row[]> => {
    const name = given[of]?.name ?? named[of].trim();
    if (name === '') return [];
    const stream = given[of]?.stream() ?? (await openFile(place, name));
    try {
      if (!stream) throw new RangeError(`${name}: not found`);
      return await reader(new Uint8Array(await new Response(stream).arrayBuffer()), name);
    } catch (error) {
      notRead.push(error instanceof Error ? error.message : String(error));
      return [];
    }
  };
  const temperatures = await read('temperatures', readTemperatures);
  const addresses = await read('addresses', readAddresses);
  return { temperatures, addresses, notRead };
}
