/** A reckoned project as the bodies that the server sends: made once, held as text. */
import type { Assessment } from '@crownfall/assessment';
import { describeFinding, type FindingGroup, summariseFindings } from '@crownfall/survey';
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

/** Of each kind of finding; the file findings.json holds all of them. */
const SHOWN_OF_EACH = 20;

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
    findings: summariseFindings(assessment.findings, SHOWN_OF_EACH).map(spokenGroup),
    bounds: boundsOf(assessment),
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
