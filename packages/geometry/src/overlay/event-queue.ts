/** A binary heap of events ordered by x. An event is a whole number; what it means is the sweep's affair. */
export class EventQueue {
  size = 0;
  private x = new Float64Array(256);
  private event = new Int32Array(256);

  clear(): void {
    this.size = 0;
  }

  /** The least x; ∞ when there is no event. */
  get nextX(): number {
    return this.size > 0 ? this.x[0] : Infinity;
  }

  get nextEvent(): number {
    return this.event[0];
  }

  push(x: number, event: number): void {
    if (this.size === this.x.length) {
      this.grow();
    }
    let hole = this.size++;
    while (hole > 0) {
      const parent = (hole - 1) >> 1;
      if (this.x[parent] <= x) {
        break;
      }
      this.x[hole] = this.x[parent];
      this.event[hole] = this.event[parent];
      hole = parent;
    }
    this.x[hole] = x;
    this.event[hole] = event;
  }

  removeNext(): void {
    this.size--;
    if (this.size > 0) {
      this.replaceNext(this.x[this.size], this.event[this.size]);
    }
  }

  /** Takes the next event away and puts another in, in one pass. */
  replaceNext(x: number, event: number): void {
    const { size } = this;
    let hole = 0;
    for (let child = 1; child < size; child = 2 * hole + 1) {
      if (child + 1 < size && this.x[child + 1] < this.x[child]) {
        child++;
      }
      if (this.x[child] >= x) {
        break;
      }
      this.x[hole] = this.x[child];
      this.event[hole] = this.event[child];
      hole = child;
    }
    this.x[hole] = x;
    this.event[hole] = event;
  }

  private grow(): void {
    const x = new Float64Array(2 * this.x.length);
    const event = new Int32Array(2 * this.event.length);
    x.set(this.x);
    event.set(this.event);
    this.x = x;
    this.event = event;
  }
}
