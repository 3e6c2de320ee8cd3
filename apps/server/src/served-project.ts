/** A reckoned project as the bodies that the server sends: made once, held as text. */
import type { Assessment } from '@crownfall/assessment';
import { describeFinding } from '@crownfall/survey';
import { boundsOf } from './bounds.ts';
import { driftLayer } from './drift-layer.ts';
import { resultLayers } from './layers.ts';

export const LAYER_NAMES = ['blocks', 'pavement', 'trees', 'drift'] as const;
export type LayerName = (typeof LAYER_NAMES)[number];

export interface ServedProject {
  readonly title: string;
  /** Figures, score parts and findings, without outlines. */
  readonly assessment: string;
  readonly layers: Readonly<Record<LayerName, string>>;
}

export function servedProject(assessment: Assessment): ServedProject {
  return {
    title: assessment.title,
    assessment: JSON.stringify(figuresOf(assessment)),
    layers: { ...resultLayers(assessment), drift: driftLayer(assessment) },
  };
}

function figuresOf(assessment: Assessment): unknown {
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
    findings: assessment.findings.map((finding) => ({
      code: finding.code,
      severity: finding.severity,
      words: describeFinding(finding),
    })),
    bounds: boundsOf(assessment),
  };
}
