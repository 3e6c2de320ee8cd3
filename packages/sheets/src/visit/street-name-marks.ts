/** Street names along their streets, where nothing else is written. */
import { type LocalPlane, reversed } from '@crownfall/geometry';
import { type Drawing, type GroundMark, onPaper, type TextStyle } from '../drawing.ts';
import type { Bounds } from '../map-frame.ts';
import { labelPlaces } from '../map-marks.ts';
import { textCorners } from '../pdf/lay-text.ts';
import type { SheetFonts } from '../pdf/sheet-fonts.ts';
import type { LabelRoom } from './label-room.ts';
import type { VisitRecords } from './visit-stops.ts';

const NAME: TextStyle = { sizeMm: 2.9, colour: '#000000', anchor: 'middle', halo: '#ffffff', spread: 0.03 };

/** Each street's name once, clear of all taken rooms; off the boxes to avoid if it can be, and near the middle of the map. */
export function streetNameMarks(
  { records, plane, fonts }: { readonly records: VisitRecords; readonly plane: LocalPlane; readonly fonts: SheetFonts },
  drawing: Drawing,
  { shown, avoid }: { readonly shown: Bounds; readonly avoid: readonly Bounds[] },
  room: LabelRoom,
): readonly GroundMark[] {
  const view = { ...shown, ...drawing.centre, metresPerMm: drawing.scale / 1000 };
  const byName = new Map<string, Float64Array[]>();
  for (const { name, lines } of records.streets) {
    if (name !== undefined)
      byName.set(name, [...(byName.get(name) ?? []), ...lines.map((line) => plane.forward(line))]);
  }
  const covered = ({ x, y }: { readonly x: number; readonly y: number }) =>
    avoid.filter((box) => x > box.minX && x < box.maxX && y > box.minY && y < box.maxY).length;
  const marks: GroundMark[] = [];
  for (const [text, lines] of byName) {
    const places = lines.flatMap((line) => labelPlaces(line, view));
    for (const place of places.toSorted((p, q) => covered(p) - covered(q) || p.away - q.away)) {
      const style = { ...NAME, turnDeg: place.turnDeg };
      const [x, y] = onPaper(drawing, place.x, place.y);
      const corners = textCorners({ x, y, text, style }, fonts, true);
      if (!room.isFree(corners)) continue;
      room.take(corners);
      marks.push(strip(corners, drawing), { mark: 'label', x: place.x, y: place.y, text, style });
      break;
    }
  }
  return marks;
}

/** Pales lines below the name, which would strike it through between its letters. */
function strip(corners: Float64Array, { frame, centre, scale }: Drawing): GroundMark {
  const region = corners.map((mm, i) => {
    const fromMiddle = i % 2 === 0 ? mm - frame.leftMm - frame.widthMm / 2 : frame.topMm + frame.heightMm / 2 - mm;
    return (i % 2 === 0 ? centre.x : centre.y) + (fromMiddle * scale) / 1000;
  });
  return { mark: 'region', region: [reversed(region)], style: { fill: '#ffffff', opacity: 0.8 } };
}
