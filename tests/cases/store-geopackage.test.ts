/** The store in one GeoPackage file does what every store must do. */
import { join } from 'node:path';
import { createProjectStore } from '@crownfall/exchange/node';
import { temporaryFolder } from '../temporary-folder.ts';
import { storeBehaviour } from './store-behaviour.ts';

storeBehaviour(async () => {
  const folder = temporaryFolder('store');
  const store = await createProjectStore(join(folder, 'town.gpkg'));
  const remove = async (): Promise<void> => {
    await store.close();
  };
  return { store, remove };
});
