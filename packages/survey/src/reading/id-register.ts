/**
 * Hands out the ids of a layer so that each names one thing: nothing is lost and nothing counted twice. The first feature
 * of an id keeps it. A second with the same shape is the same thing again. A second with another shape is another thing:
 * it is kept under the id with `~2`, `~3`, … behind it. A feature without an id is named after its shape.
 */
export type Claim = { readonly is: 'first' | 'renamed' | 'made-up'; readonly id: string } | { readonly is: 'repeated' };

export class IdRegister {
  readonly #prefix: string;
  readonly #reserved: ReadonlySet<string>;
  readonly #shapes = new Map<string, Set<string>>();
  readonly #taken = new Set<string>();

  /** `reserved`: every id that the layer gives itself, so that no made one collides with a later row. */
  constructor(prefix: string, reserved: Iterable<string>) {
    this.#prefix = prefix;
    this.#reserved = new Set(reserved);
  }

  claim(given: string | undefined, shape: string): Claim {
    const id = given ?? `${this.#prefix}-${shape}`;
    const shapes = this.#shapes.get(id);
    if (shapes === undefined) {
      this.#shapes.set(id, new Set([shape]));
      this.#taken.add(id);
      return { is: given === undefined ? 'made-up' : 'first', id };
    }
    if (shapes.has(shape)) return { is: 'repeated' };
    shapes.add(shape);
    return { is: 'renamed', id: this.#next(id) };
  }

  #next(id: string): string {
    let n = 2;
    while (this.#taken.has(`${id}~${n}`) || this.#reserved.has(`${id}~${n}`)) n++;
    this.#taken.add(`${id}~${n}`);
    return `${id}~${n}`;
  }
}
