/** The project's aerial picture beneath the map: shown or not, how bright, how dense. */
import { useEffect, useState } from 'react';
import { Label, Slider, SliderOutput, SliderThumb, SliderTrack, ToggleButton } from 'react-aria-components';
import { grouped } from '../language/quantities.ts';
import type { MapLook } from '../map/map-style.ts';
import { failureInWords, findingInWords, openPicture } from '../session/picture.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import type { AppState, ImageryLook } from '../state/app-state.ts';
import { derived } from '../state/store.ts';

/** What the map needs to draw it; null when it is not shown or not read yet. */
const mapLook = derived(
  (state: AppState) => [state.imageryLook, state.openedImagery] as const,
  (look, opened): MapLook['imagery'] =>
    look.shown && opened ? { ...opened, opacity: look.opacity, brightness: look.brightness } : null,
);

export const useImageryLook = (): MapLook['imagery'] => useApp(mapLook);

export function ImageryControl() {
  const session = useSession();
  const { store } = session;
  const [path] = useApp((state) => state.imagery);
  const place = useApp((state) => state.imageryPlace);
  const look = useApp((state) => state.imageryLook);
  const opened = useApp((state) => state.openedImagery);
  const language = useApp((state) => state.preferences.language);
  const { map } = useWords();
  const [failure, setFailure] = useState<unknown>(null);
  useEffect(() => {
    if (!look.shown || opened || !place || path === undefined) return;
    setFailure(null);
    openPicture(session).catch(setFailure);
  }, [look.shown, opened, place, path, session]);
  if (path === undefined) return null;
  const set = (part: Partial<ImageryLook>): void => store.change({ imageryLook: { ...look, ...part } });
  return (
    <div className="imagery-control" data-open={look.shown || undefined}>
      <ToggleButton className="button floating" isSelected={look.shown} onChange={(shown) => set({ shown })}>
        {map.imagery}
      </ToggleButton>
      {look.shown && failure === null ? (
        <>
          <LookSlider label={map.opacity} value={look.opacity} min={0} change={(opacity) => set({ opacity })} />
          <LookSlider
            label={map.brightness}
            value={look.brightness}
            min={-1}
            change={(brightness) => set({ brightness })}
          />
        </>
      ) : null}
      {look.shown && opened && opened.notes.length > 0 ? (
        <p role="status">{opened.notes.map((note) => findingInWords(note, language)).join(' ')}</p>
      ) : null}
      {look.shown && failure !== null ? (
        <p role="alert">{map.imageryFailed(failureInWords(failure, language))}</p>
      ) : null}
    </div>
  );
}

interface LookProps {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly change: (value: number) => void;
}

function LookSlider({ label, value, min, change }: LookProps) {
  return (
    <Slider className="slider small" minValue={min} maxValue={1} step={0.05} value={value} onChange={change}>
      <Label>{label}</Label>
      <SliderOutput>{`${grouped(100 * value, 0)}\u00a0%`}</SliderOutput>
      <SliderTrack>
        <SliderThumb />
      </SliderTrack>
    </Slider>
  );
}
