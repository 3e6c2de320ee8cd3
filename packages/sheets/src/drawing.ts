/**
 * A drawing list: what is on the sheet, before it becomes SVG or PDF. Marks on the ground are in metres of a plane (x
 * east, y north) and reach the paper at the drawing's scale; marks on the paper are in millimetres from its top left.
 */
import type { Coordinates, Region } from '@crownfall/geometry';

export interface Drawing {
  /** Says what the picture shows, for those who cannot see it. */
  readonly title: string;
  readonly description: string;
  readonly paper: { readonly widthMm: number; readonly heightMm: number };
  /** Where on the paper the ground is shown; marks are cut off at its edge. */
  readonly frame: Frame;
  /** Colour of the ground where nothing is drawn. */
  readonly land: string;
  /** n of the scale 1 : n, true when printed at 100 %. */
  readonly scale: number;
  /** The plane position in the middle of the frame. */
  readonly centre: { readonly x: number; readonly y: number };
  readonly ground: readonly GroundMark[];
  readonly onPaper: readonly PaperMark[];
}

export interface Frame {
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface Stroke {
  readonly colour: string;
  readonly widthMm: number;
  readonly dashMm?: readonly number[];
}

/** Lines at 45°, `gapMm` apart; `crossed` adds those at 135°. */
export interface Hatch {
  readonly colour: string;
  readonly widthMm: number;
  readonly gapMm: number;
  readonly crossed: boolean;
}

export interface Style {
  readonly fill?: string;
  /** 0–1; 1 when absent. */
  readonly opacity?: number;
  readonly hatch?: Hatch;
  readonly stroke?: Stroke;
}

export interface TextStyle {
  readonly sizeMm: number;
  readonly colour: string;
  readonly weight?: 'normal' | 'bold';
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Colour of a rim that keeps the text legible over the map. */
  readonly halo?: string;
  /** Counter-clockwise. */
  readonly turnDeg?: number;
  /** Letter spacing, in parts of the size. */
  readonly spread?: number;
}

export type GroundMark =
  /** A picture (JPEG or PNG bytes) over the box from south-west to north-east. */
  | {
      readonly mark: 'image';
      readonly bytes: Uint8Array;
      readonly west: number;
      readonly south: number;
      readonly east: number;
      readonly north: number;
    }
  | { readonly mark: 'region'; readonly region: Region; readonly style: Style }
  | { readonly mark: 'line'; readonly line: Coordinates<'plane'>; readonly style: Style }
  | { readonly mark: 'label'; readonly x: number; readonly y: number; readonly text: string; readonly style: TextStyle }
  /** A disc of fixed size on paper with a text in it. */
  | {
      readonly mark: 'badge';
      readonly x: number;
      readonly y: number;
      readonly radiusMm: number;
      readonly text: string;
      readonly style: Style;
      readonly textStyle: TextStyle;
    };

export type PaperMark =
  | { readonly mark: 'image'; readonly box: Frame; readonly bytes: Uint8Array }
  | { readonly mark: 'line'; readonly points: readonly (readonly [number, number])[]; readonly style: Style }
  | { readonly mark: 'box'; readonly box: Frame; readonly style: Style }
  | { readonly mark: 'polygon'; readonly points: readonly (readonly [number, number])[]; readonly style: Style }
  | { readonly mark: 'disc'; readonly x: number; readonly y: number; readonly radiusMm: number; readonly style: Style }
  | { readonly mark: 'text'; readonly x: number; readonly y: number; readonly text: string; readonly style: TextStyle };

/** Millimetres on paper of a plane position. */
export function onPaper(drawing: Drawing, x: number, y: number): readonly [xMm: number, yMm: number] {
  const { frame, centre, scale } = drawing;
  const perMetre = 1000 / scale;
  return [
    frame.leftMm + frame.widthMm / 2 + (x - centre.x) * perMetre,
    frame.topMm + frame.heightMm / 2 - (y - centre.y) * perMetre,
  ];
}

/** The room on paper of a picture on the ground. */
export function imageBox(drawing: Drawing, image: Extract<GroundMark, { mark: 'image' }>): Frame {
  const [leftMm, topMm] = onPaper(drawing, image.west, image.north);
  const [rightMm, bottomMm] = onPaper(drawing, image.east, image.south);
  return { leftMm, topMm, widthMm: rightMm - leftMm, heightMm: bottomMm - topMm };
}
