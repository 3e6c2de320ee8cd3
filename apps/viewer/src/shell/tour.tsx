/** A first look round, in five short steps; it covers nothing and can be left at any time. */
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { useApp, useSession, useWords } from '../session/session.ts';

export function Tour() {
  const { store } = useSession();
  const preferences = useApp((state) => state.preferences);
  const { tour } = useWords();
  const [at, setAt] = useState(0);
  const isOver = preferences.tourSeen;
  const leave = (): void => {
    setAt(0);
    store.change(({ preferences: kept }) => ({ preferences: { ...kept, tourSeen: true } }));
  };
  useEffect(() => {
    if (isOver) return;
    const onKey = ({ key }: KeyboardEvent): void => {
      if (key === 'Escape') leave();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
  if (isOver) return null;
  const step = tour.steps[at];
  const isLast = at === tour.steps.length - 1;
  const go = (to: number): void => {
    setAt(to);
    store.change({ bench: to === 3 ? 'outline' : 'weigh' });
  };
  return (
    <section className="tour" aria-label={tour.title}>
      <p className="tour-step">{tour.step(at + 1, tour.steps.length)}</p>
      <h2>{step.title}</h2>
      <p>{step.text}</p>
      <div className="button-row">
        {isLast ? null : (
          <Button className="button quiet" onPress={leave}>
            {tour.skip}
          </Button>
        )}
        {at > 0 ? (
          <Button className="button" onPress={() => go(at - 1)}>
            {tour.back}
          </Button>
        ) : null}
        <Button className="button first" onPress={() => (isLast ? leave() : go(at + 1))}>
          {isLast ? tour.done : tour.next}
        </Button>
      </div>
    </section>
  );
}
