/** Reads and reckons a project, telling the progress; the part that `check` and `reckon` share. */
import { type Assessment, assess } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import type { Finding } from '@crownfall/geometry';
import type { Progress } from '../terminal/progress.ts';

export async function reckonedProject(path: string, progress: Progress): Promise<Assessment> {
  progress.stage(`Reading ${path}`, 0.05);
  const input = await readProject(path);
  progress.stage('Reckoning stained pavement', 0.35);
  return assess(input);
}

/** Findings that keep the job from being done; with one of these no figures are printed or written. */
export function stopping(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter((finding) => finding.effect === 'stops');
}
