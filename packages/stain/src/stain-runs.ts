/**
 * The cells of the overlay summed up to runs: one piece of pavement in one block, and what each crown does there. They are a small
 * share of the cells; all ledgers are sums of them, and an edit makes only the runs of the pieces that it reaches anew.
 */
import type { PieceCells } from '@crownfall/geometry';
import type { AreaColumns } from './area-columns.ts';
import { BalancedSums } from './balanced-sum.ts';
import type { CrownColumns } from './crown-columns.ts';
import { checkDoses, type DoseField } from './stained-share.ts';

export interface StainRuns {
  /** Runs ascend by piece, then by block. */
  readonly piece: Int32Array;
  /** −1: outside every block. */
  readonly block: Int32Array;
  readonly areas: AreaColumns;
  /** Length runs + 1: the crowns over run `r` are entries `crownStart[r]` … `crownStart[r + 1] − 1`. */
  readonly crownStart: Int32Array;
  /** Ascending in each run. */
  readonly zone: Int32Array;
  readonly crowns: CrownColumns;
}

/** Runs of a whole ledger. Linear in its covers. RangeError for a dose or layer share that is missing or no amount. */
export function stainRuns({ ledger, ...doses }: DoseField): StainRuns {
  const reckoner = new RunReckoner(doses);
  let from = 0;
  for (let cell = 1; cell <= ledger.cellCount; cell++) {
    if (cell < ledger.cellCount && ledger.piece[cell] === ledger.piece[from]) continue;
    reckoner.add(ledger.piece[from], ledger, from, cell);
    from = cell;
  }
  return reckoner.runs();
}

/** Working memory at first; a run with more makes it grow. */
const FEW_CROWNS = 64;

const [PAVEMENT, DRIPLINE, FALLOUT, STAINED] = [0, 1, 2, 3];

/** Makes runs piece by piece, in ascending order of pieces; the working memory is used again for each. */
export class RunReckoner {
  readonly #doses: Omit<DoseField, 'ledger'>;
  readonly #made = { piece: [] as number[], block: [] as number[], areas: columns(4), crownStart: [0] };
  readonly #crowns = { zone: [] as number[], columns: columns(3) };
  readonly #areas = new BalancedSums(4);
  /** Four for each crown of the run at hand, as of areas; the first stays 0. */
  #sums = new BalancedSums(4 * FEW_CROWNS);
  #seen = new Int32Array(FEW_CROWNS);
  readonly #rowOf: Int32Array;

  constructor(doses: Omit<DoseField, 'ledger'>) {
    checkDoses(doses);
    this.#doses = doses;
    this.#rowOf = new Int32Array(doses.dose.length).fill(-1);
  }

  /** The cells `from` … `to − 1`, all of one piece. */
  add(piece: number, cells: PieceCells, from = 0, to = cells.block.length): void {
    let start = from;
    for (let cell = from + 1; cell <= to; cell++) {
      if (cell < to && cells.block[cell] === cells.block[start]) continue;
      this.#made.piece.push(piece);
      this.#made.block.push(cells.block[start]);
      this.#makeRoom(cells.coverStart[cell] - cells.coverStart[start]);
      this.#close(this.#weigh(cells, start, cell));
      start = cell;
    }
  }

  runs(): StainRuns {
    const { piece, block, areas, crownStart } = this.#made;
    const [pavementM2, driplineM2, falloutM2, stainedM2] = areas.map((column) => new Float64Array(column));
    const [ownDriplineM2, ownFalloutM2, attributedM2] = this.#crowns.columns.map((column) => new Float64Array(column));
    return {
      piece: new Int32Array(piece),
      block: new Int32Array(block),
      areas: { pavementM2, driplineM2, falloutM2, stainedM2 },
      crownStart: new Int32Array(crownStart),
      zone: new Int32Array(this.#crowns.zone),
      crowns: { driplineM2: ownDriplineM2, falloutM2: ownFalloutM2, stainedM2: attributedM2 },
    };
  }

  /** For a run with so many covers, which are at least as many as its crowns. */
  #makeRoom(covers: number): void {
    const most = Math.min(2 * covers, this.#rowOf.length);
    if (Math.min(covers, most) <= this.#seen.length) return;
    this.#sums = new BalancedSums(4 * most);
    this.#seen = new Int32Array(most);
  }

  /** Sums the cells of one run; answers how many crowns are over it. */
  #weigh({ areaM2, coverStart, zone, layer }: PieceCells, from: number, to: number): number {
    const { layerShare, dose } = this.#doses;
    const [areas, sums, rowOf] = [this.#areas, this.#sums, this.#rowOf];
    let crowns = 0;
    for (let cell = from; cell < to; cell++) {
      const area = areaM2[cell];
      const [start, end] = [coverStart[cell], coverStart[cell + 1]];
      areas.add(PAVEMENT, area);
      if (start === end) continue;
      let sum = 0;
      let inner = layer[start];
      for (let entry = start; entry < end; entry++) {
        sum += layerShare[layer[entry]] * dose[zone[entry]];
        if (layer[entry] < inner) inner = layer[entry];
      }
      if (!(sum >= 0)) throw new RangeError(`a zone or layer of the ledger has no dose or share: zones ${dose.length}`);
      const stained = area * -Math.expm1(-sum);
      areas.add(FALLOUT, area);
      if (inner === 0) areas.add(DRIPLINE, area);
      areas.add(STAINED, stained);
      const perDose = sum === 0 ? 0 : stained / sum;
      for (let entry = start; entry < end; entry++) {
        let row = rowOf[zone[entry]];
        if (row < 0) {
          row = crowns++;
          rowOf[zone[entry]] = row;
          this.#seen[row] = zone[entry];
        }
        sums.add(4 * row + FALLOUT, area);
        if (layer[entry] === 0) sums.add(4 * row + DRIPLINE, area);
        sums.add(4 * row + STAINED, perDose * layerShare[layer[entry]] * dose[zone[entry]]);
      }
    }
    return crowns;
  }

  /** Writes the run that was weighed, and clears the working memory. */
  #close(crowns: number): void {
    const [areas, sums] = [this.#areas, this.#sums];
    for (let column = 0; column < 4; column++) this.#made.areas[column].push(areas.at(column));
    areas.clear(4);
    for (const zone of this.#seen.subarray(0, crowns).sort()) {
      const row = this.#rowOf[zone];
      this.#rowOf[zone] = -1;
      this.#crowns.zone.push(zone);
      for (let column = DRIPLINE; column <= STAINED; column++)
        this.#crowns.columns[column - 1].push(sums.at(4 * row + column));
    }
    sums.clear(4 * crowns);
    this.#made.crownStart.push(this.#crowns.zone.length);
  }
}

function columns(count: number): number[][] {
  return Array.from({ length: count }, () => []);
}
