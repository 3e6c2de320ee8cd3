/**
 * How long a walking order takes, beside the plain nearest-next walk over the same costs: `npx tsx tests/benchmarks/walking-order.ts`.
 * Trees of the demo town nearest to its middle, the town's streets, seeded by nothing: there is no chance in it.
 */
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { readProject } from '@crownfall/exchange/node';
import { equalAreaPlane, walkingOrder } from '@crownfall/geometry';
import { readSurvey } from '@crownfall/survey';

const REPEATS = 15;

async function measure(): Promise<void> {
  const { survey } = readSurvey(await readProject(join(import.meta.dirname, '../../sample-geo')));
  const plane = equalAreaPlane(survey.trees.map(({ at }) => Float64Array.of(at.lon, at.lat)));
  const streets = survey.streets.flatMap(({ lines }) => lines.map((line) => plane.forward(line)));
  const trees = survey.trees
    .map(({ at }) => plane.forward(Float64Array.of(at.lon, at.lat)))
    .map(([x, y]) => ({ x, y }))
    .sort((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y));
  console.log('trees  streets  ms min  median  ms of processor, median  metres, short walk  nearest next  ratio');
  for (const count of [20, 60, 200]) {
    const places = trees.slice(0, count);
    for (const lines of [[], streets]) {
      const times: number[] = [];
      const worked: number[] = [];
      let order: readonly number[] = [];
      for (let k = 0; k < REPEATS; k++) {
        const [since, before] = [performance.now(), process.cpuUsage()];
        order = walkingOrder(places, { streets: lines });
        if (k <= 2) continue;
        times.push(performance.now() - since);
        // What the program itself took: on a busy machine the clock tells more.
        worked.push(process.cpuUsage(before).user / 1000);
      }
      for (const each of [times, worked]) each.sort((a, b) => a - b);
      const own = straight(places, order);
      const peer = straight(places, nearestNext(places));
      const middle = [times, worked].map((each) => each[each.length >> 1].toFixed(1));
      const cells = [count, lines.length, times[0].toFixed(1), ...middle];
      console.log([...cells, own.toFixed(0), peer.toFixed(0), (own / peer).toFixed(2)].join('  '));
    }
  }
}

type Point = { readonly x: number; readonly y: number };

function straight(places: readonly Point[], order: readonly number[]): number {
  return order.slice(1).reduce((sum, to, i) => {
    const [a, b] = [places[order[i]], places[to]];
    return sum + Math.hypot(a.x - b.x, a.y - b.y);
  }, 0);
}

function nearestNext(places: readonly Point[]): readonly number[] {
  const left = new Set(places.keys());
  const order = [0];
  left.delete(0);
  while (left.size > 0) {
    const here = places[order[order.length - 1]];
    const away = (i: number) => Math.hypot(places[i].x - here.x, places[i].y - here.y);
    const next = [...left].reduce((best, i) => (away(i) < away(best) ? i : best));
    order.push(next);
    left.delete(next);
  }
  return order;
}

void measure();
