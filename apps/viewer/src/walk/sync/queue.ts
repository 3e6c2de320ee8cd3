/** What waits to be sent, behind a port: the browser's database here, plain memory in tests. */
import type { Visit } from '@crownfall/exchange';

/** `differs`: the server knows this id with another content, and that one stands. `refused`: it does not take it as it is. */
type SendState = 'waiting' | 'sent' | 'differs' | 'refused';

export interface QueuedVisit {
  readonly visitId: string;
  readonly project: string;
  readonly visit: Visit;
  readonly sealedAt: string;
  readonly state: SendState;
  /** It may have reached the server. */
  readonly tried: boolean;
  /** Why it was refused. */
  readonly why: string;
  /** What the server holds under the same id. */
  readonly theirs: Visit | null;
}

export interface QueuedPhoto {
  readonly photoId: string;
  readonly project: string;
  readonly visitId: string;
  readonly takenAt: string;
  readonly photo: Blob;
  readonly state: 'waiting' | 'sent' | 'refused';
  readonly why: string;
}

export type VisitMark = Partial<Pick<QueuedVisit, 'state' | 'why' | 'theirs'>>;

export interface VisitQueue {
  /**
   * The oldest in state `waiting`, at most so many, marked as tried in the same breath: from then on they may have reached
   * the server, and are not taken back for correction.
   */
  claimVisits(most: number): Promise<readonly QueuedVisit[]>;
  /** Marks all or none. Resolves when it is on the device. */
  markVisits(marks: ReadonlyMap<string, VisitMark>): Promise<void>;
  /** Photos of visits that were sent. */
  waitingPhotos(): Promise<readonly QueuedPhoto[]>;
  markPhoto(photoId: string, mark: Pick<QueuedPhoto, 'state' | 'why'>): Promise<void>;
}
