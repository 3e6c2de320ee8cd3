/** What each role may write. */
import type { Edit } from '@crownfall/exchange';
import type { LayerName } from '@crownfall/survey';
import { Refusal } from '../http/refusal.ts';
import { type Asker, mayAct } from '../people/gate.ts';

/** What is observed in the field; everything else is the editors'. */
const OBSERVED: readonly LayerName[] = ['ratings', 'bloom', 'quadrats', 'complaints'];

/** Throws a refusal when the asker's role does not let them make this edit. */
export function mayWrite({ role }: Asker, { layer }: Pick<Edit, 'layer'>): void {
  if (mayAct(role, 'editor') || (mayAct(role, 'rater') && OBSERVED.includes(layer))) return;
  throw new Refusal(403, 'role', `Writing to ${layer} needs the role editor; yours is ${role}.`);
}
