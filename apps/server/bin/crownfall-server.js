#!/usr/bin/env node
/** Starts the server straight from its TypeScript source. */
import { register } from 'tsx/esm/api';

register();
const { main } = await import('../src/main.ts');
process.exitCode = await main(process.argv.slice(2));
