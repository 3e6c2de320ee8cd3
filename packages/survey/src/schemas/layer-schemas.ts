/**
 * The properties of every layer as JSON Schema (2020-12), built with TypeBox: published for the server and the docs, and
 * the one place where the checks take their words, units and limits from. Fields beyond these are allowed and pass through.
 */
import { Type } from 'typebox';
import type { LayerName } from '../project-input.ts';
import { CAUSES, CONFIDENCES, FOOT_TRAFFIC, GALL_LOADS, PAVEMENT_KINDS, SURFACES } from '../records.ts';
import { count, day, measure, text, word } from './fields.ts';

const YES_NO_UNKNOWN = ['yes', 'no', 'unknown'] as const;
const PERCENT = { minimum: 0, maximum: 100 };
const LENGTH = { exclusiveMinimum: 0 };

const crowns = Type.Object(
  {
    tree_id: text('The tree, unique; made up from the outline when absent.'),
    host: text('Scientific name.'),
    cultivar: text('Cultivar.'),
    height_m: measure('m', 'Height of the tree.', { exclusiveMinimum: 0, maximum: 130 }),
    spread_m: measure('m', 'Mean crown spread, for a point.', LENGTH),
    spread_a_m: measure('m', 'First of two diameters at right angles, for a point.', LENGTH),
    spread_b_m: measure('m', 'Second of two diameters at right angles.', LENGTH),
    bearing_deg: measure('°', 'Bearing of spread_a_m, clockwise from north.', { minimum: -360, maximum: 360 }),
    radii_m: Type.Optional(
      Type.Union([Type.Array(Type.Number({ minimum: 0 }), { minItems: 3 }), Type.String()], {
        description: 'Radii from the trunk at equal steps clockwise from north; as text separated by semicolons.',
        'x-unit': 'm',
      }),
    ),
    outlined_by: text('Who drew or measured the crown.'),
    outlined_on: day('When it was drawn or measured.'),
    outline_sd_m: measure('m', 'Standard deviation of the outline.', { minimum: 0, maximum: 20 }),
  },
  { $id: 'crowns', description: 'Area; or point with spread_m, spread_a_m + spread_b_m, or radii_m.' },
);

const pavement = Type.Object(
  {
    pavement_id: text('The piece, unique; made up from its geometry when absent.'),
    kind: word(PAVEMENT_KINDS, 'What it is.'),
    surface: word(SURFACES, 'What it is made of.'),
    foot_traffic: word(FOOT_TRAFFIC, 'How much it is walked on.'),
    width_m: measure('m', 'Width of a piece drawn as a line.', { exclusiveMinimum: 0, maximum: 200 }),
  },
  { $id: 'pavement', description: 'Area; or line with width_m.' },
);

const blocks = Type.Object(
  { block_id: text('The block, unique.'), name: text('What people call it.') },
  { $id: 'blocks', description: 'Area.' },
);

const ratings = Type.Object(
  {
    tree_id: Type.String({ description: 'The tree rated.' }),
    rated_on: Type.String({ format: 'date', description: 'Day of the rating.' }),
    rater: text('Who rated.'),
    browned_pct: measure('%', 'Share of the crown browned.', PERCENT),
    defoliated_pct: measure('%', 'Share of the crown defoliated.', PERCENT),
    gall_load: word(GALL_LOADS, 'Galls on the flowers.'),
    cause: word(CAUSES, 'What falls from the crown.'),
    evidence: text('What was seen that speaks for the cause.'),
    confidence: word(CONFIDENCES, 'How sure the rater was.'),
    scale: text('Name of a class scale, when class is given instead of browned_pct.'),
    class: text('Class on that scale.'),
    note: text('Anything else.'),
    confirmed_by: text('Who looked at a suggestion from imagery and stands by it; without a name it does not count.'),
  },
  { $id: 'ratings', description: 'Table.' },
);

const quadrats = Type.Object(
  {
    quadrat_id: text('The plot.'),
    area_m2: measure('m²', 'Area of the plot.', { exclusiveMinimum: 0, maximum: 10_000 }),
    stained_pct: measure('%', 'Share of the plot stained.', PERCENT),
    measured_on: Type.String({ format: 'date', description: 'Day of the measurement.' }),
    by: text('Who measured.'),
    lon: measure('°', 'Longitude, in a table.', { minimum: -180, maximum: 180 }),
    lat: measure('°', 'Latitude, in a table.', { minimum: -90, maximum: 90 }),
  },
  { $id: 'quadrats', description: 'Table with lon and lat; point; or area.' },
);

const complaints = Type.Object(
  {
    complaint_id: text('The complaint.'),
    received_on: day('When it came in.'),
    about: word(['staining', 'larvae', 'litter', 'other'], 'What it is about.'),
    state: word(['open', 'closed'], 'Whether it still waits for an answer.'),
  },
  { $id: 'complaints', description: 'Point.' },
);

const bloom = Type.Object(
  {
    tree_id: text('The tree observed.'),
    block_id: text('Or the block observed.'),
    observed_on: Type.String({ format: 'date', description: 'Day of the observation.' }),
    bbch: count('BBCH growth stage; 60–69 is flowering.', { minimum: 0, maximum: 99 }),
    larvae_in_galls: word(YES_NO_UNKNOWN, 'Larvae seen inside galls.'),
    bees_at_flowers: word(YES_NO_UNKNOWN, 'Bees seen at the flowers.'),
  },
  { $id: 'bloom', description: 'Table.' },
);

const sites = Type.Object(
  {
    site_id: text('The site.'),
    kind: word(['school', 'clinic', 'transit', 'outdoor_dining', 'other'], 'What it is.'),
  },
  { $id: 'sites', description: 'Point or area.' },
);

const water = Type.Object(
  { kind: word(['water', 'drain', 'well'], 'What it is.') },
  { $id: 'water', description: 'Point, line or area.' },
);

const streets = Type.Object({ name: text('Name of the street.') }, { $id: 'streets', description: 'Line.' });

/**
 * JSON Schemas of the properties of every layer.
 * @example Object.keys(schemas.blocks.properties) // ['block_id', 'name']
 */
export const schemas = {
  crowns,
  pavement,
  blocks,
  ratings,
  quadrats,
  complaints,
  bloom,
  water,
  sites,
  streets,
} as const satisfies Record<LayerName, unknown>;

export type FieldOf<Layer extends LayerName> = keyof (typeof schemas)[Layer]['properties'] & string;

/** What the checks need to know of a field. */
export interface FieldRule {
  readonly type?: string;
  readonly enum?: readonly string[];
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly 'x-unit'?: string;
}

/** The rule of one field, `undefined` for a field that the layer does not have. */
export function fieldRule(layer: LayerName, field: string): FieldRule | undefined {
  const properties = schemas[layer].properties as unknown as Readonly<Record<string, FieldRule>>;
  return Object.hasOwn(properties, field) ? properties[field] : undefined;
}
