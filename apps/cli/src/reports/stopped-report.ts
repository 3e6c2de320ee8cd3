/** What a command says when errors in the data stop it before it begins. */
import type { Finding } from '@crownfall/geometry';
import { EXIT } from '../terminal/failure.ts';
import { findingsReport } from './findings-report.ts';

/** Prints the findings, as JSON on stdout when wanted, and answers the exit code. */
export function reportStopped(title: string, findings: readonly Finding[], { json }: { readonly json?: true }): number {
  if (json) process.stdout.write(`${JSON.stringify({ title, stopped: true, findings }, null, 2)}\n`);
  process.stderr.write(`${findingsReport(title, findings, { all: false })}\n`);
  process.stderr.write('\nNothing was reckoned. Earlier results, if any, are untouched.\n');
  return EXIT.dataStops;
}
