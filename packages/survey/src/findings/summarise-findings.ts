/** Findings grouped for a screen. The findings themselves are all kept: nothing is dropped from the data. */
import type { Finding } from '@crownfall/geometry';

export interface FindingGroup {
  readonly code: string;
  readonly severity: Finding['severity'];
  readonly effect: Finding['effect'];
  readonly layer: string | undefined;
  /** How many findings are in the group. */
  readonly findings: number;
  /** How often the thing occurred: a finding that was told once for many counts as many. */
  readonly occurrences: number;
  /** The first ones, in the order in which they were found. */
  readonly examples: readonly Finding[];
}

const ORDER: readonly Finding['severity'][] = ['error', 'warning', 'note'];

/**
 * Groups findings of the same code, layer, severity and effect; errors first, then warnings, then notes, each in the order
 * of first occurrence.
 * @example summariseFindings(findings, 3)[0].findings // 128
 */
export function summariseFindings(findings: readonly Finding[], examples = 3): readonly FindingGroup[] {
  const groups = new Map<string, FindingGroup>();
  for (const finding of findings) {
    const { code, severity, effect, where } = finding;
    const key = [severity, effect, code, where.layer ?? ''].join(' ');
    const known = groups.get(key) ?? {
      code,
      severity,
      effect,
      layer: where.layer,
      findings: 0,
      occurrences: 0,
      examples: [],
    };
    groups.set(key, {
      ...known,
      findings: known.findings + 1,
      occurrences: known.occurrences + occurrencesOf(finding),
      examples: known.examples.length < examples ? [...known.examples, finding] : known.examples,
    });
  }
  return [...groups.values()].sort((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));
}

function occurrencesOf(finding: Finding): number {
  const { count, more } = finding.facts;
  if (typeof more === 'number') return more;
  return typeof count === 'number' ? count : 1;
}
