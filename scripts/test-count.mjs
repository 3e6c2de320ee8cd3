/**
 * Prints `N passed, N failed` (and `, N skipped`) from vitest's JSON report. A test file that could not run at all counts as
 * one failure; no report, or a report without tests, is a failure too.
 */
import { readFileSync } from 'node:fs';

const report = readReport(process.argv[2]);
const outcomes = report.testResults.flatMap((file) => file.assertionResults.map((test) => test.status));
const count = (...statuses) => outcomes.filter((status) => statuses.includes(status)).length;
const brokenFiles = report.testResults.filter(
  (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
).length;
const passed = count('passed');
const failed = count('failed') + brokenFiles;
const skipped = count('skipped', 'pending', 'todo', 'disabled');
console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;

function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    console.error(`The test report could not be read: ${error.message}`);
    console.log('0 passed, 1 failed');
    process.exit(1);
  }
}
