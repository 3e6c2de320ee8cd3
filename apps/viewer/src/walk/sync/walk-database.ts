/** Packs, stops, visits and photos on the device. */
import { Dexie, type Table } from 'dexie';
import type { BlockPack } from '../pack/block-pack.ts';
import type { Stop } from '../stop/stop.ts';
import type { QueuedPhoto, QueuedVisit, VisitQueue } from './queue.ts';

export interface TileRow {
  /** `z/x/y`. */
  readonly tile: string;
  readonly project: string;
  readonly picture: Blob;
}

/** A block's visit sheet, as it was when the block was packed. */
export interface SheetRow {
  readonly project: string;
  readonly blockId: string;
  readonly pdf: Blob;
}

export class WalkDatabase extends Dexie {
  readonly packs!: Table<BlockPack, [string, string]>;
  readonly sheets!: Table<SheetRow, [string, string]>;
  readonly tiles!: Table<TileRow, [string, string]>;
  readonly stops!: Table<Stop, string>;
  readonly visits!: Table<QueuedVisit, string>;
  readonly photos!: Table<QueuedPhoto, string>;
  readonly facts!: Table<{ readonly name: string; readonly value: unknown }, string>;

  constructor() {
    super('crownfall-walk');
    this.version(1).stores({
      packs: '[project+blockId]',
      tiles: '[project+tile]',
      stops: 'stopId, [project+treeId]',
      visits: 'visitId, [project+state]',
      photos: 'photoId, visitId, [project+state]',
      facts: 'name',
    });
    this.version(2).stores({ sheets: '[project+blockId]' });
  }

  /** Blocks with their sheets and the order of the day: all or nothing. */
  async take(packs: readonly BlockPack[], sheets: readonly SheetRow[], day: readonly string[]): Promise<void> {
    await this.transaction('rw', this.packs, this.sheets, this.facts, async () => {
      await this.sheets.bulkDelete(packs.map(({ project, blockId }): [string, string] => [project, blockId]));
      await this.packs.bulkPut([...packs]);
      await this.sheets.bulkPut([...sheets]);
      for (const { project } of packs.slice(0, 1)) await this.note(`day:${project}`, day);
    });
  }

  /** The stop becomes a visit: both or neither. */
  async seal(stopId: string, visit: QueuedVisit): Promise<void> {
    await this.transaction('rw', this.stops, this.visits, async () => {
      await this.visits.put(visit);
      await this.stops.delete(stopId);
    });
  }

  /** Takes back a visit that never left, so that it can be corrected. False when it may have left. */
  async reopen(visitId: string, stop: Stop): Promise<boolean> {
    return this.transaction('rw', this.stops, this.visits, async () => {
      const row = await this.visits.get(visitId);
      if (!row || row.tried || row.state !== 'waiting') return false;
      await this.visits.delete(visitId);
      await this.stops.put(stop);
      return true;
    });
  }

  async fact<Value>(name: string): Promise<Value | undefined> {
    return (await this.facts.get(name))?.value as Value | undefined;
  }

  async note(name: string, value: unknown): Promise<void> {
    await this.facts.put({ name, value });
  }

  queue(project: string): VisitQueue {
    return {
      claimVisits: (most) =>
        this.transaction('rw', this.visits, async () => {
          const rows = await this.visits.where({ project, state: 'waiting' }).toArray();
          const oldest = rows.sort((a, b) => (a.sealedAt < b.sealedAt ? -1 : 1)).slice(0, most);
          const claimed = oldest.map((row) => ({ ...row, tried: true }));
          await this.visits.bulkPut(claimed);
          return claimed;
        }),
      markVisits: async (marks) => {
        await this.transaction('rw', this.visits, async () => {
          for (const [visitId, mark] of marks) await this.visits.update(visitId, mark);
        });
      },
      waitingPhotos: async () => {
        const photos = await this.photos.where({ project, state: 'waiting' }).toArray();
        const sent = new Set(await this.visits.where({ project, state: 'sent' }).primaryKeys());
        return photos.filter(({ visitId }) => sent.has(visitId));
      },
      markPhoto: async (photoId, mark) => void (await this.photos.update(photoId, mark)),
    };
  }
}
