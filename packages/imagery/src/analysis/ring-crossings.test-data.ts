/** Counts, by looking at every pair of sides, where rings cross themselves or each other; touching does not count. */
export function crossings(rings: readonly Float64Array[]): number {
  const sides = rings.flatMap((ring) =>
    Array.from({ length: ring.length / 2 }, (_, i) => {
      const j = (i + 1) % (ring.length / 2);
      return [ring[2 * i], ring[2 * i + 1], ring[2 * j], ring[2 * j + 1]] as const;
    }),
  );
  let count = 0;
  for (let i = 0; i < sides.length; i++) for (let j = 0; j < i; j++) if (cross(sides[i], sides[j])) count++;
  return count;
}

type Side = readonly [number, number, number, number];

/** The ends of each lie on different sides of the other, by more than rounding (coordinates are tens of metres). */
function cross(one: Side, other: Side): boolean {
  return apart(one, other) && apart(other, one);
}

function apart([ax, ay, bx, by]: Side, [cx, cy, dx, dy]: Side): boolean {
  const left = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  const right = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax);
  return (left > 1e-9 && right < -1e-9) || (left < -1e-9 && right > 1e-9);
}
