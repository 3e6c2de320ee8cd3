/**
 * Colour at full size from colour at half size: each new sample is ¾ of the nearer and ¼ of the farther old one ("triangle
 * filter"), with the rounding that libjpeg has, so that samples come out as other readers give them.
 */

export interface Plane {
  readonly samples: Uint8Array;
  /** Real size; rows of `samples` are `stride` apart. */
  readonly width: number;
  readonly height: number;
  readonly stride: number;
}

/** The plane enlarged `across` × `down` times; the result may be larger than the image by less than one old sample. */
export function enlarged(plane: Plane, across: number, down: number): Plane {
  if (across === 1 && down === 1) return plane;
  if (across === 2 && down === 1 && plane.width > 2) return doubledAcross(plane);
  if (across === 2 && down === 2 && plane.width > 2) return doubledBothWays(plane);
  if (across === 1 && down === 2) return doubledDown(plane);
  return repeated(plane, across, down);
}

function sized(width: number, height: number): Plane {
  return { samples: new Uint8Array(width * height), width, height, stride: width };
}

function doubledAcross({ samples, width, height, stride }: Plane): Plane {
  const out = sized(2 * width, height);
  for (let y = 0; y < height; y++) {
    const from = y * stride;
    const to = y * out.stride;
    for (let x = 0; x < width; x++) {
      const here = 3 * samples[from + x];
      out.samples[to + 2 * x] = x === 0 ? samples[from] : (here + samples[from + x - 1] + 1) >> 2;
      out.samples[to + 2 * x + 1] = x === width - 1 ? samples[from + x] : (here + samples[from + x + 1] + 2) >> 2;
    }
  }
  return out;
}

function doubledDown({ samples, width, height, stride }: Plane): Plane {
  const out = sized(width, 2 * height);
  for (let y = 0; y < out.height; y++) {
    const near = (y >> 1) * stride;
    const far = otherRow(y, height) * stride;
    const bias = 1 + (y & 1);
    for (let x = 0; x < width; x++) {
      out.samples[y * width + x] = (3 * samples[near + x] + samples[far + x] + bias) >> 2;
    }
  }
  return out;
}

function doubledBothWays({ samples, width, height, stride }: Plane): Plane {
  const out = sized(2 * width, 2 * height);
  const sums = new Int32Array(width);
  for (let y = 0; y < out.height; y++) {
    const near = (y >> 1) * stride;
    const far = otherRow(y, height) * stride;
    for (let x = 0; x < width; x++) sums[x] = 3 * samples[near + x] + samples[far + x];
    const to = y * out.stride;
    for (let x = 0; x < width; x++) {
      const here = 3 * sums[x];
      out.samples[to + 2 * x] = (here + sums[x === 0 ? 0 : x - 1] + 8) >> 4;
      out.samples[to + 2 * x + 1] = (here + sums[x === width - 1 ? x : x + 1] + 7) >> 4;
    }
  }
  return out;
}

/** The farther of the two old rows between which new row `y` lies; the edge rows stand for what is beyond. */
function otherRow(y: number, height: number): number {
  return Math.min(Math.max((y >> 1) + (y & 1 ? 1 : -1), 0), height - 1);
}

function repeated({ samples, width, height, stride }: Plane, across: number, down: number): Plane {
  const out = sized(width * across, height * down);
  for (let y = 0; y < out.height; y++) {
    const from = Math.floor(y / down) * stride;
    for (let x = 0; x < out.width; x++) out.samples[y * out.stride + x] = samples[from + Math.floor(x / across)];
  }
  return out;
}
