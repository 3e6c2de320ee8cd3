/** A place said by the cross on the map, or by the phone's position. */
import { useShown, useUnits, useWalk } from '../doing/walk-session.ts';
import { lengthOf } from '../parts/quantities-shown.ts';

interface PlaceProps {
  readonly how: string;
  readonly here: string;
}

export function PlaceOnMap({ how, here }: PlaceProps) {
  const walk = useWalk();
  const units = useUnits();
  const position = useShown((state) => state.position);
  return (
    <div className="place">
      <p>{how}</p>
      {position ? (
        <button type="button" className="plain" onClick={() => walk.mapCentre?.(position.at)}>
          {here} (± {lengthOf(position.accuracyM, units)})
        </button>
      ) : null}
    </div>
  );
}
