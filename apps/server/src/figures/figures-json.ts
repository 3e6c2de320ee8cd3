/** Figures, score parts and findings as the viewer reads them, without outlines. */
import type { Assessment } from '@crownfall/assessment';
import { describeFinding, type FindingGroup, summariseFindings } from '@crownfall/survey';
import type { Bounds } from './bounds.ts';

/** Of each kind of finding; the file findings.json holds all of them. */
const SHOWN_OF_EACH = 20;

export function figuresOf(assessment: Assessment, bounds: Bounds | null): object {
  const { title, season, units, total, run, trees } = assessment;
  return {
    title,
    season,
    units,
    total,
    run,
    trees: trees.length,
    treesRated: trees.filter((tree) => tree.severityFrom === 'rating').length,
    blocks: assessment.blocks.map(({ geometry, extra, ...figures }) => figures),
    findings: summariseFindings(assessment.findings, SHOWN_OF_EACH).map(spokenGroup),
    bounds,
  };
}

function spokenGroup({ code, severity, findings, examples }: FindingGroup): unknown {
  const words = examples.map((finding) => describeFinding(finding, 'en'));
  return {
    code,
    severity,
    findings,
    effect: words[0].effect,
    examples: words.map(({ where, what, remedy }) => ({ where, what, remedy })),
  };
}
