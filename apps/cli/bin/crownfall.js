#!/usr/bin/env node
/** Starts the crownfall command straight from its TypeScript source: nothing to build, nothing to go stale. */
import { register } from 'tsx/esm/api';

register();
const { main } = await import('../src/main.ts');
process.exitCode = await main(process.argv.slice(2));
