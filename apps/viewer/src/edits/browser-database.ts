/** Edits, drafts, photos and opened files in IndexedDB, by project. */
import { Dexie, type Table } from 'dexie';
import type { ProjectPlace } from '../project/project-files.ts';
import type { DraftStore, EditLog, OutboxStore } from './edit-log.ts';
import type { Entry } from './history.ts';
import { NO_OUTBOX, type Outbox } from './outbox.ts';

interface EntryRow extends Entry {
  readonly project: string;
  readonly at_number: number;
}

export interface PhotoRow {
  readonly id: string;
  readonly project: string;
  readonly treeId: string;
  readonly takenAt: string;
  readonly photo: Blob;
}

export class BrowserDatabase extends Dexie {
  readonly entries!: Table<EntryRow, [string, number]>;
  readonly places!: Table<{ project: string; done: number }, string>;
  readonly outboxes!: Table<{ project: string; outbox: Outbox }, string>;
  readonly drafts!: Table<{ project: string; draft: unknown }, string>;
  readonly photos!: Table<PhotoRow, string>;
  readonly opened!: Table<{ key: string; place: ProjectPlace }, string>;

  constructor() {
    super('crownfall');
    this.version(1).stores({
      entries: '[project+at_number]',
      places: 'project',
      drafts: 'project',
      photos: 'id, [project+treeId]',
      opened: 'key',
    });
    this.version(2).stores({ outboxes: 'project' });
  }

  editLog(project: string): EditLog {
    const from = (at: number) => this.entries.where('[project+at_number]').between([project, at], [project, Infinity]);
    return {
      load: async () => {
        const rows = await from(0).toArray();
        const entries = rows.map(({ id, at, edit }) => ({ id: id ?? at, at, edit }));
        const done = (await this.places.get(project))?.done ?? entries.length;
        return { entries, done: Math.min(done, entries.length) };
      },
      append: (at, entry) =>
        this.transaction('rw', this.entries, this.places, async () => {
          await from(at).delete();
          await this.entries.put({ project, at_number: at, ...entry });
          await this.places.put({ project, done: at + 1 });
        }),
      moveTo: async (done) => void (await this.places.put({ project, done })),
    };
  }

  outboxStore(project: string): OutboxStore {
    return {
      load: async () => (await this.outboxes.get(project))?.outbox ?? NO_OUTBOX,
      save: async (outbox) => void (await this.outboxes.put({ project, outbox })),
    };
  }

  draftStore(project: string): DraftStore {
    return {
      load: async () => (await this.drafts.get(project))?.draft ?? null,
      save: async (draft) => void (await this.drafts.put({ project, draft })),
    };
  }
}
