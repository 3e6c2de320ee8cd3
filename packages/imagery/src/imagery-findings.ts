/** What can be wrong with an image, as findings; their words are in the survey room's catalogue. */
import type { CrsFinding, Finding, Place } from '@crownfall/geometry';

export type ImageryFindingCode =
  | 'format-unknown'
  | 'file-damaged'
  | 'imagery-encoding-unsupported'
  | 'imagery-not-placed'
  | 'imagery-block-damaged'
  | 'imagery-alpha-is-infrared'
  | 'imagery-roles-assumed'
  | 'imagery-slow-to-stream';

export type ImageryFinding = Finding<ImageryFindingCode> | CrsFinding;

type Grade = `${Finding['severity']}/${Finding['effect']}`;

const GRADES: Readonly<Record<ImageryFindingCode, Grade>> = {
  'format-unknown': 'error/stops',
  'file-damaged': 'error/stops',
  'imagery-encoding-unsupported': 'error/stops',
  'imagery-not-placed': 'error/stops',
  'imagery-block-damaged': 'warning/left_out',
  'imagery-alpha-is-infrared': 'note/assumed',
  'imagery-roles-assumed': 'note/assumed',
  'imagery-slow-to-stream': 'note/kept',
};

/** A finding of this room, graded by its code. */
export function imageryFinding(
  code: ImageryFindingCode,
  where: Place,
  facts: Finding['facts'] = {},
): Finding<ImageryFindingCode> {
  const [severity, effect] = GRADES[code].split('/') as [Finding['severity'], Finding['effect']];
  return { code, severity, effect, where, facts };
}
