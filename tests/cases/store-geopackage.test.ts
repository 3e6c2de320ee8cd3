/** The store in one GeoPackage file does what every store must do. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createProjectStore } from '@crownfall/exchange/node';
import { storeBehaviour } from './store-behaviour.ts';

storeBehaviour(async () => {
  const folder = await mkdtemp(join(tmpdir(), 'store-'));
  const store = await createProjectStore(join(folder, 'town.gpkg'));
  const remove = async (): Promise<void> => {
    await store.close();
    await rm(folder, { recursive: true });
  };
  return { store, remove };
});
