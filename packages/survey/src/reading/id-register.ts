/**
 * Hands out the ids of a layer so that each names one thing: nothing is lost and nothing counted twice. The first feature
 * of an id keeps it. A second with the same shape is the same thing again. A second with another shape is another thing:
 * it is kept under the id with `~2`, `~3`, … behind it. A feature without an id is named after its shape.
 */
export type Claim = { readonly is: 'first' | 'renamed' | 'made-up'; readonly id: string } | { readonly is: 'repeated' };

/** The shapes under one id; the first is named only when a second comes. */
interface ShapesOfId {
  readonly first: () => string;
  readonly known: Set<string>;
}

export class IdRegister {
  readonly #prefix: string;
  readonly #reserved: ReadonlySet<string>;
  readonly #shapes = new Map<string, ShapesOfId>();
  readonly #taken = new Set<string>();

  /** `reserved`: every id that the layer gives itself, so that no made one collides with a later row. */
  constructor(prefix: string, reserved: Iterable<string>) {
    this.#prefix = prefix;
    this.#reserved = new Set(reserved);
  }

  /** `shape` names the shape; it is asked only when the id alone does not settle the matter. */
  claim(given: string | undefined, shape: () => string): Claim {
    const id = given ?? `${this.#prefix}-${shape()}`;
    const seen = this.#shapes.get(id);
    if (seen === undefined) {
      this.#shapes.set(id, { first: shape, known: new Set() });
      this.#taken.add(id);
      return { is: given === undefined ? 'made-up' : 'first', id };
    }
    const own = shape();
    seen.known.add(seen.first());
    if (seen.known.has(own)) return { is: 'repeated' };
    seen.known.add(own);
    return { is: 'renamed', id: this.#next(id) };
  }

  #next(id: string): string {
    let n = 2;
    while (this.#taken.has(`${id}~${n}`) || this.#reserved.has(`${id}~${n}`)) n++;
    this.#taken.add(`${id}~${n}`);
    return `${id}~${n}`;
  }
}
