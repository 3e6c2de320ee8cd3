/** Findings as a person reads them: errors first, alike ones together, long runs cut short. */
import type { Finding } from '@crownfall/geometry';
import { describeFinding, type FindingGroup, summariseFindings } from '@crownfall/survey';

const SHOWN_OF_EACH = 5;
const SEVERITIES = ['error', 'warning', 'note'] as const;

/** The report as text: a heading with the counts, then each kind of finding: what it did, where, what to do. */
export function findingsReport(title: string, findings: readonly Finding[], { all }: { all: boolean }): string {
  const groups = summariseFindings(findings, all ? findings.length : SHOWN_OF_EACH);
  return [`${title}: ${countFindings(findings)}`, ...groups.map(groupText)].join('\n\n');
}

/** `2 errors, 1 warning and 5 notes about the data`. */
export function countFindings(findings: readonly Finding[]): string {
  const counts = SEVERITIES.flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  if (counts.length === 0) return 'nothing found in the data that a person should know.';
  const last = counts.pop();
  return `${counts.length === 0 ? last : `${counts.join(', ')} and ${last}`} about the data.`;
}

function groupText({ code, severity, findings, examples }: FindingGroup): string {
  const words = examples.map((finding) => describeFinding(finding, 'en'));
  const { effect, remedy } = words[0];
  const sameRemedy = words.every((each) => each.remedy === remedy);
  const lines = words.map((each) => `  ${each.where}: ${each.what}.${sameRemedy ? '' : ` ${each.remedy}`}`);
  const more = findings - examples.length;
  return [
    `${severity.toUpperCase()} ${code}${findings > 1 ? ` (${findings})` : ''}. ${effect}`,
    ...lines,
    ...(more > 0 ? [`  … and ${more} more like these; crownfall check --all prints them.`] : []),
    ...(sameRemedy ? [`  What to do: ${remedy}`] : []),
  ].join('\n');
}
