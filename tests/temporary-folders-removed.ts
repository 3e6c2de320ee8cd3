/** Set up for every test file: its temporary folders go after its last test and after its own hooks. */
import { afterAll } from 'vitest';
import { removeTemporaryFolders } from './temporary-folder.ts';

afterAll(removeTemporaryFolders);
