/**
 * The import law. Data flows one way, so that a figure can be traced from the sheet back to the crown, and so that each
 * room can be tested, replaced or run in a browser by itself. `npm run law` checks it; tests/boundaries proves that a
 * forbidden import is caught.
 */

const { readdirSync, readFileSync } = require('node:fs');
const { join } = require('node:path');
const swc = require('@swc/core');

// The program parses all files alike; markup in .tsx must be asked for by name.
const { parseFileSync } = swc;
swc.parseFileSync = (file, options) => parseFileSync(file, { ...options, tsx: file.endsWith('.tsx') });

/** Which packages each package may import. What is not listed is forbidden. */
const MAY_IMPORT = {
  geometry: [],
  statistics: [],
  imagery: ['geometry', 'statistics'],
  survey: ['geometry'],
  stain: ['geometry', 'statistics', 'survey'],
  priority: ['statistics', 'survey', 'stain'],
  assessment: ['geometry', 'statistics', 'imagery', 'survey', 'stain', 'priority'],
  exchange: ['geometry', 'survey', 'assessment'],
  sheets: ['geometry', 'survey', 'assessment'],
};

const PURE = ['geometry', 'statistics', 'imagery', 'survey', 'stain', 'priority', 'assessment'];
const TEST = '[.](test|bench)[.]tsx?$';

/** The files that package.json names as doors: `packages/exchange/src/node.ts` and the like. */
function doors() {
  const rooms = readdirSync(join(__dirname, 'packages'));
  return rooms.flatMap((room) => {
    const { exports } = JSON.parse(readFileSync(join(__dirname, 'packages', room, 'package.json'), 'utf8'));
    const targets = typeof exports === 'string' ? [exports] : Object.values(exports).flatMap(targetsOf);
    return targets.map((target) => `^packages/${room}/${target.replace('./', '').replaceAll('.', '[.]')}$`);
  });
}

function targetsOf(entry) {
  return typeof entry === 'string' ? [entry] : Object.values(entry).flatMap(targetsOf);
}

/** A test may look from outside at what its room may not use (files, other rooms, oracles). */
const sourceOf = (room) => ({ path: `^packages/${room}/`, pathNot: TEST });

const roomRules = Object.entries(MAY_IMPORT).map(([room, allowed]) => ({
  name: `${room}-imports-only-what-it-may`,
  comment: `Data flows one way; ${room} may import ${allowed.length ? allowed.join(', ') : 'no other room'}. If it needs more, the thing wanted lives in the wrong room.`,
  severity: 'error',
  from: sourceOf(room),
  to: { path: '^(packages|apps|sample-geo|tests|scripts)/', pathNot: `^packages/(${[room, ...allowed].join('|')})/` },
}));

module.exports = {
  forbidden: [
    ...roomRules,
    {
      name: 'no-cycles',
      comment:
        'Two files that need each other are one file, or a third is missing; a cycle also makes load order matter.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'apps-stand-alone',
      comment:
        'Apps are separate programs; what two of them share belongs in a package. They meet through files and HTTP.',
      severity: 'error',
      from: { path: '^apps/([^/]+)/', pathNot: TEST },
      to: { path: '^(apps|sample-geo|tests|scripts)/', pathNot: '^apps/$1/' },
    },
    {
      name: 'through-the-door',
      comment:
        'A room is entered by its door (index.ts, or a subpath its package.json exports), so that its inside can change.',
      severity: 'error',
      from: { path: '^(packages|apps)/([^/]+)/', pathNot: TEST },
      to: { path: '^packages/([^/]+)/', pathNot: ['^$1/$2/', ...doors()] },
    },
    {
      name: 'by-name-not-by-path',
      comment:
        'Another room is imported by its name; a relative path would pass the door by and break when a room moves.',
      severity: 'error',
      from: { path: '^(packages|apps)/([^/]+)/', pathNot: TEST },
      to: { path: '^(packages|apps)/', pathNot: '^$1/$2/', dependencyTypesNot: ['aliased-workspace'] },
    },
    {
      name: 'pure-rooms-touch-no-machine',
      comment:
        'Up to assessment everything runs alike in Node, a browser and a worker: no files, network, process or clock.',
      severity: 'error',
      from: { path: `^packages/(${PURE.join('|')})/`, pathNot: TEST },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'pure-rooms-draw-nothing',
      comment: 'Map, page and server libraries belong to apps; figures must not depend on a screen.',
      severity: 'error',
      from: { path: `^packages/(${PURE.join('|')})/`, pathNot: TEST },
      to: { path: 'node_modules/(maplibre-gl|fastify|@fastify|commander|vite|react|pdfkit|better-sqlite3)/' },
    },
    {
      name: 'tests-stay-outside',
      comment: 'Shipped code must not lean on test code or test libraries.',
      severity: 'error',
      from: { path: '^(packages|apps)/', pathNot: TEST },
      to: { path: [TEST, 'node_modules/(vitest|fast-check|playwright-core|axe-core|@turf)/'] },
    },
    {
      name: 'resolvable',
      comment: 'An import that resolves to nothing fails only on the machine of whoever runs it.',
      severity: 'error',
      from: {},
      // Vite resolves the first kind; `geojson` is types only, from @types/geojson.
      to: { couldNotResolve: true, pathNot: '[?](worker|url)|^geojson$' },
    },
    {
      name: 'declared',
      comment: 'A library that package.json does not name is there by accident and will go by accident.',
      severity: 'error',
      from: { path: '^(packages|apps)/', pathNot: TEST },
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown'] },
    },
  ],
  options: {
    // TypeScript 7 has no parser API for other programs; swc reads the same syntax, type imports included.
    parser: 'swc',
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(build|apps/[^/]+/dist)/' },
    combinedDependencies: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'],
    },
  },
};
