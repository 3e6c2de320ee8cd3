/** Invented pavement for tests: reflectance, stain and light of a square of ground, from a seed. Nothing is a real place. */
import { RandomStream } from '@crownfall/statistics';

export type MadeSurface = 'concrete' | 'asphalt' | 'pavers';
export type MadeLight = 'even' | 'edge' | 'dapple';

export interface PavementRecipe {
  readonly seed: number;
  readonly surface: MadeSurface;
  readonly light: MadeLight;
  /** Wanted share of the frame, 0–1; the truth is counted afterwards. */
  readonly stained: number;
  /** Frame from (0, 0) to (side, side); patch as [left, top, right, bottom], metres. */
  readonly sideM: number;
  readonly patchM: readonly [number, number, number, number];
}

export interface MadePavement {
  /** Cells a side; ground from −margin to side + margin. */
  readonly size: number;
  readonly cellM: number;
  readonly marginM: number;
  /** Linear light that leaves the ground, three bands. */
  readonly light: readonly Float32Array[];
  /** Stained share of the frame, counted in cells of 1.5 mm. */
  readonly truth: number;
  /** Share of the frame that gets less than 95 % of the sun. */
  readonly shaded: number;
}

const CELL_M = 0.0015;

export function madePavement(recipe: PavementRecipe): MadePavement {
  const { sideM, patchM } = recipe;
  const random = new RandomStream(recipe.seed, 1);
  const marginM = 0.3 * sideM + 0.1;
  const size = Math.round((sideM + 2 * marginM) / CELL_M);
  const ground = { random, size, marginM };
  const clean = SURFACES[recipe.surface](ground);
  const near = (p: number, reachM: number): number => {
    const [x, y] = groundOf(ground, p);
    return (
      1 - Math.hypot(Math.max(patchM[0] - x, 0, x - patchM[2]), Math.max(patchM[1] - y, 0, y - patchM[3])) / reachM
    );
  };
  const inFrame = (p: number): boolean => groundOf(ground, p).every((at) => at >= 0 && at < sideM);
  const stain = stainOf(ground, recipe.stained, inFrame, (p) => near(p, 0.01) > 0);
  const sun = sunOf(ground, recipe.light).map(
    (share, p) => 1 - (1 - share) * (1 - Math.min(1, 2 * Math.max(0, near(p, 0.08)))),
  );
  const shade = [0.12 + 0.25 * random.uniform()].flatMap((depth) => {
    const cool = 0.85 + 0.5 * random.uniform();
    return [depth * (1 - 0.25 * cool), depth, depth * (1 + 0.3 * cool)];
  });
  // Frass and mould let little light through; frass is brown, mould grey.
  const brown = random.uniform();
  const through = 0.2 + 0.3 * random.uniform();
  const tint = [through * (1 + 0.25 * brown), through, through * (1 - 0.3 * brown)];
  const [gx, gy] = [0.2 * (random.uniform() - 0.5), 0.2 * (random.uniform() - 0.5)];
  const light = [0, 1, 2].map((b) =>
    clean[b].map((reflectance, p) => {
      const [x, y] = groundOf(ground, p);
      const slope = 1 + (gx * x + gy * y) / sideM;
      return reflectance * tint[b] ** stain[p] * (sun[p] + (1 - sun[p]) * shade[b]) * slope;
    }),
  );
  let [frame, stained, shaded] = [0, 0, 0];
  for (let p = 0; p < size * size; p++) {
    if (!inFrame(p)) continue;
    frame++;
    if (stain[p] > 0) stained++;
    if (sun[p] < 0.95) shaded++;
  }
  return { size, cellM: CELL_M, marginM, light, truth: stained / frame, shaded: shaded / frame };
}

interface Ground {
  readonly random: RandomStream;
  readonly size: number;
  readonly marginM: number;
}

