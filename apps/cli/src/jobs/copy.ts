/** Copies a project from one store to another. */
import { userInfo } from 'node:os';
import type { ProjectStore } from '@crownfall/exchange';
import { createProjectStore, openProjectStore } from '@crownfall/exchange/node';
import { copyProject, openPostgisStore } from '@crownfall/exchange/postgis';
import type { Finding } from '@crownfall/geometry';
import { findingsReport } from '../reports/findings-report.ts';
import { EXIT } from '../terminal/failure.ts';
import type { CommonOptions } from './job-options.ts';

export type CopyOptions = CommonOptions;

export async function copy(from: string, to: string, { json }: CopyOptions): Promise<number> {
  const source = await sourceStore(from);
  if ('findings' in source) {
    process.stderr.write(`${findingsReport(from, source.findings, { all: false })}\n`);
    return EXIT.dataStops;
  }
  try {
    const target = isDatabase(to) ? await databaseStore(to) : await createProjectStore(to);
    try {
      const writer = { author: userInfo().username, at: new Date().toISOString() };
      const report = await copyProject(source.store, target, writer);
      process.stdout.write(json ? `${JSON.stringify(report, null, 2)}\n` : inWords(report));
    } finally {
      await target.close();
    }
  } finally {
    await source.store.close();
  }
  return EXIT.done;
}

const isDatabase = (place: string): boolean => /^postgres(ql)?:\/\//i.test(place);

async function sourceStore(from: string): Promise<{ store: ProjectStore } | { findings: readonly Finding[] }> {
  const options = { readOnly: true };
  const { store, findings } = isDatabase(from)
    ? await openPostgisStore(from, options)
    : await openProjectStore(from, options);
  return store === null ? { findings } : { store };
}

async function databaseStore(to: string): Promise<ProjectStore> {
  const { store } = await openPostgisStore(to);
  if (store === null) throw new Error('the database gave no store');
  return store;
}

function inWords({ layers, visits }: { layers: Readonly<Record<string, number>>; visits: number }): string {
  const counts = Object.entries({ ...layers, visits }).map(([name, count]) => `${name} ${count}`);
  return `Copied: ${counts.join(', ')}.\n`;
}
