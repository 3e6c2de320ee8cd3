import type { Finding } from '@crownfall/geometry';

/** Gathers findings, and keeps one broken file from drowning the others. */
export interface FindingSink {
  add(finding: Finding): void;
  /** In the order found. */
  all(): Finding[];
}

/** So many findings of one code and file are told one by one; the next one stands for all further ones. */
const TOLD_EACH = 100;

/** An empty sink. The finding that stands for further ones names no feature and counts them in its fact `more`. */
export function findingSink(): FindingSink {
  const told: Finding[] = [];
  const counts = new Map<string, number>();
  const stands = new Map<string, number>();
  return {
    add(finding) {
      const key = keyOf(finding);
      const count = (counts.get(key) ?? 0) + 1;
      counts.set(key, count);
      if (count <= TOLD_EACH) told.push(finding);
      else if (count === TOLD_EACH + 1) stands.set(key, told.push(finding) - 1);
    },
    all() {
      return told.map((finding, i) => {
        const key = keyOf(finding);
        if (stands.get(key) !== i) return finding;
        const { layer, file } = finding.where;
        const where = { ...(layer === undefined ? {} : { layer }), ...(file === undefined ? {} : { file }) };
        return { ...finding, where, facts: { ...finding.facts, more: (counts.get(key) ?? 0) - TOLD_EACH } };
      });
    },
  };
}

function keyOf(finding: Finding): string {
  return `${finding.code} ${finding.where.file ?? ''}`;
}