function groundOf({ size, marginM }: Ground, p: number): [x: number, y: number] {
  return [((p % size) + 0.5) * CELL_M - marginM, (Math.floor(p / size) + 0.5) * CELL_M - marginM];
}

/** Smooth noise, mean 0, of about unit spread: random values at lattice points of `scaleM`, eased between. */
function noise({ random, size }: Ground, scaleM: number): Float32Array {
  const step = Math.max(1, scaleM / CELL_M);
  const across = Math.ceil(size / step) + 2;
  const lattice = Float32Array.from({ length: across * across }, () => 1.6 * random.normal());
  const ease = (t: number): number => t * t * (3 - 2 * t);
  return Float32Array.from({ length: size * size }, (_, p) => {
    const [c, r] = [(p % size) / step, Math.floor(p / size) / step];
    const at = Math.floor(r) * across + Math.floor(c);
    const [s, t] = [ease(c % 1), ease(r % 1)];
    const upper = lattice[at] * (1 - s) + lattice[at + 1] * s;
    return upper * (1 - t) + (lattice[at + across] * (1 - s) + lattice[at + across + 1] * s) * t;
  });
}

const SURFACES: Readonly<Record<MadeSurface, (ground: Ground) => Float32Array[]>> = { concrete, asphalt, pavers };

function coloured(colour: readonly number[], tone: Float32Array): Float32Array[] {
  return colour.map((share) => tone.map((value) => share * Math.max(0.05, value)));
}

function concrete(ground: Ground): Float32Array[] {
  const { random } = ground;
  const grey = 0.3 + 0.2 * random.uniform();
  const [coarse, low] = [noise(ground, 0.006), noise(ground, 0.15)];
  const [grain, mottle] = [0.03 + 0.05 * random.uniform(), 0.02 + 0.02 * random.uniform()];
  const warm = 0.06 * random.uniform();
  const tone = coarse.map((value, p) => 1 + grain * (0.6 * value + random.normal()) + mottle * low[p]);
  return coloured([grey * (1 + warm), grey, grey * (1 - 1.5 * warm)], tone);
}

/** Stones of some millimetres, each with its own grey, in a darker binder. */
function asphalt(ground: Ground): Float32Array[] {
  const { random, size } = ground;
  const grey = 0.1 + 0.1 * random.uniform();
  const step = (0.006 + 0.006 * random.uniform()) / CELL_M;
  const across = Math.ceil(size / step) + 3;
  const stones = Array.from({ length: across * across }, () => ({
    x: random.uniform(),
    y: random.uniform(),
    tone: Math.exp(0.3 * random.normal() - 0.1),
  }));
  const low = noise(ground, 0.2);
  const tone = Float32Array.from({ length: size * size }, (_, p) => {
    const [c, r] = [(p % size) / step + 1, Math.floor(p / size) / step + 1];
    let [first, second, found] = [9, 9, stones[0]];
    for (let k = 0; k < 9; k++) {
      const [i, j] = [Math.floor(c) + (k % 3) - 1, Math.floor(r) + Math.floor(k / 3) - 1];
      const stone = stones[j * across + i];
      const distance = Math.hypot(i + stone.x - c, j + stone.y - r);
      if (distance < first) [second, first, found] = [first, distance, stone];
      else if (distance < second) second = distance;
    }
    const binder = second - first < 0.15 ? 0.75 : 1;
    return found.tone * binder * (1 + 0.03 * low[p] + 0.04 * random.normal());
  });
  return coloured([grey, grey, grey * 1.01], tone);
}

