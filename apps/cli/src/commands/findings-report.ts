/** Findings as a person reads them: errors first, alike ones together, long runs cut short. */
import type { Finding } from '@crownfall/geometry';
import { describeFinding, summariseFindings } from '@crownfall/survey';

const SEVERITIES = ['error', 'warning', 'note'] as const;
const SHOWN_OF_EACH = 5;

/** The report as text. Example: no findings give `Town: nothing found. The data can be reckoned.` */
export function findingsReport(title: string, findings: readonly Finding[], { all }: { all: boolean }): string {
  if (findings.length === 0) return `${title}: nothing found. The data can be reckoned.`;
  const shown = all ? Number.POSITIVE_INFINITY : SHOWN_OF_EACH;
  const lines = SEVERITIES.flatMap((severity) =>
    byCode(findings.filter((finding) => finding.severity === severity)).flatMap((alike) => run(alike, shown)),
  );
  return [...lines, '', `${title}: ${summariseFindings(findings)}`].join('\n');
}

function run(alike: readonly Finding[], shown: number): string[] {
  const { severity, code } = alike[0];
  const lines = alike.slice(0, shown).map((finding) => `${severity} ${code}: ${describeFinding(finding)}`);
  const more = alike.length - lines.length;
  return more > 0 ? [...lines, `  … and ${more} more ${code}; --all prints them.`] : lines;
}

function byCode(findings: readonly Finding[]): Finding[][] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) groups.set(finding.code, [...(groups.get(finding.code) ?? []), finding]);
  return [...groups.values()];
}
