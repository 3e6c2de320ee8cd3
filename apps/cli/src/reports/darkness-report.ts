/** Pavement darkness as a table in words, and as JSON. */
import type { Finding } from '@crownfall/geometry';
import type { SurfaceDarkness } from '../jobs/imagery/darkness-of-image.ts';
import { type Column, layOut } from '../terminal/table.ts';
import { findingsReport } from './findings-report.ts';
import { areaText, grouped, percentText } from './quantities.ts';

export interface ImageDarkness {
  readonly image: string;
  readonly surfaces: readonly SurfaceDarkness[];
}

export interface DarknessTold {
  readonly project: string;
  readonly units: 'metric' | 'us';
  readonly images: readonly ImageDarkness[];
  readonly findings: readonly Finding[];
}

const WIDTH = 120;

const COLUMNS: readonly Column[] = [
  { title: 'pavement', align: 'left' },
  { title: 'in the fallout', align: 'right' },
  { title: 'in view', align: 'right' },
  { title: 'of it lit', align: 'right' },
  { title: 'L* away', align: 'right' },
  { title: 'L* there', align: 'right' },
  { title: 'ΔE00', align: 'right' },
  { title: 'darker', align: 'right' },
  { title: '', align: 'left' },
];

const WHY: Readonly<Record<NonNullable<SurfaceDarkness['because']>, string>> = {
  'too-few-pixels': 'too few lit pixels',
  'shade-not-told': 'shade cannot be told',
};

export function darknessReport({ project, units, images, findings }: DarknessTold): string {
  const lines = findings.length > 0 ? [findingsReport(project, findings, { all: false }), ''] : [];
  if (images.length === 0)
    lines.push('No image could be looked at. Name one under "imagery" in project.json, or with --image.');
  for (const { image, surfaces } of images) {
    if (surfaces.length === 0) lines.push(`${image}: no pavement in a fallout zone lies in it.`);
    else
      lines.push(
        image,
        ...layOut(
          COLUMNS,
          surfaces.map((surface) => row(surface, units)),
          WIDTH,
        ),
      );
    lines.push('');
  }
  if (images.length > 0) lines.push(...NOTES);
  return lines.join('\n').trimEnd();
}

/** Shares as numbers 0–1, areas in square metres. */
export function darknessJson({ images, findings }: DarknessTold): string {
  const told = images.map(({ image, surfaces }) => ({ image, surfaces: surfaces.map(record) }));
  return JSON.stringify({ images: told, findings }, null, 2);
}

const NOTES: readonly string[] = [
  'In the fallout: pavement below crowns and their drift. In view: the part that no crown hides; the rest is not judged.',
  'L* (CIELAB, 0 black to 100 white) and the colour difference ΔE00 (CIEDE2000) are of lit pixels, against the same surface',
  'away from crowns. Darker: share of the lit pixels darker than that surface scatters. It says dark, not why: wet patches,',
  'oil and tyre marks count too. A dash: fewer than 40 lit pixels there or away, or shade that is not bluer than light.',
];

function row({ kind, surface, zoneM2, visibleM2, judged, because }: SurfaceDarkness, units: 'metric' | 'us'): string[] {
  const first = [`${kind}, ${surface}`, areaText(zoneM2, units), percentText(visibleM2 / zoneM2)];
  if (judged === null) return [...first, '–', '–', '–', '–', '–', because === null ? '' : WHY[because]];
  const { litShare, awayL, zoneL, difference, darkShare } = judged;
  const figures = [awayL, zoneL, difference].map((value) => grouped(value, 1));
  return [...first, percentText(litShare), ...figures, percentText(darkShare), ''];
}

function record({ kind, surface, zoneM2, visibleM2, judged, because }: SurfaceDarkness): object {
  return {
    kind,
    surface,
    zone_m2: fixed(zoneM2, 2),
    visible_share: fixed(visibleM2 / zoneM2, 4),
    ...(judged === null
      ? { because }
      : {
          lit_share: fixed(judged.litShare, 4),
          lit_pixels: Math.round(judged.litPixels),
          lightness_away: fixed(judged.awayL, 2),
          lightness: fixed(judged.zoneL, 2),
          lightness_drop: fixed(judged.awayL - judged.zoneL, 2),
          colour_difference: fixed(judged.difference, 2),
          dark_share: fixed(judged.darkShare, 4),
        }),
  };
}

const fixed = (value: number, decimals: number): number => Number(value.toFixed(decimals));
