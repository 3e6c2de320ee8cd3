/** A day's visits in words, as a page, a table and JSON, in English or Spanish. */
import type { VisitedBlock, VisitedPlace, VisitReview } from '@crownfall/assessment';
import type { Ranged } from '@crownfall/stain';
import { describeFinding } from '@crownfall/survey';
import { areaText } from './quantities.ts';
import { summaryPage } from './summary-page.ts';
import { VISIT_WORDS, type VisitWords } from './visit-words.ts';

export interface VisitsReport {
  readonly review: VisitReview;
  /** Edits that wait for a decision. */
  readonly conflicts: number;
  readonly language: 'en' | 'es';
}

export function visitsText(report: VisitsReport): string {
  const { columns, rows } = tableOf(report);
  const table = rows.map((row) =>
    row
      .map((cell, k) => (cell === '' ? '' : `${columns[k]}: ${cell}`))
      .filter(Boolean)
      .join(' · '),
  );
  return [titleOf(report), '', ...sentencesOf(report), '', ...table, '', ...cautionsOf(report)].join('\n').trimEnd();
}

export function visitsPage(report: VisitsReport): string {
  const { review, language } = report;
  return summaryPage({
    language,
    title: titleOf(report),
    about: VISIT_WORDS[language].about(review.visits.length, visitorsOf(review)),
    sentences: sentencesOf(report),
    charts: [],
    table: tableOf(report),
    cautions: cautionsOf(report),
  });
}

/** One row a visit; RFC 4180. */
export function visitsCsv({ review }: VisitsReport): string {
  const head = [
    'visit_id',
    'visited_on',
    'visitor',
    'block_id',
    'tree_id',
    'did',
    'browned_pct',
    'defoliated_pct',
    'cause',
  ];
  const more = ['quadrats', 'bbch', 'bees_at_flowers', 'not_found', 'new_tree', 'seen_host', 'photos', 'note'];
  const rows = review.visits.map(({ visit, blockId, finds }) => {
    const [rating = {}] = finds.ratings.slice(-1);
    const [bloom = {}] = finds.bloom.slice(-1);
    return [
      ...[visit.visitId, visit.visitedOn, visit.visitor, blockId, visit.treeId, visit.did],
      ...[
        rating.browned_pct,
        rating.defoliated_pct,
        rating.cause,
        finds.quadrats.length,
        bloom.bbch,
        bloom.bees_at_flowers,
      ],
      ...[finds.notFound ? 'yes' : '', finds.newTree ? 'yes' : '', finds.wrongSpecies, finds.photos.length, visit.note],
    ];
  });
  return [[...head, ...more], ...rows].map((row) => `${row.map(csvField).join(',')}\r\n`).join('');
}

export function visitsJson({ review, conflicts, language }: VisitsReport): object {
  const { findings, ...rest } = review;
  return { ...rest, conflicts_open: conflicts, findings: findings.map((found) => describeFinding(found, language)) };
}

function titleOf({ review: { title, day }, language }: VisitsReport): string {
  return VISIT_WORDS[language].title(title, day);
}

function sentencesOf({ review, conflicts, language }: VisitsReport): string[] {
  const words = VISIT_WORDS[language];
  const sum = (of: (place: VisitedPlace) => number): number =>
    review.visits.reduce((total, place) => total + of(place), 0);
  const counts = words.counts({
    visits: review.visits.length,
    rated: sum(({ finds }) => finds.ratings.length),
    quadrats: sum(({ finds }) => finds.quadrats.length),
    notFound: sum(({ finds }) => (finds.notFound ? 1 : 0)),
    newTrees: sum(({ finds }) => (finds.newTree ? 1 : 0)),
    otherHost: sum(({ finds }) => (finds.wrongSpecies ? 1 : 0)),
    treated: sum(({ finds }) => (finds.treated ? 1 : 0)),
    photos: sum(({ finds }) => finds.photos.length),
  });
  const bees = review.visits.filter(({ finds }) => finds.bloom.some((row) => row.bees_at_flowers === 'yes'));
  return [
    counts,
    ...(bees.length > 0 ? [words.bees([...new Set(bees.map((place) => placeName(place)))].join(', '))] : []),
    ...(review.visits.length > 0
      ? [words.town(rangedText(review.town.before, review), rangedText(review.town.after, review))]
      : []),
    ...review.blocks.map((block) => words.block(block.name ?? block.blockId, changeOf(block, review))),
    ...(conflicts > 0 ? [words.conflicts(conflicts)] : []),
  ];
}

function changeOf({ before, after }: VisitedBlock, review: VisitReview): Parameters<VisitWords['block']>[1] {
  return {
    before: rangedText(before.stainedM2, review),
    after: rangedText(after.stainedM2, review),
    ratedBefore: before.treesRated,
    ratedAfter: after.treesRated,
    rankBefore: before.rank,
    rankAfter: after.rank,
  };
}

/** `41.7 m² (80 %: 30.2–52.1 m²)`; no range without draws. */
function rangedText({ value, range80 }: Ranged, { units }: VisitReview): string {
  const range = range80 === null ? '' : ` (80 %: ${range80.map((limit) => areaText(limit, units)).join(' – ')})`;
  return `${areaText(value, units)}${range}`;
}

function tableOf({ review, language }: VisitsReport): {
  columns: readonly string[];
  rows: readonly (readonly string[])[];
} {
  const words = VISIT_WORDS[language];
  const rows = review.visits.map((place) => [
    placeName(place),
    place.visit.visitor,
    place.visit.did,
    words.found(place.finds),
    place.visit.note ?? '',
  ]);
  return { columns: words.columns, rows };
}

function placeName({ visit, blockId }: VisitedPlace): string {
  return [blockId, visit.treeId].filter(Boolean).join(' / ') || '–';
}

function cautionsOf({ review, language }: VisitsReport): string[] {
  const told = review.findings.map((found) => {
    const { what, where, remedy } = describeFinding(found, language);
    return [where, what, remedy].filter(Boolean).join(': ');
  });
  return [...told, VISIT_WORDS[language].basis];
}

function visitorsOf({ visits }: VisitReview): string {
  return [...new Set(visits.map(({ visit }) => visit.visitor))].join(', ');
}

/** Quoted where needed; text that a spreadsheet would take for a formula gets an apostrophe before it. */
function csvField(value: unknown): string {
  const plain = value === undefined || value === null ? '' : String(value);
  const text = typeof value === 'string' && /^[=+\-@\t]/.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
