/** Visit sheets that go along with the packs: from the server, or made in this browser for the sample town. */
import type { Units } from '../../language/quantities.ts';
import type { Reckoner } from '../../reckoning/reckoner.ts';
import type { Language } from '../../state/app-state.ts';

export interface SheetLook {
  readonly language: Language;
  readonly units: Units;
}

export interface PackSheets {
  /** Bytes of a block's sheet, told before it is fetched; null: there is none to be had. */
  readonly size: (blockId: string, look: SheetLook) => Promise<number | null>;
  /** Rejects when it cannot be had now. */
  readonly sheet: (blockId: string, look: SheetLook) => Promise<Blob>;
}

const PAPER = { us: 'letter', metric: 'a4' } as const;

export function servedSheets(): PackSheets {
  const address = (blockId: string, { language, units }: SheetLook): string =>
    `/api/sheets/${encodeURIComponent(blockId)}?${new URLSearchParams({ paper: PAPER[units], language, units })}`;
  return {
    size: remembered(async (blockId, look) => {
      const response = await fetch(address(blockId, look), { method: 'HEAD' });
      return response.ok ? Number(response.headers.get('content-length')) : null;
    }),
    sheet: async (blockId, look) => {
      // Kept with the pack, not once more by the service worker.
      const response = await fetch(address(blockId, look), { headers: { 'crownfall-fresh': '1' } });
      if (!response.ok) throw new Error(`The server answered ${response.status} for the sheet of ${blockId}.`);
      return response.blob();
    },
  };
}

/** Sheets of the project that a reckoner has open. */
export function madeSheets(reckoner: Reckoner): PackSheets {
  const made = remembered((blockId, { language, units }) =>
    reckoner.ask('sheets', { blockIds: [blockId], paper: PAPER[units], language, units, link: null }),
  );
  return { size: async (blockId, look) => (await made(blockId, look)).size, sheet: made };
}

/** Asked once for the same block and look; what failed is asked again. */
function remembered<Told>(ask: (blockId: string, look: SheetLook) => Promise<Told>): typeof ask {
  const told = new Map<string, Promise<Told>>();
  return (blockId, look) => {
    const key = JSON.stringify([blockId, look.language, look.units]);
    const known = told.get(key);
    if (known) return known;
    const asked = ask(blockId, look);
    told.set(key, asked);
    asked.catch(() => told.delete(key));
    return asked;
  };
}
