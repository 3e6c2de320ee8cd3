/** Charts beside the ranking: how the stain is spread over the blocks, what changed since last season, how the fit agrees with plots. */
import { intervalChart, scatterChart } from '@crownfall/sheets';
import { useEffect, useState } from 'react';
import { CHARTS_EN, type ChartWords } from '../language/en-charts.ts';
import { CHARTS_ES } from '../language/es-charts.ts';
import { area, areaNumber, areaUnit, percent, type Units } from '../language/quantities.ts';
import type { BlockSummary } from '../project/project.ts';
import type { CalibrationShown } from '../reckoning/calibration-shown.ts';
import { loadSeason } from '../session/seasons.ts';
import { useApp, useSession, useUnits, useWords } from '../session/session.ts';
import { Chart } from '../shell/chart.tsx';
import { shownBlocks } from '../state/derived-state.ts';

const CHART_WORDS = { en: CHARTS_EN, es: CHARTS_ES } as const;

const useChartWords = (): ChartWords => CHART_WORDS[useApp((state) => state.preferences.language)];

export function ChartSheet() {
  return (
    <>
      <Spread />
      <SeasonChange />
      <CalibrationFit />
    </>
  );
}

/** Few blocks hold most of the stain: the sum over the blocks, greatest first. */
function Spread() {
  const blocks = useApp(shownBlocks);
  const units = useUnits();
  const charts = useChartWords();
  const sums = runningSums(blocks);
  const total = sums.at(-1) ?? 0;
  if (total === 0) return null;
  const half = sums.findIndex((sum) => sum >= total / 2) + 1;
  const svg = scatterChart({
    title: charts.spread(half, blocks.length),
    description: charts.spreadAbout,
    across: charts.spreadAcross,
    up: charts.spreadUp,
    points: [],
    lines: [{ points: [[0, 0], ...sums.map((sum, i): [number, number] => [i + 1, (100 * sum) / total])] }],
    within: { from: 0 },
  });
  const rows = sums.slice(0, ROWS_MOST).map((sum, i) => [String(i + 1), area(sum, units), percent(sum / total)]);
  const heads = [charts.spreadAcross, charts.stained, charts.spreadUp];
  return <Chart svg={svg} title={charts.spread(half, blocks.length)} heads={heads} rows={rows} />;
}

const ROWS_MOST = 50;

function runningSums(blocks: readonly BlockSummary[]): readonly number[] {
  let sum = 0;
  return blocks
    .map(({ stainedM2 }) => stainedM2.value)
    .sort((a, b) => b - a)
    .map((value) => {
      sum += value;
      return sum;
    });
}

/** Blocks that changed most are drawn. */
const CHANGES_DRAWN = 16;

function SeasonChange() {
  const session = useSession();
  const season = useApp((state) => state.earlierSeason);
  const blocks = useApp(shownBlocks);
  const asOf = useApp((state) => state.project?.run.asOf ?? '');
  const units = useUnits();
  const words = useWords();
  const charts = useChartWords();
  useEffect(() => void loadSeason(session), [session]);
  if (season === null) return <p role="status">{words.charts.wait}</p>;
  if (season === 'none') return <p>{words.charts.noSeason}</p>;
  const unit = inUnits(units);
  const changes = blocks
    .map((block) => ({
      label: block.name ?? block.blockId,
      now: block.stainedM2.value,
      was: season.stainedM2.get(block.blockId) ?? 0,
    }))
    .sort((a, b) => Math.abs(b.now - b.was) - Math.abs(a.now - a.was))
    .slice(0, CHANGES_DRAWN)
    .sort((a, b) => a.now - a.was - (b.now - b.was));
  const title = charts.change(season.asOf, asOf);
  const svg = intervalChart({
    title,
    description: charts.changeAbout(changes.length),
    note: charts.changeNote(season.asOf, asOf),
    across: `${charts.stained}, ${areaUnit(units)}`,
    anchor: 0,
    rows: changes.map(({ label, now, was }) => ({ label, value: unit(now), before: unit(was) })),
  });
  const rows = changes.map(({ label, now, was }) => [label, area(was, units), area(now, units)]);
  return <Chart svg={svg} title={title} heads={[words.scenarios.block, season.asOf, asOf]} rows={rows} />;
}

const inUnits =
  (units: Units) =>
  (areaM2: number): number =>
    Number(areaNumber(areaM2, units).replaceAll(',', '').replace('−', '-'));

function CalibrationFit() {
  const session = useSession();
  const can = useApp((state) => state.editing.can);
  const words = useWords();
  const charts = useChartWords();
  const [fit, setFit] = useState<CalibrationShown | null>(null);
  useEffect(() => {
    if (can === 'yes') void session.reckoner.ask('calibration', null).then(setFit, () => setFit(null));
  }, [can, session]);
  if (can !== 'yes') return null;
  if (fit === null) return <p role="status">{words.charts.wait}</p>;
  if (fit.k === null) return <p>{charts.noFit(fit.quadratsRead)}</p>;
  const most = Math.max(...fit.quadrats.flatMap(({ observed, fitted }) => [observed, fitted]));
  const title = charts.fit(fit.quadrats.length, kText(fit.k, fit.interval, charts));
  const svg = scatterChart({
    title,
    description: charts.fitAbout,
    across: charts.fitted,
    up: charts.observed,
    points: fit.quadrats.map(({ quadratId, observed, fitted }) => ({
      x: 100 * fitted,
      y: 100 * observed,
      label: quadratId,
    })),
    lines: [
      {
        points: [
          [0, 0],
          [100 * most, 100 * most],
        ],
        label: charts.asFitted,
        dashed: true,
      },
    ],
    within: { from: 0, to: 100 },
  });
  const rows = fit.quadrats.map(({ quadratId, observed, fitted }) => [quadratId, percent(fitted), percent(observed)]);
  return <Chart svg={svg} title={title} heads={[charts.quadrat, charts.fitted, charts.observed]} rows={rows} />;
}

function kText(k: number, [lower, upper]: readonly [number, number], charts: ChartWords): string {
  return charts.k(k.toFixed(2), lower.toFixed(2), upper.toFixed(2));
}
