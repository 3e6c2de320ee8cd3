/** A drawing list as SVG text: millimetres, one path per run of equal styles, no scripts, no outside references. */
import { dataAddress } from './data-address.ts';
import {
  type Drawing,
  type Frame,
  type GroundMark,
  type Hatch,
  imageBox,
  onPaper,
  type PaperMark,
  type Style,
  type TextStyle,
} from './drawing.ts';
import { pathText } from './svg-path.ts';

const FONT = "Inter,'Noto Sans','DejaVu Sans',Helvetica,Arial,sans-serif";

/**
 * The drawing as an SVG document, the same text for the same drawing. Its width and height are the paper's millimetres, so
 * it prints true to scale at 100 %. Marks without extent leave nothing. Where several stand in one page, each needs a
 * `prefix` of its own for its ids.
 */
export function svgText(drawing: Drawing, prefix = ''): string {
  const { paper, frame } = drawing;
  const hatches = hatchesOf(drawing, prefix);
  const ground = groundText(drawing, hatches);
  const marks = drawing.onPaper.map((mark) => paperText(mark, hatches)).join('\n');
  const size = `width="${paper.widthMm}mm" height="${paper.heightMm}mm" viewBox="0 0 ${paper.widthMm} ${paper.heightMm}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img" aria-labelledby="${prefix}title ${prefix}about" font-family="${FONT}">`,
    `<title id="${prefix}title">${escaped(drawing.title)}</title><desc id="${prefix}about">${escaped(drawing.description)}</desc>`,
    `<defs><clipPath id="${prefix}frame"><rect x="${frame.leftMm}" y="${frame.topMm}" width="${frame.widthMm}" height="${frame.heightMm}"/></clipPath>`,
    ...[...hatches.entries()].map(([key, id]) => patternText(JSON.parse(key), id)),
    '</defs>',
    `<rect width="${paper.widthMm}" height="${paper.heightMm}" fill="#fff"/>`,
    `<g clip-path="url(#${prefix}frame)" stroke-linejoin="round">`,
    `<rect x="${frame.leftMm}" y="${frame.topMm}" width="${frame.widthMm}" height="${frame.heightMm}" fill="${drawing.land}"/>`,
    ground,
    '</g>',
    marks,
    '</svg>\n',
  ].join('\n');
}

type Hatches = ReadonlyMap<string, string>;

function hatchesOf(drawing: Drawing, prefix: string): Hatches {
  const styles = [...drawing.ground, ...drawing.onPaper].flatMap((mark) =>
    mark.mark === 'label' || mark.mark === 'text' || mark.mark === 'image' ? [] : [mark.style.hatch],
  );
  const keys = new Set(styles.filter((hatch) => hatch !== undefined).map((hatch) => JSON.stringify(hatch)));
  return new Map([...keys].map((key, i) => [key, `${prefix}hatch${i + 1}`]));
}

function patternText({ colour, widthMm, gapMm, crossed }: Hatch, id: string): string {
  const lines = crossed ? `M0 0H${gapMm}M0 0V${gapMm}` : `M0 0H${gapMm}`;
  const box = `width="${gapMm}" height="${gapMm}" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"`;
  return `<pattern id="${id}" ${box}><path d="${lines}" stroke="${colour}" stroke-width="${widthMm * 2}" fill="none"/></pattern>`;
}

/** Neighbours of one style become one path. */
function groundText(drawing: Drawing, hatches: Hatches): string {
  const out: string[] = [];
  let path = '';
  let style: Style | undefined;
  const flush = () => {
    if (path !== '' && style !== undefined) out.push(pathElement(path, style, hatches));
    path = '';
  };
  for (const mark of drawing.ground) {
    if (mark.mark === 'label' || mark.mark === 'badge' || mark.mark === 'image') {
      flush();
      out.push(mark.mark === 'image' ? imageText(imageBox(drawing, mark), mark.bytes) : labelText(drawing, mark));
      continue;
    }
    if (style === undefined || JSON.stringify(mark.style) !== JSON.stringify(style)) {
      flush();
      style = mark.style;
    }
    path += shapePath(drawing, mark);
  }
  flush();
  return out.join('\n');
}

function shapePath(drawing: Drawing, mark: Extract<GroundMark, { mark: 'region' | 'line' }>): string {
  if (mark.mark === 'line') return pathText(paperLine(drawing, mark.line), false);
  return mark.region.map((ring) => pathText(paperLine(drawing, ring), true)).join('');
}

