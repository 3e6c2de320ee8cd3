/** Figures that follow the project's edits: reckoned anew a moment after the last edit, with the number they hold for. */
import type { Finding } from '@crownfall/geometry';
import { type OpenFigures, openFigures } from '../figures/open-figures.ts';
import type { SheetWish } from '../sheets/sheet-maker.ts';
import type { Reckoner } from './reckoner.ts';

/** Edits come in bursts; figures wait for a pause this long, but never longer than the second. */
const PAUSE_MS = 300;
const LONGEST_MS = 3000;
/** Reckoning takes at most half of a processor: after one that took long, the next waits as long, but never longer than this. */
const LONGEST_REST_MS = 60_000;

export interface FiguresState {
  /** Number of the last edit that the figures served hold. */
  readonly journal: number;
  /** Whether an edit after that is being reckoned or waits for it. */
  readonly underWay: boolean;
  /** Why the last reckoning gave no figures; those served are then older. Null when it gave some. */
  readonly stopped: readonly Finding[] | string | null;
}

export class FollowingFigures {
  readonly #reckoner: Reckoner;
  readonly #changed: (state: FiguresState) => void;
  #figures: OpenFigures;
  #stopped: FiguresState['stopped'] = null;
  #timer: NodeJS.Timeout | null = null;
  #waitingSince = 0;
  /** Until when the last reckoning's rest lasts. */
  #restUntil = 0;
  #running: Promise<void> | null = null;
  #again = false;
  #closed = false;

  constructor(figures: OpenFigures, reckoner: Reckoner, changed: (state: FiguresState) => void) {
    this.#figures = figures;
    this.#reckoner = reckoner;
    this.#changed = changed;
  }

  get now(): OpenFigures {
    return this.#figures;
  }

  get state(): FiguresState {
    const underWay = this.#timer !== null || this.#running !== null;
    return { journal: this.#figures.journal, underWay, stopped: this.#stopped };
  }

  /** A visit sheet as a PDF; null when there is no such block. */
  sheet(wish: SheetWish): Promise<Uint8Array | null> {
    return this.#reckoner.sheet(wish);
  }

  /** To be called after every edit. */
  edited(): void {
    if (this.#closed) return;
    const now = Date.now();
    if (this.#timer === null) this.#waitingSince = now;
    else clearTimeout(this.#timer);
    const pause = Math.min(PAUSE_MS, this.#waitingSince + LONGEST_MS - now);
    this.#timer = setTimeout(() => this.#start(), Math.max(0, pause, this.#restUntil - now));
  }

  async close(): Promise<void> {
    this.#closed = true;
    if (this.#timer !== null) clearTimeout(this.#timer);
    await this.#reckoner.close();
    await this.#running;
  }

  #start(): void {
    this.#timer = null;
    if (this.#running !== null) {
      this.#again = true;
      return;
    }
    this.#running = this.#reckon().finally(() => {
      this.#running = null;
      if (this.#closed) return;
      if (this.#again) this.edited();
      this.#again = false;
      this.#changed(this.state);
    });
  }

  async #reckon(): Promise<void> {
    const from = Date.now();
    try {
      const reckoning = await this.#reckoner.reckon();
      this.#stopped = 'stopped' in reckoning ? reckoning.stopped : null;
      if ('figures' in reckoning) this.#figures = openFigures(reckoning.figures);
    } catch (error) {
      this.#stopped = error instanceof Error ? error.message : String(error);
    } finally {
      const now = Date.now();
      this.#restUntil = now + Math.min(now - from, LONGEST_REST_MS);
    }
  }
}
