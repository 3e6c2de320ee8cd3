/** Mouse and touch on the sketch: taps place vertices, handles are dragged, a handle between two becomes a vertex. */
import type { Map as MapLibreMap, MapMouseEvent, MapTouchEvent, PointLike } from 'maplibre-gl';
import type { Position } from '../outline/sketch.ts';

export interface SketchEvents {
  /** True while taps belong to the sketch. */
  readonly drawing: () => boolean;
  readonly placed: (at: Position) => void;
  readonly vertexTapped: (index: number) => void;
  readonly vertexRemoved: (index: number) => void;
  /** `index` null: the trunk. */
  readonly dragStarted: (index: number | null) => void;
  readonly dragged: (index: number | null, to: Position) => void;
  readonly dropped: () => void;
  /** A handle between two vertices was taken hold of; the index of the new vertex. */
  readonly inserted: (after: number, at: Position) => number;
  /** A place nearby that the point should fall on, else the point. */
  readonly snapped: (at: Position, exact: boolean) => Position;
}

/** Fingers are broader than arrows. */
const REACH_PX = { mouse: 7, touch: 18 };

type PointerEvent = MapMouseEvent | MapTouchEvent;

export function followPointer(map: MapLibreMap, events: SketchEvents): void {
  let held: { readonly index: number | null; moved: boolean } | null = null;

  const start = (event: PointerEvent): void => {
    if (!events.drawing() || ('points' in event && event.points.length > 1)) return;
    const handle = handleAt(map, event);
    if (!handle) return;
    event.preventDefault();
    const { kind, index } = handle;
    if (kind === 'middle') held = { index: events.inserted(index, positionOf(event)), moved: true };
    else held = { index: kind === 'trunk' ? null : index, moved: false };
    events.dragStarted(held.index);
  };
  const move = (event: PointerEvent): void => {
    if (!held) return;
    event.preventDefault();
    held.moved = true;
    events.dragged(held.index, events.snapped(positionOf(event), event.originalEvent.altKey));
  };
  const end = (): void => {
    if (!held) return;
    if (!held.moved && held.index !== null) events.vertexTapped(held.index);
    events.dropped();
    held = null;
  };
  map.on('mousedown', start);
  map.on('touchstart', start);
  map.on('mousemove', move);
  map.on('touchmove', move);
  map.on('mouseup', end);
  map.on('touchend', end);
  map.on('touchcancel', end);
  map.on('click', (event) => {
    if (!events.drawing() || handleAt(map, event)) return;
    events.placed(events.snapped(positionOf(event), event.originalEvent.altKey));
  });
  map.on('contextmenu', (event) => {
    const handle = events.drawing() ? handleAt(map, event) : null;
    if (handle?.kind !== 'vertex') return;
    event.preventDefault();
    events.vertexRemoved(handle.index);
  });
  for (const layer of ['sketch-handle', 'sketch-middle']) {
    map.on('mousemove', layer, () => {
      map.getCanvas().style.cursor = 'move';
    });
  }
}

const positionOf = ({ lngLat }: PointerEvent): Position => [lngLat.lng, lngLat.lat];

function handleAt(map: MapLibreMap, { point, originalEvent }: PointerEvent) {
  const reach = 'touches' in originalEvent || isTouch(originalEvent) ? REACH_PX.touch : REACH_PX.mouse;
  const box: [PointLike, PointLike] = [
    [point.x - reach, point.y - reach],
    [point.x + reach, point.y + reach],
  ];
  const found = map.queryRenderedFeatures(box, { layers: ['sketch-handle', 'sketch-middle'] });
  const nearest = found[0];
  if (!nearest) return null;
  const { kind, index } = nearest.properties;
  return { kind: kind as 'vertex' | 'middle' | 'trunk', index: Number(index ?? 0) };
}

const isTouch = (event: Event): boolean => 'pointerType' in event && event.pointerType === 'touch';