/** Bricks in running bond at any bearing, each with its own tone, joints darker. */
function pavers(ground: Ground): Float32Array[] {
  const { random, size } = ground;
  const [longM, shortM, jointM] = [0.2, 0.1, 0.003 + 0.003 * random.uniform()];
  const bearing = random.uniform() * Math.PI;
  const tones = Array.from({ length: 4096 }, () => 1 + 0.06 * random.normal());
  const joint = 0.4 + 0.2 * random.uniform();
  const grain = noise(ground, 0.003);
  const tone = Float32Array.from({ length: size * size }, (_, p) => {
    const [x, y] = groundOf(ground, p);
    const a = x * Math.cos(bearing) + y * Math.sin(bearing) + 10;
    const b = y * Math.cos(bearing) - x * Math.sin(bearing) + 10;
    const row = Math.floor(b / shortM);
    const along = a + (row % 2) * (longM / 2);
    const inJoint = b % shortM < jointM || along % longM < jointM;
    const own = tones[(row * 64 + Math.floor(along / longM)) % 4096];
    return (inJoint ? joint : own) * (1 + 0.05 * grain[p] + 0.03 * random.normal());
  });
  const grey = 0.2 + 0.15 * random.uniform();
  const red = random.uniform() < 0.5 ? 1.3 : 1;
  return coloured([grey * red, grey, grey * (2 - red)], tone);
}

/** How thick the stain lies, 0 where there is none: patches with rough edges, and pellets of 4–10 mm. */
function stainOf(
  ground: Ground,
  wanted: number,
  inFrame: (p: number) => boolean,
  keptClean: (p: number) => boolean,
): Float32Array {
  const { random, size } = ground;
  const [large, middle, fine, thick] = [0.12, 0.03, 0.008, 0.02].map((scaleM) => noise(ground, scaleM));
  const [roughness, grain] = [random.uniform(), 0.5 * random.uniform()];
  const field = large.map((value, p) => value + roughness * middle[p] + grain * fine[p]);
  const pelletShare = wanted * 0.5 * random.uniform();
  const sorted = field.filter((_, p) => inFrame(p)).sort();
  const share = wanted - pelletShare;
  const cut = share <= 0 ? Infinity : sorted[Math.min(sorted.length - 1, Math.round((1 - share) * sorted.length))];
  const stain = field.map((value, p) => (value > cut ? 0.7 + 0.5 / (1 + Math.exp(-thick[p])) : 0));
  const pellets = Math.round((pelletShare * (size * CELL_M) ** 2) / (Math.PI * 0.0035 ** 2));
  for (let k = 0; k < pellets; k++) {
    const [c, r] = [random.uniform() * size, random.uniform() * size];
    const radius = (0.002 + 0.003 * random.uniform()) / CELL_M;
    for (let row = Math.max(0, Math.ceil(r - radius)); row < Math.min(size, r + radius); row++) {
      for (let column = Math.max(0, Math.ceil(c - radius)); column < Math.min(size, c + radius); column++) {
        if (Math.hypot(column - c, row - r) < radius) stain[row * size + column] = 1;
      }
    }
  }
  return stain.map((value, p) => (keptClean(p) ? 0 : value));
}

/** Share of the sun that reaches each cell: all of it, an edge of shade, or the dapple below a crown. */
function sunOf(ground: Ground, light: MadeLight): Float32Array {
  const { random, size, marginM } = ground;
  if (light === 'even') return new Float32Array(size * size).fill(1);
  if (light === 'dapple') {
    const field = noise(ground, 0.08 + 0.15 * random.uniform());
    const [level, soft] = [0.4 * random.normal() + 0.4, 0.1 + 0.6 * random.uniform()];
    return field.map((value) => Math.min(1, Math.max(0, (level - value) / soft + 0.5)));
  }
  const bearing = random.uniform() * 2 * Math.PI;
  const middle = (size * CELL_M) / 2 - marginM;
  const offset = middle * (random.uniform() - 0.5);
  const penumbra = 0.002 + 0.04 * random.uniform();
  return Float32Array.from({ length: size * size }, (_, p) => {
    const [x, y] = groundOf(ground, p);
    const beyond = (x - middle) * Math.cos(bearing) + (y - middle) * Math.sin(bearing) - offset;
    return Math.min(1, Math.max(0, 0.5 - beyond / penumbra));
  });
}
