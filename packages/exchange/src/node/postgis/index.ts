export { copyProject } from './copy-project.ts';
export { openPostgisStore, type PostgisOptions } from './open-postgis-store.ts';
