/** What a field worker did and saw at a tree or block: added once, never changed. */
export interface Visit {
  /** Made by the client (a UUID), so that sending it twice adds it once. */
  readonly visitId: string;
  readonly treeId?: string;
  readonly blockId?: string;
  /** Day, or instant in UTC. */
  readonly visitedOn: string;
  readonly visitor: string;
  /** What was done, in the trade's words: inspected, cleaned, treated, rated. */
  readonly did: string;
  readonly note?: string;
  /** What was found, as JSON; `visitFinds` reads it. */
  readonly details?: Readonly<Record<string, unknown>>;
}

type Fields = Readonly<Record<string, unknown>>;

/** The parts of a visit's details that the project knows; fields within are those of the layers, values still unchecked. */
export interface VisitFinds {
  readonly ratings: readonly Fields[];
  readonly quadrats: readonly Fields[];
  readonly bloom: readonly Fields[];
  readonly photos: readonly Fields[];
  /** The tree is not there. */
  readonly notFound: boolean;
  /** A tree that the project does not have: fields of a crown, with `lon` and `lat`. */
  readonly newTree: Fields | null;
  /** The host as seen. */
  readonly wrongSpecies: string | null;
  readonly treated: boolean;
}

/**
 * Reads a visit's details. Parts of another shape count as absent.
 * @example visitFinds({ …, details: { not_found: true } }).notFound // true
 */
export function visitFinds({ did, details = {} }: Visit): VisitFinds {
  const { new_tree: newTree, wrong_species: wrongSpecies } = details;
  const host = isFields(wrongSpecies) ? wrongSpecies.host : undefined;
  return {
    ratings: listOf(details.ratings),
    quadrats: listOf(details.quadrats),
    bloom: listOf(details.bloom),
    photos: listOf(details.photos),
    notFound: details.not_found === true,
    newTree: isFields(newTree) ? newTree : null,
    wrongSpecies: typeof host === 'string' && host.trim() !== '' ? host.trim() : null,
    treated: isFields(details.treated) || /\btreated\b/.test(did),
  };
}

/** The day of a visit, YYYY-MM-DD: that of its instant in UTC, or the day given. */
export function visitDay({ visitedOn }: Visit): string {
  return visitedOn.slice(0, 10);
}

function listOf(value: unknown): readonly Fields[] {
  return Array.isArray(value) ? value.filter(isFields) : [];
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
