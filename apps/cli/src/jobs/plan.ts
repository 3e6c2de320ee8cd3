/** Plans the season, prints the plan, writes it when asked to. */
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { isStopped, offersOf, type PlanOptions, planWork, type Reckoned } from '@crownfall/assessment';
import { degree, geometryToJson, planFiles, planJson, readAddresses, readTemperatures } from '@crownfall/exchange';
import { writeFiles } from '@crownfall/exchange/node';
import { highsSolver } from '@crownfall/priority';
import loadHighs from 'highs';
import { blockReport } from '../reports/plan-block-report.ts';
import { clashReport, planReport } from '../reports/plan-report.ts';
import { reportStopped } from '../reports/stopped-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';
import { fileBeside } from './plan-files.ts';
import { reckonedHere } from './reckoned-here.ts';

export interface PlanCommandOptions extends CommonOptions {
  readonly budget?: number;
  readonly crewDays?: number;
  readonly weeks?: number;
  readonly temperatures?: string;
  readonly addresses?: string;
  readonly block?: string;
  readonly draws: number;
  readonly seed: number;
  readonly seconds: number;
  readonly rows: number;
  readonly out?: string;
}

export async function plan(project: string, options: PlanCommandOptions): Promise<number> {
  const { title, outcome } = await reckonedHere(project, options.quiet === true);
  if (isStopped(outcome)) return reportStopped(title, outcome.findings, options);
  const progress = progressOn(process.stderr, options.quiet === true);
  try {
    progress.stage('Weighing actions', 0.2);
    const asked = await planOptions(project, outcome, options);
    const book = offersOf(outcome, asked);
    if (options.block !== undefined && !book.offers.some(({ blockId }) => blockId === options.block)) {
      throw new RangeError(`--block: expected a block of the project, got ${options.block}`);
    }
    progress.stage('Choosing', 0.5);
    const found = planWork(outcome, { ...asked, book });
    progress.end();
    if (options.out !== undefined && found.feasible)
      await writeFiles(options.out, planFiles(found, { outlines: outlinesOf(outcome) }));
    const words = found.feasible
      ? options.block === undefined
        ? planReport(found, options)
        : blockReport(found, options.block)
      : clashReport(found);
    process.stdout.write(options.json ? `${JSON.stringify(planJson(found), null, 2)}\n` : `${words}\n`);
    return found.feasible ? EXIT.done : EXIT.dataStops;
  } finally {
    progress.end();
  }
}

function outlinesOf({ stages: { ground } }: Reckoned) {
  return new Map(ground.blocks.map(({ blockId, geometry }) => [blockId, geometryToJson(geometry, degree)]));
}

export async function planOptions(
  project: string,
  { settings }: Reckoned,
  options: PlanCommandOptions,
): Promise<PlanOptions> {
  const { plan: rules, bloom } = settings;
  const temperatures = await fileBeside(project, options.temperatures, bloom.temperature_file);
  const addresses = await fileBeside(project, options.addresses, rules.address_file);
  const { budget, crewDays, weeks } = options;
  return {
    solve: highsSolver(await loadHighs()),
    draws: options.draws,
    seed: options.seed,
    seconds: options.seconds,
    ...(temperatures === null
      ? {}
      : { temperatures: await readTemperatures(await readFile(temperatures), basename(temperatures)) }),
    ...(addresses === null ? {} : { addresses: readAddresses(await readFile(addresses), basename(addresses)) }),
    limits: {
      ...(budget === undefined ? {} : { budget }),
      ...(crewDays === undefined ? {} : { crewHoursPerWeek: crewDays * rules.crew_hours_per_day }),
      ...(weeks === undefined ? {} : { weeks }),
    },
  };
}
