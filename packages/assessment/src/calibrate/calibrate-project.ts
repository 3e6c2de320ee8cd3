/** Calibration of a project: its quadrats, the crowns above them, and the coefficient that fits both. */
import { crownOutline, equalAreaPlane, type Finding, type LocalPlane, type Region } from '@crownfall/geometry';
import { type CalibrationOutcome, calibrate, layerShares, type QuadratDose } from '@crownfall/stain';
import {
  asOfDay,
  type ProjectInput,
  type Quadrat,
  readSurvey,
  type Settings,
  type Survey,
  severityOfTrees,
} from '@crownfall/survey';
import type { Stopped } from '../assess.ts';
import { allPositions } from '../ground/all-positions.ts';
import { drawnArea } from '../ground/drawn-area.ts';
import { placeBlocks } from '../ground/place-blocks.ts';
import { placeCrowns, zonesOf } from '../ground/place-crowns.ts';
import { placePavement } from '../ground/place-pavement.ts';
import { noProgress, type Progress } from '../progress.ts';
import { RegionLookup } from '../region-lookup.ts';
import { type PlacedQuadrat, quadratReader } from './quadrat-doses.ts';

/** Why a quadrat tells nothing of k. */
export type QuadratLeftOut =
  | { readonly quadratId: string; readonly because: 'other-season' | 'after-as-of' | 'no-area' }
  /** A crown above it may have a dose, but nobody rated it. */
  | { readonly quadratId: string; readonly because: 'unrated-above'; readonly treeId: string };

/** A calibration with what it rests on. */
export interface ProjectCalibration extends CalibrationOutcome {
  readonly title: string;
  readonly season: number;
  readonly asOf: string;
  readonly quadratsRead: number;
  readonly leftOut: readonly QuadratLeftOut[];
  readonly settings: Settings;
  readonly findings: readonly Finding[];
}

/**
 * Fits the dose coefficient to the season's quadrats measured up to the day of the figures. A quadrat drawn as an area is
 * that area, a point is a disc of its `area_m2` (the shape matters only across a drip line). Severities are those of the same
 * day. Pure; the same input gives the same figures.
 */
export function calibrateProject(
  input: ProjectInput,
  { progress = noProgress, confidence = 0.95 }: { readonly progress?: Progress; readonly confidence?: number } = {},
): ProjectCalibration | Stopped {
  progress('survey', 0, 1);
  const { survey, settings, findings } = readSurvey(input);
  if (findings.some(({ effect }) => effect === 'stops')) return { stopped: true, findings };
  const asOf = asOfDay(survey, settings);
  const leftOut: QuadratLeftOut[] = [];
  const doses: QuadratDose[] = [];
  const { place, read } = underCrowns({ survey, settings, asOf, progress });
  for (const quadrat of survey.quadrats) {
    const { quadratId, measuredOn } = quadrat;
    if (!measuredOn.startsWith(`${survey.season}-`)) leftOut.push({ quadratId, because: 'other-season' });
    else if (measuredOn > asOf) leftOut.push({ quadratId, because: 'after-as-of' });
    else {
      const placed = place(quadrat);
      const reading = placed && read(placed);
      if (!reading) leftOut.push({ quadratId, because: 'no-area' });
      else if ('unratedAbove' in reading) {
        leftOut.push({ quadratId, because: 'unrated-above', treeId: reading.unratedAbove });
      } else doses.push(reading.dose);
    }
  }
  return {
    ...calibrate(doses, confidence),
    title: survey.title,
    season: survey.season,
    asOf,
    quadratsRead: survey.quadrats.length,
    leftOut,
    settings,
    findings,
  };
}

interface Work {
  readonly survey: Survey;
  readonly settings: Settings;
  readonly asOf: string;
  readonly progress: Progress;
}

function underCrowns({ survey, settings, asOf, progress }: Work) {
  const plane = equalAreaPlane(allPositions(survey));
  const { crowns } = placeCrowns(survey.trees, plane, settings, progress);
  const pavement = placePavement(survey.pavement, plane, settings, progress);
  const blocks = placeBlocks(survey, pavement.regions, plane, settings);
  const lookup = new RegionLookup(blocks.regions);
  const { trees } = severityOfTrees(survey, settings, asOf);
  const position = new Map(survey.trees.map((tree, index) => [tree, index]));
  const read = quadratReader({
    zones: zonesOf(crowns, settings),
    severities: crowns.map(({ tree }) => trees[position.get(tree) as number]),
    layerShare: layerShares(settings),
  });
  const place = (quadrat: Quadrat): PlacedQuadrat | null => {
    const region = regionOf(quadrat, plane, settings.chord_tolerance_m);
    if (region.length === 0) return null;
    const [x, y] = plane.forward([quadrat.at.lon, quadrat.at.lat]);
    const block = lookup.holding(x, y);
    return { quadrat, region, block: block < 0 ? null : blocks.blocks[block].blockId };
  };
  return { place, read };
}

function regionOf({ quadratId, at, polygons, areaM2 }: Quadrat, plane: LocalPlane, chordToleranceM: number): Region {
  if (polygons) return drawnArea(polygons, plane, { layer: 'quadrats', feature: quadratId }).region;
  const [x, y] = plane.forward([at.lon, at.lat]);
  return crownOutline({ from: 'spread', x, y, spreadM: 2 * Math.sqrt(areaM2 / Math.PI) }, { chordToleranceM }).region;
}
