/** Visits in a file beside `project.json`: a JSON list as the server answers it, or an object with the list `visits`. */
import type { Finding } from '@crownfall/geometry';
import { finding, isIsoDay, type Visit } from '@crownfall/survey';
import { inWords } from '../json/json-stream.ts';
import { parseJson } from '../json/parse-json.ts';

/** How convert names it. */
export const VISITS_FILE = 'visits.json';

/** Reads the visits. An entry that is no visit is left out and told with its place in the list; of one id the first counts. */
export function readVisitsFile(bytes: Uint8Array, file: string): { visits: Visit[]; findings: Finding[] } {
  const { value, broken } = parseJson(bytes);
  if (broken) {
    const facts = { problem: inWords(broken), ...(broken.kind === 'truncated' ? {} : { line: broken.line }) };
    return { visits: [], findings: [finding('not-json', 'warning/left_out', { file }, facts)] };
  }
  const list = Array.isArray(value) ? value : (value as { visits?: unknown } | null)?.visits;
  if (!Array.isArray(list)) {
    return { visits: [], findings: [refused({ file }, 'a list of visits')] };
  }
  const known = new Set<string>();
  const findings: Finding[] = [];
  const visits: Visit[] = [];
  list.forEach((each: unknown, at) => {
    if (!isVisit(each)) findings.push(refused({ file, feature: `#${at + 1}` }, 'visitId, visitedOn, visitor, did'));
    else if (!known.has(each.visitId)) visits.push(each);
    if (isVisit(each)) known.add(each.visitId);
  });
  return { visits, findings };
}

/** The text of a visits file. */
export function visitsText(visits: readonly Visit[]): string {
  return `${JSON.stringify(visits, null, 2)}\n`;
}

function isVisit(value: unknown): value is Visit {
  if (typeof value !== 'object' || value === null) return false;
  const { visitId, visitedOn, visitor, did, treeId, blockId } = value as Record<string, unknown>;
  const isText = (each: unknown): boolean => typeof each === 'string' && each !== '';
  const placed = [treeId, blockId].every((each) => each === undefined || isText(each));
  return (
    [visitId, visitor, did].every(isText) && placed && isText(visitedOn) && isIsoDay(String(visitedOn).slice(0, 10))
  );
}

function refused(where: Finding['where'], expected: string): Finding {
  return finding('project-invalid', 'warning/left_out', where, { problem: 'this is no visit', expected });
}
