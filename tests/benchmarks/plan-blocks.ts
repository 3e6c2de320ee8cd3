/**
 * How long a plan takes: `npx tsx tests/benchmarks/plan-blocks.ts [BLOCKS]`. Invented blocks with four actions each, seeded; areas,
 * prices and windows spread as in the sample town. Prints seconds and the gap of one plan, the next units and the frontier,
 * without and with a floor for twelve districts.
 */
import { performance } from 'node:perf_hooks';
import {
  type ActionOffer,
  addDays,
  chooseWork,
  frontier,
  highsSolver,
  limitsOf,
  nextUnits,
  type WorkLimits,
  workProblem,
} from '@crownfall/priority';
import { RandomStream } from '@crownfall/statistics';
import { type Action, DEFAULT_SETTINGS } from '@crownfall/survey';
import loadHighs from 'highs';

const BLOCKS = Number(process.argv[2] ?? 5000);
const AS_OF = '2026-05-20';
const random = new RandomStream(20260520, 0);
const solve = highsSolver(await loadHighs());

const stained = new Map<string, number>();
const offers: ActionOffer[] = [];
for (let i = 0; i < BLOCKS; i++) {
  const blockId = `B${String(i).padStart(5, '0')}`;
  const areaM2 = 5 + 395 * random.uniform() ** 3;
  const pavementM2 = areaM2 * (4 + 12 * random.uniform());
  const trees = 1 + Math.floor(12 * random.uniform());
  const open = random.uniform() < 0.3;
  stained.set(blockId, areaM2);
  const add = (action: Action, avoidedM2: number, cost: number, crewHours: number, inWindow = 0): void => {
    offers.push({
      blockId,
      action,
      treeIds: [],
      areaM2: 0,
      avoidedM2: { value: avoidedM2, range80: null, range95: null },
      cost,
      crewHours,
      hoursInWindow: inWindow,
      lastDay: inWindow > 0 ? addDays(AS_OF, Math.floor(14 * random.uniform())) : null,
      forbidden: [],
    });
  };
  const [clean, cleanHours] = [140 + 1.1 * pavementM2, 1 + 0.012 * pavementM2];
  const [treat, treatHours] = [110 + 32 * trees, 1 + 0.3 * trees];
  add('clean', 0.9 * 0.6 * areaM2, clean, cleanHours);
  if (open) add('treat', 0.5 * areaM2 * random.uniform(), treat, treatHours, treatHours);
  if (open) add('treat_and_clean', 0.8 * areaM2, clean + treat, cleanHours + treatHours, treatHours);
  add('replace', (areaM2 / trees) * random.uniform(), 1600, 11);
}
const districts = Array.from({ length: 12 }, (_, d) => ({
  name: `D${d}`,
  blocks: [...stained.keys()].filter((_block, i) => i % 12 === d),
}));
const limits: WorkLimits = {
  ...limitsOf(AS_OF, DEFAULT_SETTINGS.plan),
  budget: 60 * BLOCKS,
  crewHoursPerWeek: 0.12 * BLOCKS,
  weeks: 6,
};

for (const [label, change] of [
  ['no districts', {}],
  ['12 districts, floor 0.5', { districts, districtFloor: 0.5 }],
] as const) {
  const given = { ...limits, ...change };
  const problemFor = (other: WorkLimits) => workProblem(offers, other, stained);
  const problem = problemFor(given);
  const [plan, seconds] = timed(() =>
    chooseWork(problem, solve, { gap: problem.columns.length > 1500 ? 5e-4 : 0, seconds: 20 }),
  );
  if (!plan.feasible) throw new Error('there is a plan');
  const by = { solve, options: { gap: 5e-3, seconds: 20 }, hoursPerDay: 8, points: 5 };
  const [, unitSeconds] = timed(() => nextUnits(problemFor, given, plan, by));
  const [points, frontierSeconds] = timed(() => frontier(problemFor, given, by));
  console.log(
    `${BLOCKS} blocks, ${problem.columns.length} columns, ${label}: plan ${seconds.toFixed(1)} s, gap ${(100 * plan.gap).toFixed(5)} %, ` +
      `over greedy ${(plan.avoidedM2 - (plan.greedyM2 ?? 0)).toFixed(1)} of ${plan.avoidedM2.toFixed(0)} m²; next units ${unitSeconds.toFixed(1)} s; ` +
      `frontier of ${points.length} points ${frontierSeconds.toFixed(1)} s`,
  );
}

function timed<T>(work: () => T): [T, number] {
  const from = performance.now();
  const done = work();
  return [done, (performance.now() - from) / 1000];
}
