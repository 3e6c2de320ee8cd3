/** Run by formats-streaming.test.ts in a process of its own: converts one layer and prints what that took. */
import { convertLayer } from '@crownfall/exchange/node';

const [from, to] = process.argv.slice(2);
const idle = process.resourceUsage().maxRSS;
const started = performance.now();
const { count, findings } = await convertLayer(from, to);
const seconds = (performance.now() - started) / 1000;
// Kilobytes, whatever the platform (Node's documentation of resourceUsage).
const peak = process.resourceUsage().maxRSS;
process.stdout.write(
  JSON.stringify({ count, findings: findings.length, seconds, idleMb: idle / 1024, peakMb: peak / 1024 }),
);
