/** The stain of a project that is being edited: runs of cells are weighed anew where crowns or doses changed, then all is summed. */
import {
  layerShares,
  ledgersOf,
  RunReckoner,
  renumbered,
  type StainRuns,
  treeDoses,
  withRunsOf,
} from '@crownfall/stain';
import type { Settings, SeverityReading } from '@crownfall/survey';
import { ledgerKeys, type Stain, severitiesOf } from '../stain-stage.ts';
import type { LiveGround, Standing } from './live-ground.ts';
import type { LiveOverlayState } from './live-overlay-state.ts';

export class LiveStain {
  readonly #state: LiveOverlayState;
  readonly #blockOf: Int32Array | null;
  readonly #layerShare: Float64Array;
  readonly #settings: Settings;
  /** By slot. */
  #dose: Float64Array = new Float64Array(0);
  /** Zones are slots here. */
  #runs: StainRuns;

  constructor({ blockOf }: LiveGround, state: LiveOverlayState, settings: Settings) {
    this.#state = state;
    this.#blockOf = blockOf;
    this.#layerShare = layerShares(settings);
    this.#settings = settings;
    this.#runs = new RunReckoner({ layerShare: this.#layerShare, dose: this.#dose }).runs();
  }

  /** Doses by slot, as of the last stain. */
  get doses(): Float64Array {
    return this.#dose;
  }

  /** What {@link reckonStain} says of the ground that stands. */
  follow({ ground, slotOf, zoneOf }: Standing, reading: SeverityReading): Stain {
    const severities = severitiesOf(ground, reading);
    const dose = treeDoses(severities, this.#settings);
    this.#weighAgain(bySlot(dose, slotOf, zoneOf.length));
    const stands = slotOf.length === zoneOf.length ? null : zoneOf;
    const runs = renumbered(this.#runs, this.#blockOf, stands);
    const layerShare = this.#layerShare;
    const field = {
      layerShare,
      dose,
      get ledger() {
        return ground.ledger;
      },
    };
    return { ledgers: ledgersOf(runs, field, ledgerKeys(ground)), severities, reading, findings: reading.findings };
  }

  #weighAgain(dose: Float64Array): void {
    const changed = this.#state.takeChanged();
    const pieces = Int32Array.from(new Set([...changed, ...this.#piecesUnder(dose)])).sort();
    this.#dose = dose;
    const reckoner = new RunReckoner({ layerShare: this.#layerShare, dose });
    for (const piece of pieces) reckoner.add(piece, this.#state.overlay.cells(piece));
    this.#runs = withRunsOf(pieces, reckoner.runs(), this.#runs);
  }

  /** The pieces under crowns whose dose becomes another. */
  #piecesUnder(dose: Float64Array): ReadonlySet<number> {
    const { piece, crownStart, zone } = this.#runs;
    const pieces = new Set<number>();
    for (let run = 0; run < piece.length; run++)
      for (let entry = crownStart[run]; entry < crownStart[run + 1]; entry++)
        if (dose[zone[entry]] !== this.#dose[zone[entry]]) pieces.add(piece[run]);
    return pieces;
  }
}

function bySlot(dose: Float64Array, slotOf: Int32Array, slots: number): Float64Array {
  const doses = new Float64Array(slots);
  slotOf.forEach((slot, zone) => {
    doses[slot] = dose[zone];
  });
  return doses;
}
