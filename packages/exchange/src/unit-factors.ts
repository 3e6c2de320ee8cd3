/**
 * Units a foreign column may be in, as factors to the unit of our field. Foot 0.3048 m and inch 0.0254 m exactly
 * (international yard and pound agreement, 1959); US survey foot 1200/3937 m (NIST SP 811, appendix B.6).
 */
const LENGTHS: Readonly<Record<string, number>> = {
  m: 1,
  cm: 0.01,
  mm: 0.001,
  km: 1000,
  in: 0.0254,
  ft: 0.3048,
  'us-ft': 1200 / 3937,
};
const SHARES: Readonly<Record<string, number>> = { pct: 1, share: 100 };
const BEARINGS: Readonly<Record<string, number>> = { deg: 1 };
const AREAS: Readonly<Record<string, number>> = {
  m2: 1,
  cm2: 1e-4,
  ft2: 0.3048 ** 2,
  'us-ft2': (1200 / 3937) ** 2,
  ha: 10_000,
};

/**
 * The units that make sense for a field, by the unit its name ends in; none for a field whose name carries no unit.
 * @example unitsFor('spread_m').ft // 0.3048
 */
export function unitsFor(field: string): Readonly<Record<string, number>> {
  if (field.endsWith('_m2')) return AREAS;
  if (field.endsWith('_m')) return LENGTHS;
  if (field.endsWith('_pct')) return SHARES;
  if (field.endsWith('_deg')) return BEARINGS;
  return {};
}
