/** Opens the viewer in the system's Chromium for the browser journeys. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { ROOT } from './crownfall-process.ts';

/** A busy machine without a graphics card draws slowly. */
export const PATIENCE_MS = 180_000;

export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Addresses the page asked for. */
  readonly asked: string[];
  /** Errors of the page and its console. */
  readonly complaints: string[];
}

export interface PageOptions extends BrowserContextOptions {
  /** The first-run tour is left out unless it is wanted. */
  readonly tour?: boolean;
  /** How long the page may take for anything. */
  readonly patienceMs?: number;
}

/** A page with the map drawn. */
export async function openViewer(browser: Browser, url: string, options: PageOptions = {}): Promise<OpenPage> {
  const { tour = false, patienceMs = PATIENCE_MS, ...wish } = options;
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    // A quarter of the pixels: without a graphics card drawing them is most of a journey's time.
    deviceScaleFactor: 0.5,
    reducedMotion: 'reduce',
    locale: 'en-US',
    acceptDownloads: true,
    ...wish,
  });
  context.setDefaultTimeout(patienceMs);
  if (!tour) await context.addInitScript(SKIP_TOUR);
  const page = await context.newPage();
  const asked: string[] = [];
  const complaints: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  await page.goto(url);
  await drawn(page);
  return { page, context, asked, complaints };
}

const SKIP_TOUR = `
  const kept = JSON.parse(localStorage.getItem('crownfall-preferences') ?? '{}');
  localStorage.setItem('crownfall-preferences', JSON.stringify({ ...kept, tourSeen: true }));
`;

export const drawn = async (page: Page): Promise<void> => {
  await page.waitForSelector('canvas[data-drawn]');
};

/** Waits until records can be changed. */
export async function toOutlineBench(page: Page): Promise<void> {
  await page.getByRole('radio', { name: 'Outline', exact: true }).click();
  await page.waitForSelector('.tools');
}

const AXE = readFileSync(resolve(ROOT, 'node_modules/axe-core/axe.min.js'), 'utf8');

/** Faults that axe-core calls serious or critical. */
export async function seriousFaults(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    interface Found {
      readonly violations: readonly {
        readonly id: string;
        readonly impact: string;
        readonly nodes: readonly { readonly html: string }[];
      }[];
    }
    const { axe } = window as unknown as { axe: { run: () => Promise<Found> } };
    const { violations } = await axe.run();
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 160)}`);
  });
}
