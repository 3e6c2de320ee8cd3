/** The map layers as GeoJSON text: the very text of the files that `crownfall reckon` writes. */
import type { Assessment } from '@crownfall/assessment';
import { resultFiles } from '@crownfall/exchange';

export type ResultLayer = 'blocks' | 'pavement' | 'trees';

/** Blocks, pavement and trees by name. */
export function resultLayers(assessment: Assessment): Readonly<Record<ResultLayer, string>> {
  const files = resultFiles(assessment, { inputs: [], versions: {}, timings: {} });
  const text = (name: ResultLayer): string => {
    const file = files.find((each) => each.name === `${name}.geojson`);
    if (file === undefined) throw new Error(`the results hold no ${name}.geojson`);
    return [...file.text].join('');
  };
  return { blocks: text('blocks'), pavement: text('pavement'), trees: text('trees') };
}
