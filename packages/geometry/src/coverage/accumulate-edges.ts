/**
 * What the edges of rings change from pixel to pixel along each row: added up from the left, the shares inside, signed.
 */

/**
 * Adds the edges to `changes`, zeros at first: rows of `width + 1` numbers, one more than there are pixels, for what spills over
 * the right side. Parts of edges above, below or to the right of the box change nothing, those to its left its first column.
 */
export function accumulateEdges(
  rings: readonly Float64Array[],
  width: number,
  height: number,
  changes: Float64Array,
): void {
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const ax = ring[j];
      const ay = ring[j + 1];
      const bx = ring[i];
      const by = ring[i + 1];
      if (ay < by) addEdge(changes, width, height, ax, ay, bx, by, 1);
      else if (ay > by) addEdge(changes, width, height, bx, by, ax, ay, -1);
    }
  }
}

/** An edge from (x0, y0) downwards to (x1, y1), row by row. */
function addEdge(
  changes: Float64Array,
  width: number,
  height: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  sign: number,
): void {
  const from = Math.max(y0, 0);
  const to = Math.min(y1, height);
  const slope = (x1 - x0) / (y1 - y0);
  const least = Math.min(x0, x1);
  const most = Math.max(x0, x1);
  let x = from === y0 ? x0 : Math.min(Math.max(x0 + (from - y0) * slope, least), most);
  let y = from;
  for (let row = Math.floor(from); row < to; row++) {
    const below = Math.min(to, row + 1);
    const next = below === y1 ? x1 : Math.min(Math.max(x0 + (below - y0) * slope, least), most);
    if (x < next) addPiece(changes, row * (width + 1), width, x, next, sign * (below - y));
    else addPiece(changes, row * (width + 1), width, next, x, sign * (below - y));
    x = next;
    y = below;
  }
}

/** A piece of an edge within one row, from column position `left` to `right`, that spans `rise` (signed) of its height. */
function addPiece(changes: Float64Array, row: number, width: number, left: number, right: number, rise: number): void {
  if (left >= width) return;
  let from = left;
  let to = right;
  let rest = rise;
  if (to <= 0) {
    changes[row] += rest;
    return;
  }
  if (from < 0) {
    const before = (rest * -from) / (to - from);
    changes[row] += before;
    rest -= before;
    from = 0;
  }
  if (to > width) {
    rest -= (rest * (to - width)) / (to - from);
    to = width;
  }
  const last = Math.ceil(to) - 1;
  const perColumn = to > from ? rest / (to - from) : 0;
  for (let column = Math.floor(from); column < last; column++) {
    const start = Math.max(from, column);
    const part = perColumn * (column + 1 - start);
    addCell(changes, row + column, part, (start + 1 - column) / 2);
    rest -= part;
  }
  const column = Math.max(last, Math.floor(from));
  addCell(changes, row + column, rest, (Math.max(from, column) + to) / 2 - column);
}

/** `along`: mean position of the piece in its pixel, 0 at the left side. */
function addCell(changes: Float64Array, at: number, part: number, along: number): void {
  changes[at] += part * (1 - along);
  changes[at + 1] += part * along;
}
