/** What the ground and the roofs are made of, as an aerial camera sees it in full sun: red, green, blue, near infrared, 0–255. */
export interface Material {
  readonly name: string;
  readonly colour: readonly [number, number, number, number];
  /** How much its brightness wanders over some metres, and from pixel to pixel. */
  readonly cloud: number;
  readonly grain: number;
  readonly isPavement: boolean;
}

const ROWS: readonly (readonly [string, Material['colour'], number, number, boolean])[] = [
  ['scrub', [112, 116, 82, 142], 0.5, 0.14, false],
  ['sea', [38, 78, 92, 22], 0.16, 0.03, false],
  ['lawn', [116, 134, 78, 178], 0.26, 0.06, false],
  ['asphalt', [112, 112, 112, 116], 0.12, 0.05, true],
  ['concrete', [186, 182, 172, 188], 0.08, 0.04, true],
  ['pavers', [176, 158, 142, 180], 0.1, 0.05, true],
  ['driveway', [196, 191, 180, 196], 0.12, 0.04, true],
  ['lot', [98, 99, 101, 102], 0.14, 0.05, true],
  ['path', [192, 176, 140, 196], 0.12, 0.06, true],
  ['yard', [150, 147, 138, 150], 0.2, 0.06, false],
  ['roof terracotta', [168, 104, 78, 172], 0.08, 0.05, false],
  ['roof white', [222, 221, 214, 214], 0.07, 0.03, false],
  ['roof grey', [146, 148, 150, 150], 0.1, 0.05, false],
  ['roof brown', [124, 104, 88, 128], 0.08, 0.06, false],
  ['roof sand', [196, 182, 156, 192], 0.08, 0.04, false],
  ['roof slate', [104, 112, 120, 112], 0.08, 0.05, false],
  ['paint white', [224, 224, 218, 220], 0.04, 0.06, true],
  ['paint yellow', [212, 176, 74, 206], 0.04, 0.06, true],
  ['pool', [104, 190, 206, 40], 0.1, 0.04, false],
  ['pond', [62, 84, 66, 40], 0.2, 0.03, false],
  ['soil', [120, 96, 68, 128], 0.2, 0.1, false],
  ['seawall', [170, 166, 156, 168], 0.06, 0.04, false],
  ['planks', [152, 132, 106, 156], 0.1, 0.1, false],
  ['car white', [232, 232, 230, 224], 0, 0.01, false],
  ['car black', [46, 48, 52, 50], 0, 0.01, false],
  ['car red', [150, 46, 42, 140], 0, 0.01, false],
  ['car blue', [62, 86, 132, 90], 0, 0.01, false],
  ['car silver', [172, 176, 180, 176], 0, 0.01, false],
  ['glass', [52, 62, 72, 50], 0, 0.02, false],
  ['kerb', [204, 201, 192, 200], 0.04, 0.03, true],
];

export const MATERIALS: readonly Material[] = ROWS.map(([name, colour, cloud, grain, isPavement]) => ({
  name,
  colour,
  cloud,
  grain,
  isPavement,
}));

export function material(name: string): number {
  const index = MATERIALS.findIndex((each) => each.name === name);
  if (index < 0) throw new RangeError(`materials: no ${name}`);
  return index;
}
