/**
 * Street ends that fall just short of another street.
 */
import Flatbush from 'flatbush';

/**
 * Connecting segments `[x0, y0, x1, y1, …]` from every line end that touches nothing to the nearest point of other line
 * work within `gap`, rounded to the grid. No existing vertex moves, so the order of lines does not matter. Of its own line an
 * end only sees the part that lies more than twice the gap away along the line.
 *
 * @param lines flat lines in whole grid units, without repeated points
 */
export function gapConnectors(lines: readonly Float64Array[], gap: number): Float64Array {
  const segments = segmentTable(lines);
  if (segments.line.length === 0) return new Float64Array(0);
  const out: number[] = [];
  for (let k = 0; k < lines.length; k++) {
    for (const atStart of [true, false]) {
      const end = endOf(lines[k], k, atStart);
      const nearest = nearestPoint(segments, end, gap);
      if (nearest && nearest.distance > 0) out.push(end.x, end.y, nearest.x, nearest.y);
    }
  }
  return Float64Array.from(out);
}

interface SegmentTable {
  readonly x0: number[];
  readonly y0: number[];
  readonly x1: number[];
  readonly y1: number[];
  readonly line: number[];
  /** Distance along the line from its start to the segment's start. */
  readonly along: number[];
  readonly lengthOfLine: number[];
  readonly index: Flatbush;
}

interface LineEnd {
  readonly x: number;
  readonly y: number;
  readonly line: number;
  readonly atStart: boolean;
}

function segmentTable(lines: readonly Float64Array[]): SegmentTable {
  const count = lines.reduce((sum, line) => sum + Math.max(0, line.length / 2 - 1), 0);
  const index = new Flatbush(Math.max(1, count));
  const t = { x0: [], y0: [], x1: [], y1: [], line: [], along: [], lengthOfLine: [] } as Omit<SegmentTable, 'index'>;
  lines.forEach((line, k) => {
    let along = 0;
    for (let i = 0; i + 3 < line.length; i += 2) {
      const [x0, y0, x1, y1] = line.subarray(i, i + 4);
      t.x0.push(x0);
      t.y0.push(y0);
      t.x1.push(x1);
      t.y1.push(y1);
      t.line.push(k);
      t.along.push(along);
      along += Math.hypot(x1 - x0, y1 - y0);
      index.add(Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1));
    }
    t.lengthOfLine.push(along);
  });
  if (count > 0) index.finish();
  return { ...t, index };
}

function endOf(line: Float64Array, k: number, atStart: boolean): LineEnd {
  const i = atStart ? 0 : line.length - 2;
  return { x: line[i], y: line[i + 1], line: k, atStart };
}

function nearestPoint(
  s: SegmentTable,
  end: LineEnd,
  gap: number,
): { x: number; y: number; distance: number } | undefined {
  let best: { x: number; y: number; distance: number } | undefined;
  s.index.search(end.x - gap, end.y - gap, end.x + gap, end.y + gap, (k) => {
    const seen = pointOnSegment(s, k, end);
    const distance = Math.hypot(seen.x - end.x, seen.y - end.y);
    if (distance > gap || isOwnEnd(s, k, { end, t: seen.t, gap })) return false;
    const x = Math.round(seen.x);
    const y = Math.round(seen.y);
    const isNearer =
      !best || distance < best.distance || (distance === best.distance && (x - best.x || y - best.y) < 0);
    if (isNearer) best = { x, y, distance: distance < 1 ? 0 : distance };
    return false;
  });
  return best;
}

function pointOnSegment(s: SegmentTable, k: number, end: LineEnd): { x: number; y: number; t: number } {
  const dx = s.x1[k] - s.x0[k];
  const dy = s.y1[k] - s.y0[k];
  const t = Math.min(1, Math.max(0, ((end.x - s.x0[k]) * dx + (end.y - s.y0[k]) * dy) / (dx * dx + dy * dy)));
  return { x: s.x0[k] + t * dx, y: s.y0[k] + t * dy, t };
}

/** Whether the seen point belongs to the end's own stretch of line. */
function isOwnEnd(s: SegmentTable, k: number, at: { end: LineEnd; t: number; gap: number }): boolean {
  if (s.line[k] !== at.end.line) return false;
  const along = s.along[k] + at.t * Math.hypot(s.x1[k] - s.x0[k], s.y1[k] - s.y0[k]);
  const away = at.end.atStart ? along : s.lengthOfLine[at.end.line] - along;
  return away <= 2 * at.gap;
}
