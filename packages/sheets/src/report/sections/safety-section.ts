/** What keeps people, bees and water safe: cautions, products, rotation, distances to water, whom to tell. */
import { rotationReminders, treatmentCautions } from '@crownfall/survey';
import { dayText, grouped, lengthText } from '../../quantities.ts';
import type { Part, Run } from '../content.ts';
import { waterMap } from '../maps/water-map.ts';
import { isTreated, PLAN_FILE, type PlanReading, workOf } from '../plan-reading.ts';
import { blockName } from './ranking-section.ts';

const KINDS = ['water', 'drain', 'well'] as const;
const MOST_TREES = 40;
const MOST_MAPS = 6;
const MOST_NOTICES = 80;
const MAP_MM = 84;

export function safetySection(reading: PlanReading, widthMm: number): readonly Part[] {
  const { planWords, plan, language } = reading;
  const treats = workOf(plan).some(isTreated);
  return [
    { part: 'heading', level: 2, text: planWords.safety },
    ...(treats ? [] : [{ part: 'paragraph', text: [planWords.noTreatment] } as const]),
    { part: 'notice', title: planWords.cautions, lines: treatmentCautions(language).map((line) => [line]) },
    ...productParts(reading),
    ...(treats ? [...distanceParts(reading), ...mapParts(reading, widthMm), ...noticeParts(reading)] : []),
  ];
}

/** What the user typed from labels, shown back as it stands, and where a mode of action would follow itself. */
function productParts({ planWords, plan, language }: PlanReading): readonly Part[] {
  const { products } = plan.settings;
  if (products.length === 0) return [{ part: 'paragraph', text: [planWords.noProduct] }];
  const { productColumns: columns } = planWords;
  const left = (title: string, weight: number) => ({ title, align: 'left', weight }) as const;
  const notes = rotationReminders(plan.rotation, language, (day) => dayText(day, language));
  return [
    {
      part: 'table',
      caption: planWords.products,
      columns: [
        left(columns.name, 2),
        left(columns.group, 1.4),
        left(columns.rate, 2),
        left(columns.source, 2),
        left(columns.by, 1.2),
        left(columns.entry, 1.2),
      ],
      rows: products.map(({ name, group, label_rate, label_source, typed_by, re_entry }) =>
        [name, group, label_rate, label_source, typed_by, re_entry].map((text): Run => [text || '–']),
      ),
    },
    ...(notes.length === 0 ? [] : [{ part: 'list', items: notes.map((note) => [note]) } as const]),
  ];
}

function distanceParts({ planWords, plan, units, words }: PlanReading): readonly Part[] {
  const { distanceColumns: columns } = planWords;
  const least = (tree: (typeof plan.treated)[number]) =>
    Math.min(...KINDS.map((kind) => tree.nearestM[kind] ?? Number.POSITIVE_INFINITY));
  const nearest = plan.treated.toSorted((a, b) => least(a) - least(b));
  const keep = KINDS.flatMap((kind) => {
    const distanceM = plan.settings.keep_off_m[kind];
    return distanceM === null ? [] : [`${planWords.kinds[kind]} ${lengthText(distanceM, units)}`];
  });
  const more = nearest.length - MOST_TREES;
  const note = planWords.distancesNote(keep.join(', ') || words.settings.none);
  return [
    {
      part: 'table',
      caption: planWords.distances,
      columns: [
        { title: columns.tree, align: 'left', weight: 2 },
        { title: columns.block, align: 'left', weight: 2 },
        ...KINDS.map((kind) => ({ title: columns[kind], align: 'right', weight: 1.2 }) as const),
      ],
      rows: nearest.slice(0, MOST_TREES).map(({ treeId, blockId, nearestM }) => [
        [treeId],
        [blockId],
        ...KINDS.map((kind): Run => {
          const distanceM = nearestM[kind];
          if (distanceM === undefined) return ['–'];
          const from = [{ file: PLAN_FILE, row: treeId, column: `treated.nearest_m.${kind}` }];
          return [{ figure: lengthText(distanceM, units), from }];
        }),
      ]),
      note: [more > 0 ? `${note} ${planWords.moreTrees(grouped(more))}` : note],
    },
  ];
}

function mapParts(reading: PlanReading, widthMm: number): readonly Part[] {
  const blocks = workOf(reading.plan).filter(isTreated).slice(0, MOST_MAPS);
  return blocks.flatMap((block): readonly Part[] => {
    const drawing = waterMap(reading, block.blockId, { widthMm, heightMm: MAP_MM });
    return drawing === null
      ? []
      : [{ part: 'picture', drawing, caption: reading.planWords.waterMap(blockName(block)) }];
  });
}

function noticeParts({ planWords, plan, units }: PlanReading): readonly Part[] {
  const { noticeColumns: columns } = planWords;
  const reachM = plan.settings.notice_m;
  if (plan.notices.length === 0 || reachM === null) return [{ part: 'paragraph', text: [planWords.noNotices] }];
  return [
    {
      part: 'table',
      caption: planWords.notices,
      columns: [
        { title: columns.block, align: 'left', weight: 1 },
        { title: columns.address, align: 'left', weight: 4 },
        { title: columns.distance, align: 'right', weight: 2 },
      ],
      rows: plan.notices.slice(0, MOST_NOTICES).map(({ blockId, address, distanceM }) => [
        [blockId],
        [address],
        [
          {
            figure: lengthText(distanceM, units),
            from: [{ file: 'notices.csv', row: `${blockId} ${address}`, column: 'distance_m' }],
          },
        ],
      ]),
      note: [planWords.noticeNote(lengthText(reachM, units))],
    },
  ];
}
