/** Fits the dose coefficient, prints what it rests on, keeps it beside the project. */
import { basename, dirname } from 'node:path';
import { calibrateProject, isStopped, type ProjectCalibration } from '@crownfall/assessment';
import { CALIBRATION_FILE, calibrationText } from '@crownfall/exchange';
import { projectFolder, readProject, storedName, writeFiles } from '@crownfall/exchange/node';
import { calibrationChart } from '../reports/calibration-chart.ts';
import { calibrationJson, calibrationReport } from '../reports/calibration-report.ts';
import { reportStopped } from '../reports/stopped-report.ts';
import { EXIT } from '../terminal/failure.ts';
import { progressOn } from '../terminal/progress.ts';
import type { CommonOptions } from './job-options.ts';

export interface CalibrateOptions extends CommonOptions {
  readonly dryRun?: true;
  readonly chart?: string;
}

export async function calibrate(project: string, options: CalibrateOptions): Promise<number> {
  const progress = progressOn(process.stderr, options.quiet === true);
  progress.stage(`Reading ${project}`, 0);
  const input = await readProject(project).finally(progress.end);
  progress.stage('Laying quadrats under their crowns', 0.5);
  const outcome = calibrateProject(input);
  progress.end();
  if (isStopped(outcome)) return reportStopped(input.title || project, outcome.findings, options);
  const kept = outcome.calibration !== null && !options.dryRun;
  if (kept) {
    await writeFiles(await projectFolder(project), [
      { name: storedName(project, CALIBRATION_FILE), text: [calibrationText(outcome, input)] },
    ]);
  }
  if (outcome.calibration !== null && options.chart !== undefined) await drawChart(options.chart, outcome);
  const report = options.json
    ? JSON.stringify(calibrationJson(outcome, kept), null, 2)
    : calibrationReport(outcome, {
        kept: kept ? storedName(project, CALIBRATION_FILE) : null,
        overridden: input.settings.dose_coefficient !== undefined && input.settings.calibrated !== true,
      });
  process.stdout.write(`${report}\n`);
  return outcome.calibration === null ? EXIT.dataStops : EXIT.done;
}

async function drawChart(path: string, outcome: ProjectCalibration): Promise<void> {
  await writeFiles(dirname(path), [{ name: basename(path), text: [calibrationChart(outcome)] }]);
}
