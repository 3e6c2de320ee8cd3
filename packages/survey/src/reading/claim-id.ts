/** Names a feature through its layer's register, and says so in a finding when the name is not simply the one given. */
import type { LayerName, RawLayer } from '../project-input.ts';
import type { FieldOf } from '../schemas/layer-schemas.ts';
import { IdRegister } from './id-register.ts';
import type { RowReader } from './row-reader.ts';

/** A register that knows all ids given in a column. */
export function idRegister(prefix: string, layer: RawLayer | undefined, field: string): IdRegister {
  const given = layer?.features.map((feature) => String(feature.properties[field] ?? '').trim()) ?? [];
  return new IdRegister(prefix, given);
}

/** The id under which a feature is kept, or `undefined` when it repeats an earlier one and is left out. */
export function claimId<Layer extends LayerName>(
  row: RowReader<Layer>,
  register: IdRegister,
  field: FieldOf<Layer>,
  shape: () => string,
): string | undefined {
  const claim = register.claim(row.text(field), shape);
  const isTree = field === 'tree_id';
  if (claim.is === 'repeated') {
    row.spoil(isTree ? 'tree-repeated' : 'feature-repeated', {}, field);
    return undefined;
  }
  if (claim.is === 'made-up') row.tally(isTree ? 'tree-id-made-up' : 'id-made-up', 'note/assumed', {}, field);
  if (claim.is === 'renamed') {
    row.find(isTree ? 'tree-id-duplicate' : 'id-duplicate', 'warning/kept', { renamed_to: claim.id }, field);
  }
  return claim.id;
}
