/** What this room uses of two libraries whose published types ask for Node's. */

declare module 'pdfkit' {
  import type { Font } from 'fontkit';

  export interface StructureOptions {
    readonly title?: string;
    readonly lang?: string;
    readonly alt?: string;
    readonly actual?: string;
    readonly bbox?: readonly [left: number, top: number, right: number, bottom: number];
    readonly placement?: string;
    readonly scope?: 'Column' | 'Row';
  }

  export interface StructureElement {
    add(child: StructureElement | StructureContent | (() => void)): this;
    end(): void;
  }

  export interface StructureContent {
    readonly refs: readonly unknown[];
  }

  export interface Outline {
    addItem(title: string): Outline;
  }

  export class PDFDocument {
    constructor(options: {
      readonly autoFirstPage: boolean;
      readonly tagged: boolean;
      readonly displayTitle: boolean;
      readonly lang: string;
      readonly pdfVersion: '1.7';
      readonly compress: boolean;
      readonly font: null;
      readonly info: Readonly<Record<string, string | Date>>;
    });
    readonly outline: Outline;
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    struct(
      type: string,
      options: StructureOptions,
      children?: readonly (StructureElement | StructureContent | (() => void))[],
    ): StructureElement;
    addStructure(element: StructureElement): this;
    markContent(tag: 'Artifact', options?: { readonly type: string }): this;
    markStructureContent(tag: string): StructureContent;
    endMarkedContent(): this;
    save(): this;
    restore(): this;
    scale(factor: number): this;
    rotate(deg: number, options: { readonly origin: readonly [number, number] }): this;
    transform(a: number, b: number, c: number, d: number, e: number, f: number): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    closePath(): this;
    rect(x: number, y: number, width: number, height: number): this;
    circle(x: number, y: number, radius: number): this;
    path(data: string): this;
    clip(): this;
    lineWidth(width: number): this;
    lineJoin(join: 'round' | 'miter'): this;
    lineCap(cap: 'round' | 'butt'): this;
    dash(lengths: readonly number[]): this;
    undash(): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    fillOpacity(opacity: number): this;
    fill(): this;
    stroke(): this;
    fillAndStroke(): this;
    registerFont(name: string, font: Font): this;
    font(name: string): this;
    fontSize(size: number): this;
    text(text: string, x: number, y: number, options: Readonly<Record<string, unknown>>): this;
    image(bytes: Uint8Array, x: number, y: number, size: { readonly width: number; readonly height: number }): this;
    link(
      x: number,
      y: number,
      width: number,
      height: number,
      url: string,
      options: { readonly structParent: StructureElement; readonly Contents: object },
    ): this;
    end(): void;
  }
}

declare module 'pdfkit/output' {
  import type { PDFDocument } from 'pdfkit';

  export function toBytes(document: PDFDocument): Promise<Uint8Array>;
}

declare module 'fontkit' {
  export interface Glyph {
    readonly path: { toSVG(): string };
  }

  export interface GlyphRun {
    readonly advanceWidth: number;
    readonly glyphs: readonly Glyph[];
    readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  }

  export interface Font {
    readonly unitsPerEm: number;
    layout(text: string): GlyphRun;
    hasGlyphForCodePoint(codePoint: number): boolean;
  }

  export function create(bytes: Uint8Array): Font;
}
