/** The ports behind which edits are kept: here the browser's own database. */
import type { Entry, History } from './history.ts';
import type { Outbox } from './outbox.ts';

export interface EditLog {
  load(): Promise<History>;
  /** Makes `entry` number `at` (from 0) and forgets any that stood there or later. Resolves when it is on disk. */
  append(at: number, entry: Entry): Promise<void>;
  /** Notes how many entries are in force. */
  moveTo(done: number): Promise<void>;
}

/** What is drawn or typed but not saved as an edit yet: kept so that a crash loses nothing. */
export interface DraftStore {
  load(): Promise<unknown>;
  save(draft: unknown): Promise<void>;
}

/** What waits to be sent to the server's store. */
export interface OutboxStore {
  load(): Promise<Outbox>;
  save(outbox: Outbox): Promise<void>;
}
