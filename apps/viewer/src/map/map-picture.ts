/** The map at print resolution: drawn once more, out of sight, with the dots that paper wants. */
import { Map as MapLibreMap, type StyleSpecification } from 'maplibre-gl';
import type { PictureWish } from '../session/map-door.ts';
import type { HatchImage } from './hatch.ts';

const SCREEN_DOTS_PER_INCH = 96;
/** Drawing may wait for imagery; then the picture is taken as it is. */
const PATIENCE_MS = 20_000;

/** A canvas of `width`·dpi/96 by `height`·dpi/96 pixels that shows about what the map on the screen shows. */
export async function mapPicture(
  { width, height, dotsPerInch }: PictureWish,
  style: StyleSpecification,
  like: MapLibreMap,
  hatch: (id: string) => HatchImage | undefined,
): Promise<HTMLCanvasElement> {
  const holder = document.createElement('div');
  Object.assign(holder.style, {
    position: 'fixed',
    left: '-20000px',
    top: '0',
    width: `${width}px`,
    height: `${height}px`,
  });
  document.body.append(holder);
  const map = new MapLibreMap({
    container: holder,
    style,
    bounds: like.getBounds(),
    attributionControl: false,
    interactive: false,
    fadeDuration: 0,
    pixelRatio: dotsPerInch / SCREEN_DOTS_PER_INCH,
    maxCanvasSize: [16384, 16384],
    canvasContextAttributes: { preserveDrawingBuffer: true },
  });
  map.setMissingStyleImageResolver((id) => {
    const found = hatch(id);
    if (found && !map.hasImage(id)) map.addImage(id, found.image, { pixelRatio: found.pixelRatio });
  });
  try {
    await new Promise<void>((done) => {
      map.once('idle', () => done());
      setTimeout(done, PATIENCE_MS);
    });
    const drawn = map.getCanvas();
    const copy = document.createElement('canvas');
    copy.width = drawn.width;
    copy.height = drawn.height;
    copy.getContext('2d')?.drawImage(drawn, 0, 0);
    return copy;
  } finally {
    map.remove();
    holder.remove();
  }
}
