/** What each property of the collections means, with its unit: for the programs and people that read them live. */
import { CAUSES, PAVEMENT_KINDS, SURFACES } from '@crownfall/survey';
import type { CollectionName } from '../figures/figures.ts';

interface FieldNote {
  readonly title: string;
  readonly description: string;
  readonly type: 'string' | 'number' | 'integer' | 'boolean' | 'object';
  /** As written after a figure; absent for what has none. */
  readonly unit?: string;
  /** The values it may have. */
  readonly words?: readonly string[];
  /** False where a value may be missing (null). */
  readonly always?: false;
}

export interface CollectionNote {
  readonly title: string;
  readonly description: string;
  readonly geometry: string;
  readonly fields: Readonly<Record<string, FieldNote>>;
}

const area = (title: string, description: string): FieldNote => ({ title, description, type: 'number', unit: 'm²' });
const text = (title: string, description: string): FieldNote => ({ title, description, type: 'string' });
const count = (title: string, description: string): FieldNote => ({ title, description, type: 'integer' });
const share = (title: string, description: string): FieldNote => ({ title, description, type: 'number', unit: '1' });
const percent = (title: string, description: string): FieldNote => ({ title, description, type: 'number', unit: '%' });
const oneOf = (title: string, description: string, words: readonly string[]): FieldNote => ({
  ...text(title, description),
  words,
});
const orNull = (note: FieldNote): FieldNote => ({ ...note, always: false });

const DRIPLINE = area(
  'Pavement under crowns',
  'Pavement below the drip lines of crowns; where crowns overlap it counts once.',
);
const FALLOUT = area(
  'Pavement in fallout zones',
  'Pavement that matter falling from crowns can reach; overlaps count once.',
);
const STAINED = area('Stained area', 'Pavement area expected to show stain.');
const BLOCK = orNull(text('Block', 'Id of the block; null outside every block.'));

const range = (end: string, level: number): FieldNote =>
  orNull(area(`Stained area, ${end} end of ${level} %`, `The ${end} end of the ${level} % range; null without draws.`));

/** The ranges of a stained area. */
const RANGES = {
  stained_lo80_m2: range('lower', 80),
  stained_hi80_m2: range('upper', 80),
  stained_lo95_m2: range('lower', 95),
  stained_hi95_m2: range('upper', 95),
};

const crowns: CollectionNote = {
  title: 'Crowns',
  description: 'Tree crowns with their severity, their cause and the stained pavement attributed to each.',
  geometry: 'Outline of the crown on the ground',
  fields: {
    tree_id: text('Tree', 'Id of the tree, unique in the project.'),
    host: orNull(text('Host', 'Scientific name.')),
    block_id: BLOCK,
    crown_m2: area('Crown projection area', 'Area of the crown’s outline on the ground.'),
    spread_m: { title: 'Crown spread', description: 'Mean crown diameter.', type: 'number', unit: 'm' },
    severity_pct: orNull(percent('Severity', 'Share of the crown affected; null when nothing is known.')),
    severity_from: oneOf('Source of severity', 'Its own rating, its group’s mean, or none.', [
      'rating',
      'group',
      'none',
    ]),
    cause: oneOf('Cause', 'What falls from the crown.', CAUSES),
    dose: share('Stain dose', 'Expected amount landing per point under the crown, dimensionless.'),
    dripline_m2: area(
      'Pavement under the crown',
      'Pavement below this crown’s drip line, overlaps with others not removed.',
    ),
    fallout_m2: area(
      'Pavement in the fallout zone',
      'Pavement in this crown’s fallout zone, overlaps with others not removed.',
    ),
    stained_m2: area(
      'Stained area attributed',
      'Stained pavement attributed to this crown; crowns sum to their total.',
    ),
    ...RANGES,
    rated_on: orNull({ ...text('Rated on', 'Day of the newest rating (ISO 8601); the feature’s time.') }),
  },
};

const pavement: CollectionNote = {
  title: 'Pavement',
  description: 'Pieces of pavement with their area under crowns, in fallout zones and stained.',
  geometry: 'Outline of the piece',
  fields: {
    pavement_id: text('Piece', 'Id of the piece of pavement, unique in the project.'),
    kind: oneOf('Kind', 'What it is.', PAVEMENT_KINDS),
    surface: oneOf('Surface', 'What it is made of.', SURFACES),
    block_id: BLOCK,
    area_m2: area('Area', 'Area of the piece.'),
    dripline_m2: DRIPLINE,
    fallout_m2: FALLOUT,
    stained_m2: STAINED,
    stained_pct: orNull(percent('Stained share', 'Stained area over the area of the piece.')),
  },
};

const blocks: CollectionNote = {
  title: 'Blocks',
  description: 'Blocks in rank order with their pavement, stained area, ranges and the parts of their score.',
  geometry: 'Outline of the block',
  fields: {
    block_id: text('Block', 'Id of the block, unique in the project.'),
    name: orNull(text('Name', 'What people call it.')),
    rank: count('Rank', '1 is first.'),
    score: share('Score', 'Weighted sum of the criteria, 0 to 1.'),
    score_parts: {
      title: 'Parts of the score',
      description: 'Amount, value, weight and points by criterion.',
      type: 'object',
    },
    pavement_m2: area('Pavement', 'Pavement area in the block.'),
    dripline_m2: DRIPLINE,
    fallout_m2: FALLOUT,
    stained_m2: STAINED,
    ...RANGES,
    top_share: orNull(
      share('Share of draws at the top', 'How often the block is among the first; null without draws.'),
    ),
    trees: count('Trees', 'Trees whose trunk stands in the block.'),
    trees_rated: count('Trees rated', 'Those of them with a rating that counts.'),
    worst_severity_pct: orNull(percent('Worst severity', 'Greatest share of a crown affected in the block.')),
    complaints_open: count('Open complaints', 'Complaints still waiting for an answer.'),
    bloom_state: oneOf('Bloom window', 'Where the block’s flowering stands.', [
      'before',
      'open',
      'closing',
      'closed',
      'unknown',
    ]),
    calibrated: { title: 'Calibrated', description: 'Whether the dose was fitted to measured plots.', type: 'boolean' },
  },
};

/** Titles, descriptions and units by collection. Fields of the inventory beyond these pass through unchanged. */
export const COLLECTION_NOTES: Readonly<Record<CollectionName, CollectionNote>> = { crowns, pavement, blocks };

/** The properties of a collection as JSON Schema, the unit in words and as `x-unit`. */
export function propertySchemas(name: CollectionName): Record<string, object> {
  return Object.fromEntries(
    Object.entries(COLLECTION_NOTES[name].fields).map(([key, note]) => [key, fieldSchema(note)]),
  );
}

function fieldSchema({ title, description, type, unit, words, always }: FieldNote): object {
  const inUnits = unit === undefined || unit === '1' ? description : `${description} Unit: ${unit}.`;
  return {
    title,
    description: inUnits,
    type,
    ...(always === false ? { nullable: true } : {}),
    ...(words === undefined ? {} : { enum: words }),
    ...(unit === undefined ? {} : { 'x-unit': unit }),
  };
}
