/** A request that is not fulfilled, for a reason the asker can act on. */

export class Refusal extends Error {
  readonly status: number;
  /** A word for programs; people read the message. */
  readonly code: string;
  /** What the answer carries beside the reason. */
  readonly facts: Readonly<Record<string, unknown>>;

  constructor(status: number, code: string, message: string, facts: Readonly<Record<string, unknown>> = {}) {
    super(message);
    this.status = status;
    this.code = code;
    this.facts = facts;
  }
}