function paperLine(drawing: Drawing, line: Float64Array): Float64Array {
  const out = new Float64Array(line.length);
  for (let i = 0; i + 1 < line.length; i += 2) [out[i], out[i + 1]] = onPaper(drawing, line[i], line[i + 1]);
  return out;
}

function pathElement(path: string, style: Style, hatches: Hatches): string {
  const body = `<path d="${path}" ${paint(style)}/>`;
  const hatch = style.hatch === undefined ? undefined : hatches.get(JSON.stringify(style.hatch));
  return hatch === undefined ? body : `${body}\n<path d="${path}" fill="url(#${hatch})"/>`;
}

function paint({ fill, opacity, stroke }: Style): string {
  const parts = [`fill="${fill ?? 'none'}"`];
  if (opacity !== undefined && opacity !== 1) parts.push(`fill-opacity="${opacity}"`);
  if (stroke !== undefined) parts.push(`stroke="${stroke.colour}" stroke-width="${stroke.widthMm}"`);
  if (stroke?.dashMm !== undefined) parts.push(`stroke-dasharray="${stroke.dashMm.join(' ')}"`);
  return parts.join(' ');
}

function labelText(drawing: Drawing, mark: Extract<GroundMark, { mark: 'label' | 'badge' }>): string {
  const [x, y] = onPaper(drawing, mark.x, mark.y);
  if (mark.mark === 'label') return textElement(x, y, mark.text, mark.style, CENTRED);
  const disc = `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mark.radiusMm}" ${paint(mark.style)}/>`;
  return disc + textElement(x, y, mark.text, { ...mark.textStyle, anchor: 'middle' }, CENTRED);
}

function imageText({ leftMm, topMm, widthMm, heightMm }: Frame, bytes: Uint8Array): string {
  const place = `x="${mm(leftMm)}" y="${mm(topMm)}" width="${mm(widthMm)}" height="${mm(heightMm)}"`;
  return `<image ${place} preserveAspectRatio="none" href="${dataAddress(bytes)}"/>`;
}

function paperText(mark: PaperMark, hatches: Hatches): string {
  if (mark.mark === 'image') return imageText(mark.box, mark.bytes);
  if (mark.mark === 'line')
    return pathElement(pathText(Float64Array.from(mark.points.flat()), false), mark.style, hatches);
  if (mark.mark === 'text') return textElement(mark.x, mark.y, mark.text, mark.style);
  if (mark.mark === 'disc')
    return `<circle cx="${mm(mark.x)}" cy="${mm(mark.y)}" r="${mm(mark.radiusMm)}" ${paint(mark.style)}/>`;
  if (mark.mark === 'polygon')
    return pathElement(pathText(Float64Array.from(mark.points.flat()), true), mark.style, hatches);
  const { leftMm, topMm, widthMm, heightMm } = mark.box;
  const path = `M${mm(leftMm)} ${mm(topMm)}h${mm(widthMm)}v${mm(heightMm)}h${mm(-widthMm)}z`;
  return pathElement(path, mark.style, hatches);
}

/** Lowers a text by half the height of its capitals, also when it is turned. */
const CENTRED = ' dy=".36em"';

function textElement(x: number, y: number, text: string, style: TextStyle, shift = ''): string {
  const parts = [`x="${mm(x)}" y="${mm(y)}" font-size="${style.sizeMm}" fill="${style.colour}"`];
  if (style.weight === 'bold') parts.push('font-weight="700"');
  if (style.anchor !== undefined && style.anchor !== 'start') parts.push(`text-anchor="${style.anchor}"`);
  if (style.spread !== undefined) parts.push(`letter-spacing="${mm(style.spread * style.sizeMm)}"`);
  if (style.turnDeg !== undefined) parts.push(`transform="rotate(${mm(-style.turnDeg)} ${mm(x)} ${mm(y)})"`);
  if (style.halo !== undefined) {
    parts.push(
      `stroke="${style.halo}" stroke-width="${mm(style.sizeMm * 0.28)}" paint-order="stroke" stroke-linejoin="round"`,
    );
  }
  return `<text ${parts.join(' ')}${shift}>${escaped(text)}</text>`;
}

function mm(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
