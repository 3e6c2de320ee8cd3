/**
 * The disk or the network failed, which says nothing about the data: thrown at the edge with the system's own error as
 * `cause`.
 */
export class Outage extends Error {
  override readonly name = 'Outage';

  constructor(what: string, cause: unknown) {
    super(cause instanceof Error ? `${what}: ${cause.message}` : what, { cause });
  }
}

/** The code of a system error, `ENOENT`. */
export function systemCode(error: unknown): string | undefined {
  return typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : undefined;
}
