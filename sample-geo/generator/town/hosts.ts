/**
 * The hosts of the invented town: how large they grow here and what may foul the pavement below them. Sizes and chances
 * are the author's invention, made to look plausible; they are no data on any species.
 */
export interface Host {
  readonly name: string;
  readonly spreadM: readonly [mean: number, sd: number];
  /** Height per metre of spread. */
  readonly slender: number;
  readonly form: 'broad' | 'palm';
  /** What falls from a fouling crown of this host. */
  readonly fouls: 'frass' | 'honeydew' | 'fruit' | 'leaf_litter' | 'none';
  /** Share of crowns that foul, away from any focus of galls. */
  readonly foulingShare: number;
  /** Leaf colour, red, green, blue, near infrared, 0 to 255. */
  readonly leaf: readonly [number, number, number, number];
  /** How they are written in the inventory besides the name itself, with weights. */
  readonly spellings: readonly (readonly [string, number])[];
}

const ROWS: readonly (readonly [
  string,
  readonly [number, number],
  number,
  Host['form'],
  Host['fouls'],
  number,
  Host['leaf'],
])[] = [
  ['Terminalia buceras', [9.4, 1.7], 0.95, 'broad', 'frass', 0.16, [72, 104, 54, 186]],
  ['Tilia americana', [8, 1.3], 1.25, 'broad', 'honeydew', 0.6, [86, 124, 58, 200]],
  ['Lagerstroemia indica', [4.6, 0.8], 1.1, 'broad', 'honeydew', 0.35, [104, 128, 74, 188]],
  ['Quercus virginiana', [11.4, 2.1], 0.8, 'broad', 'none', 0, [62, 86, 46, 168]],
  ['Swietenia mahagoni', [8.6, 1.4], 1.05, 'broad', 'leaf_litter', 0.3, [80, 108, 50, 180]],
  ['Coccoloba uvifera', [5.4, 1], 0.9, 'broad', 'fruit', 0.55, [98, 126, 66, 192]],
  ['Ficus aurea', [12.4, 1.8], 0.85, 'broad', 'fruit', 0.6, [58, 92, 42, 182]],
  ['Sabal palmetto', [3.9, 0.5], 2.3, 'palm', 'none', 0, [88, 112, 62, 172]],
];

const HOSTS: readonly Host[] = ROWS.map(([name, spreadM, slender, form, fouls, foulingShare, leaf]) => ({
  name,
  spreadM,
  slender,
  form,
  fouls,
  foulingShare,
  leaf,
  spellings:
    name === 'Terminalia buceras'
      ? [
          [name, 60],
          ['terminalia buceras', 1],
          ['Terminalia  buceras ', 1],
        ]
      : [[name, 1]],
}));

export function hostNamed(name: string): Host {
  const host = HOSTS.find((each) => each.name === name);
  if (host === undefined)
    throw new RangeError(`hosts: expected one of ${HOSTS.map((h) => h.name).join(', ')}, got ${name}`);
  return host;
}
