/**
 * The one place that knows geojson-validation (LGPL-3, an unmodified dependency; see docs/decisions). It checks the
 * structure of RFC 7946, section 3: member names, types, nesting, lengths of coordinate arrays.
 */
import gate from 'geojson-validation';

/** What the gate says about one object: nothing when it is sound. */
export interface GateReport {
  /** All that is wrong, in the gate's words, `at 3: at 0: …` counting from 0. */
  readonly problems: readonly string[];
  /** Only what no finding of its own tells: not open rings, short rings or positions that are no numbers. */
  readonly structural: readonly string[];
}

const SOUND: GateReport = { problems: [], structural: [] };
const TOLD_ELSEWHERE = [
  /first and last positions must be equivalent/,
  /at least four positions/,
  /only contain numbers/,
];

/** Checks one Feature. Never throws, whatever the object is. */
export function checkFeature(feature: unknown): GateReport {
  return reported(() => gate.isFeature(feature, true));
}

/** Checks one bare geometry. Never throws, whatever the object is. */
export function checkGeometry(geometry: unknown): GateReport {
  return reported(() => gate.isGeometryObject(geometry, true));
}

function reported(check: () => string[] | undefined): GateReport {
  let problems: readonly string[];
  try {
    problems = check() ?? [];
  } catch {
    // The gate itself trips over an empty ring.
    problems = ['a coordinates array is empty'];
  }
  if (problems.length === 0) return SOUND;
  return { problems, structural: problems.filter((problem) => !TOLD_ELSEWHERE.some((words) => words.test(problem))) };
}
