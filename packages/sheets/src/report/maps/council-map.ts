/** The map of the first page: the town to a round scale, its legend below, in the report's language and units. */
import type { Drawing, Frame, PaperMark } from '../../drawing.ts';
import { crownLegend, northArrow, scaleBar, stainLegend } from '../../furniture.ts';
import { middleOf } from '../../map-frame.ts';
import type { Surroundings } from '../../map-marks.ts';
import { MAP } from '../../palette.ts';
import { areaUnit } from '../../quantities.ts';
import { shownTown, townGround } from '../../town-map.ts';
import type { Reading } from '../reading.ts';

const LEGEND_MM = 25;
/** Blocks beyond these ranks carry no number: the table names the first, and numbers must stay legible. */
const NUMBERED = 12;

/** The drawing list, `widthMm` wide and `mapHeightMm` high with its legend. */
export function councilMap(
  { assessment, records, words, units }: Reading,
  { widthMm, mapHeightMm }: { readonly widthMm: number; readonly mapHeightMm: number },
): Drawing {
  const frame: Frame = { leftMm: 0, topMm: 0, widthMm, heightMm: mapHeightMm - LEGEND_MM };
  const shown = shownTown(assessment, frame, 'any');
  const first = assessment.blocks.slice(0, 3).map((block) => `${block.rank}. ${block.name ?? block.blockId}`);
  return {
    title: assessment.title,
    description: `${words.council.mapCaption(assessment.run.settings.priority.top_n)} ${first.join('; ')}.`,
    paper: { widthMm, heightMm: mapHeightMm },
    frame,
    land: MAP.land,
    scale: shown.scale,
    centre: middleOf(shown.bounds),
    ground: townGround(assessment, shown, { ...surroundingsOf(records), numbered: NUMBERED }),
    onPaper: legend(frame, shown.scale, { words: words.map, units }),
  };
}

/** What is drawn below and between: water and named streets. */
function surroundingsOf(records: Reading['records']): Surroundings {
  return records === undefined
    ? {}
    : { water: records.water.map(({ geometry }) => geometry), streets: records.streets };
}

function legend(
  { widthMm, heightMm }: Frame,
  scale: number,
  { words, units }: { readonly words: Reading['words']['map']; readonly units: Reading['units'] },
): readonly PaperMark[] {
  const top = heightMm;
  return [
    {
      mark: 'box',
      box: { leftMm: 0, topMm: 0, widthMm, heightMm },
      style: { stroke: { colour: MAP.ink, widthMm: 0.25 } },
    },
    ...stainLegend(0, top + 5.5, units, words.stained(areaUnit(units))),
    ...crownLegend(82, top + 3.8, [words.foul, words.clean, words.unrated]),
    ...scaleBar({ x: 0.6, y: top + 18.4, roomMm: 58, scale, units }),
    ...northArrow(76, top + 13.6),
  ];
}
