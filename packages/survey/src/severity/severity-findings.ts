/** What a person should know about how the severities came about. */
import type { Finding } from '@crownfall/geometry';
import { finding } from '../findings/finding-codes.ts';
import type { SeverityGroup, TreeSeverity } from './tree-severity.ts';
import { type VisitGate, voteText } from './visit-gate.ts';

/** Findings about disputed diagnoses, and about hosts of which no tree has a figure. */
export function severityFindings(
  gateAt: (tree: number) => VisitGate | undefined,
  groups: ReadonlyMap<string, SeverityGroup>,
  trees: readonly TreeSeverity[],
): Finding[] {
  const findings: Finding[] = [];
  const without = new Map<string, number>();
  trees.forEach(({ treeId, from, group }, tree) => {
    if (from === 'none') without.set(group, (without.get(group) ?? 0) + 1);
    const gate = gateAt(tree);
    if (gate?.dispute === undefined) return;
    const facts = { raters: gate.dispute, taken: voteText(gate.cause, gate.open) };
    findings.push(finding('raters-disagree', 'note/assumed', { layer: 'ratings', feature: treeId }, facts));
  });
  for (const [key, group] of groups) {
    const count = without.get(key);
    if (count === undefined) continue;
    const facts = { host: group.host ?? undefined, count };
    findings.push(finding('host-without-ratings', 'warning/left_out', { layer: 'ratings' }, facts));
  }
  return findings;
}
