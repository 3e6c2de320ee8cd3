/** Complaints: where people asked for something to be done. */
import type { RawLayer } from '../project-input.ts';
import type { Complaint } from '../records.ts';
import { claimId, idRegister } from './claim-id.ts';
import { geometryHash } from './geometry-hash.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { isMissing } from './number-text.ts';
import { hasGeometry, middleOf } from './positions.ts';
import { present } from './present-fields.ts';

/**
 * Reads the complaints. Without a state a complaint counts as open, without a subject as `other`. Two without an id at the
 * same place are two complaints unless they came in on the same day about the same thing.
 */
export function readComplaints(layer: RawLayer | undefined): LayerReading<Complaint> {
  const register = idRegister('complaint', layer, 'complaint_id');
  return readLayer('complaints', layer, (row) => {
    if (!hasGeometry(row, ['point', 'area'])) return undefined;
    if (isMissing(row.feature.properties.state))
      row.tally('field-missing', 'note/assumed', { read_as: 'open' }, 'state');
    const about = row.word<Complaint['about']>('about', 'other') ?? 'other';
    const state = row.word<Complaint['state']>('state', 'open') ?? 'open';
    const receivedOn = row.date('received_on');
    const shape = () => `${geometryHash(row.feature.geometry)}-${receivedOn ?? ''}-${about}`;
    const complaintId = claimId(row, register, 'complaint_id', shape);
    if (complaintId === undefined) return undefined;
    const at = middleOf(row.feature.geometry);
    return { complaintId, at, ...present({ receivedOn }), about, state, extra: row.extra() };
  });
}
