/**
 * Overlays larger than memory: crowns, pieces and blocks flow in sorted by the west edge of their boxes, ledgers of strips
 * flow out. A strip holds what reaches into its pieces (its halo), so its cells are, to the bit, those of the whole.
 */
import type { Region } from '../ring.ts';
import { boxOf } from './box-index.ts';
import type { Box, OverlayLedger } from './ledger.ts';
import { ledgerOf } from './ledger-of.ts';
import type { PieceCells } from './piece-cells.ts';
import { PieceReckoner } from './piece-reckoner.ts';
import { Scene } from './scene.ts';
import { type FalloutRecipe, zonesFromCrowns } from './zones-from-crowns.ts';

/** A region of the stream with the number it has in the whole. */
export interface NumberedRegion {
  readonly number: number;
  readonly region: Region;
}

/** Each sorted by the least x of its regions. Numbers settle overlaps, as the order of a list does in memory. */
export interface OverlayStream {
  readonly crowns: Iterable<NumberedRegion>;
  readonly recipe: FalloutRecipe;
  readonly pieces: Iterable<NumberedRegion>;
  readonly blocks: Iterable<NumberedRegion>;
}

/**
 * Ledgers of strips from west to east, each with the pieces whose box begins in it; numbers are those of the whole, and
 * `mergeLedgers` of all of them is the ledger of the whole. Memory: what one strip and its halo hold, so it is bounded by the
 * strip's width plus the longest piece, however long the stream.
 *
 * @throws RangeError when a source is not sorted
 */
export function* reckonStream(stream: OverlayStream, stripM = 500): Generator<OverlayLedger> {
  const { recipe } = stream;
  const reachM = 1.5 * (recipe.driftRings.at(-1)?.to_m ?? 0) + recipe.wind.distance_m + recipe.chordToleranceM;
  const crowns = new Window(stream.crowns, 'crowns', reachM);
  const pieces = new Window(stream.pieces, 'pieces', 0);
  const blocks = new Window(stream.blocks, 'blocks', 0);
  const reckoner = new PieceReckoner();
  for (let west = pieces.nextMinX; west < Infinity; west = pieces.nextMinX) {
    const strip = pieces.takeUntil(west + stripM);
    const east = strip.reduce((most, { box }) => Math.max(most, box.maxX), -Infinity);
    const near = pieces.between(west, east);
    yield stripLedger(strip, near, crowns.between(west, east), blocks.between(west, east));
  }

  function stripLedger(own: Held[], near: Held[], crownsNear: Held[], blocksNear: Held[]): OverlayLedger {
    const scene = new Scene({
      zones: zonesFromCrowns(crownsNear.length, (i) => crownsNear[i].region, recipe),
      pieces: near.map(({ region }) => region),
      blocks: blocksNear.map(({ region }) => region),
    });
    const mine = new Set(own);
    const cells: (PieceCells | undefined)[] = near.map((piece, i) =>
      mine.has(piece) ? reckoner.cells(scene, i) : undefined,
    );
    const ledger = ledgerOf(cells);
    return {
      ...ledger,
      piece: ledger.piece.map((i) => near[i].number),
      block: ledger.block.map((i) => (i < 0 ? -1 : blocksNear[i].number)),
      zone: ledger.zone.map((i) => crownsNear[i].number),
    };
  }
}

interface Held extends NumberedRegion {
  readonly box: Box;
}

/** What of one source may still be needed, read as far as was asked for. */
class Window {
  private readonly source: Iterator<NumberedRegion>;
  private readonly name: string;
  private readonly reachM: number;
  private held: Held[] = [];
  private next: Held | null = null;
  /** Those of `held` that `takeUntil` gave out. */
  private taken = new Set<Held>();

  constructor(source: Iterable<NumberedRegion>, name: string, reachM: number) {
    this.source = source[Symbol.iterator]();
    this.name = name;
    this.reachM = reachM;
    this.read();
  }

  /** West edge of the first region not yet taken; ∞ when all are. */
  get nextMinX(): number {
    const waiting = this.held.find((held) => !this.taken.has(held));
    return (waiting ?? this.next)?.box.minX ?? Infinity;
  }

  /** The regions not yet taken whose box begins before `x`. */
  takeUntil(x: number): Held[] {
    this.readTo(x);
    const taking = this.held.filter((held) => held.box.minX < x && !this.taken.has(held));
    for (const held of taking) {
      this.taken.add(held);
    }
    return taking;
  }

  /** All regions that reach into `west … east`, by number. Forgets those that end before `west`. */
  between(west: number, east: number): Held[] {
    this.readTo(east);
    this.held = this.held.filter((held) => held.box.maxX >= west);
    this.taken = new Set(this.held.filter((held) => this.taken.has(held)));
    return this.held.filter(({ box }) => box.minX <= east).sort((a, b) => a.number - b.number);
  }

  private readTo(x: number): void {
    while (this.next && this.next.box.minX <= x) {
      this.held.push(this.next);
      this.read();
    }
  }

  private read(): void {
    const before = this.next?.box.minX ?? -Infinity;
    let { value, done } = this.source.next();
    while (!done && boxOf(value.region).minX === Infinity) {
      ({ value, done } = this.source.next());
    }
    if (done) {
      this.next = null;
      return;
    }
    const { minX, minY, maxX, maxY } = boxOf(value.region);
    const box = {
      minX: minX - this.reachM,
      minY: minY - this.reachM,
      maxX: maxX + this.reachM,
      maxY: maxY + this.reachM,
    };
    if (box.minX < before) {
      throw new RangeError(`${this.name}: expected a stream sorted by least x, got ${box.minX} after ${before}`);
    }
    this.next = { ...value, box };
  }
}
