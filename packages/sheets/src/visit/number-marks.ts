/** The trees' numbers on a map: on the crown where there is room, else beside it with a line that leads to it. */
import { type Drawing, type GroundMark, onPaper, type TextStyle } from '../drawing.ts';
import type { SheetFonts } from '../pdf/sheet-fonts.ts';
import type { LabelRoom } from './label-room.ts';
import type { Stop } from './visit-stops.ts';

/** Sizes tried until all numbers find room, mm: 8.5 points and smaller. */
const SIZES_MM = [3, 2.7, 2.4, 2.1, 1.8];
/** How far from a crown's middle a number may stand, mm. */
const FARTHEST_MM = 40;
const DIRECTIONS = 16;

/**
 * Badges in the largest size in which all find room. A number that finds none in the smallest size is left out: the table
 * has it, and its crown stays on the map.
 */
export function numberMarks(
  stops: readonly Stop[],
  drawing: Drawing,
  { room, fonts }: { readonly room: LabelRoom; readonly fonts: SheetFonts },
): readonly GroundMark[] {
  let best: readonly Placed[] = [];
  for (const sizeMm of SIZES_MM) {
    const placed = placedAt(sizeMm, stops, drawing, { room, fonts });
    if (placed.length > best.length) best = placed;
    if (best.length === stops.length) break;
  }
  for (const { box } of best) room.take(box);
  return [...best.flatMap(leader), ...best.map(badge)];
}

interface Placed {
  readonly stop: Stop;
  readonly x: number;
  readonly y: number;
  readonly radiusMm: number;
  readonly sizeMm: number;
  readonly box: Float64Array;
  readonly isOff: boolean;
}

function placedAt(
  sizeMm: number,
  stops: readonly Stop[],
  drawing: Drawing,
  { room, fonts }: { readonly room: LabelRoom; readonly fonts: SheetFonts },
): readonly Placed[] {
  const taken: Placed[] = [];
  const perMm = drawing.scale / 1000;
  // Crowns with few ways out first would be better; walking order keeps neighbours' numbers on one side.
  for (const stop of stops) {
    const [px, py] = onPaper(drawing, stop.x, stop.y);
    const radiusMm = Math.max(
      0.68 * sizeMm,
      fonts.widthMm(String(stop.number), { sizeMm, weight: 'bold' }) / 2 + 0.2 * sizeMm,
    );
    for (const [dx, dy] of offsets(radiusMm)) {
      const box = squareAbout(px + dx, py + dy, radiusMm);
      const clear = taken.every((other) => apart(other, { x: px + dx, y: py + dy, radiusMm }, drawing));
      if (!clear || !room.isFree(box)) continue;
      taken.push({
        stop,
        x: stop.x + dx * perMm,
        y: stop.y - dy * perMm,
        radiusMm,
        sizeMm,
        box,
        isOff: dx !== 0 || dy !== 0,
      });
      break;
    }
  }
  return taken;
}

function* offsets(radiusMm: number): Generator<readonly [number, number]> {
  yield [0, 0];
  for (let reach = radiusMm * 1.4; reach <= FARTHEST_MM; reach += radiusMm * 0.8) {
    for (let k = 0; k < DIRECTIONS; k++) {
      const angle = (2 * Math.PI * k) / DIRECTIONS;
      yield [reach * Math.cos(angle), -reach * Math.sin(angle)];
    }
  }
}

function apart(other: Placed, own: { x: number; y: number; radiusMm: number }, drawing: Drawing): boolean {
  const [x, y] = onPaper(drawing, other.x, other.y);
  return Math.hypot(x - own.x, y - own.y) > other.radiusMm + own.radiusMm + 0.15;
}

function squareAbout(x: number, y: number, half: number): Float64Array {
  return Float64Array.of(x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half);
}

function leader({ stop, x, y, isOff }: Placed): readonly GroundMark[] {
  if (!isOff) return [];
  const line = Float64Array.of(stop.x, stop.y, x, y) as Extract<GroundMark, { mark: 'line' }>['line'];
  return [
    { mark: 'line', line, style: { stroke: { colour: '#ffffff', widthMm: 0.7 } } },
    { mark: 'line', line, style: { stroke: { colour: '#000000', widthMm: 0.25 } } },
  ];
}

/** White on black where the crown stains, black on white where not: told apart without the hatch as well. */
function badge({ stop, x, y, radiusMm, sizeMm }: Placed): GroundMark {
  const dark = stop.tree.dose > 0;
  const textStyle: TextStyle = { sizeMm, weight: 'bold', colour: dark ? '#ffffff' : '#000000' };
  const style = {
    fill: dark ? '#000000' : '#ffffff',
    stroke: { colour: dark ? '#ffffff' : '#000000', widthMm: 0.25 },
  };
  return { mark: 'badge', x, y, radiusMm, text: String(stop.number), style, textStyle };
}
