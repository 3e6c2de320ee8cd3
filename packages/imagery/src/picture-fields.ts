/** The tags of one tiled, deflated picture in a TIFF file, and the words before the first directory. */
import type { SampleType } from './raster.ts';
import type { TiffField } from './tiff-directory.ts';

/** Before the first directory: says in words how the file is laid out (GDAL's COG driver page, "Header ghost area"). */
const LAYOUT_LINES =
  'LAYOUT=IFDS_BEFORE_DATA\nBLOCK_ORDER=ROW_MAJOR\nBLOCK_LEADER=SIZE_AS_UINT4\n' +
  'BLOCK_TRAILER=LAST_4_BYTES_REPEATED\nKNOWN_INCOMPATIBLE_EDITION=NO\n ';
export const GHOST = `GDAL_STRUCTURAL_METADATA_SIZE=${String(LAYOUT_LINES.length).padStart(6, '0')} bytes\n${LAYOUT_LINES}`;

export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly tileSize: number;
  readonly type: SampleType;
  readonly bandCount: number;
  /** `PhotometricInterpretation`: 1 grey, 2 red, green, blue, 3 palette. */
  readonly photometric: 1 | 2 | 3;
  /** Of the bands beyond those of the photometric interpretation: 0 unspecified, 2 transparency. */
  readonly extraSamples: readonly number[];
  readonly colourMap?: readonly number[] | null;
  readonly nodata: number | null;
  readonly offsets: Uint32Array | Float64Array;
  readonly sizes: readonly number[] | Uint32Array;
  readonly overview: boolean;
  /** In a BigTIFF file. */
  readonly big?: boolean;
}

export function pictureFields(picture: Picture): TiffField[] {
  const { type, bandCount, tileSize, nodata, colourMap } = picture;
  const short = (tag: number, ...value: number[]): TiffField => ({ tag, type: 'short', value });
  const fields: TiffField[] = [
    { tag: 254, type: 'long', value: [picture.overview ? 1 : 0] },
    { tag: 256, type: 'long', value: [picture.width] },
    { tag: 257, type: 'long', value: [picture.height] },
    short(258, ...Array<number>(bandCount).fill(type.bits)),
    short(259, 8),
    short(262, picture.photometric),
    short(277, bandCount),
    short(284, 1),
    short(317, type.format === 3 ? 1 : 2),
    short(322, tileSize),
    short(323, tileSize),
    { tag: 324, type: picture.big ? 'long8' : 'long', value: picture.offsets },
    { tag: 325, type: 'long', value: picture.sizes },
    short(339, ...Array<number>(bandCount).fill(type.format)),
  ];
  if (picture.extraSamples.length > 0) fields.push(short(338, ...picture.extraSamples));
  if (picture.photometric === 3 && colourMap) fields.push(short(320, ...colourMap));
  if (nodata !== null) fields.push({ tag: 42113, type: 'ascii', value: nodataText(nodata) });
  return fields;
}

/** Names of bands, as GDAL's metadata tag holds them; a band without a name is left out. */
export function bandNameFields(names: readonly (string | null)[]): readonly TiffField[] {
  const items = names.flatMap((name, i) => {
    if (name === null) return [];
    const text = name
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll(/[^\x20-\x7e]/g, '?');
    return [`<Item name="DESCRIPTION" sample="${i}" role="description">${text}</Item>`];
  });
  if (items.length === 0) return [];
  return [{ tag: 42112, type: 'ascii', value: `<GDALMetadata>${items.join('')}</GDALMetadata>` }];
}

function nodataText(nodata: number): string {
  return Number.isNaN(nodata) ? 'nan' : String(nodata);
}
