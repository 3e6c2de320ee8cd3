/** The bloom as it is today: stage by pictures, larvae in galls, bees. */
import type { YesNoUnknown } from '@crownfall/survey';
import { goBack, useShown, useWalk, useWords } from '../doing/walk-session.ts';
import { changeStop } from '../doing/walking.ts';
import { BLOOM_STAGES, BloomPicture } from '../parts/bloom-picture.tsx';
import { Chips, ScreenHead } from '../parts/parts.tsx';

const ANSWERS: readonly YesNoUnknown[] = ['yes', 'no', 'unknown'];

export function BloomScreen() {
  const walk = useWalk();
  const { bloom, rate } = useWords();
  const stop = useShown((state) => state.stop);
  const treeId = useShown((state) => state.treeId ?? '');
  return (
    <main className="screen">
      <ScreenHead title={bloom.title(treeId)} />
      <Chips
        label={bloom.bees}
        of={ANSWERS}
        words={bloom.answers}
        value={stop?.bees ?? null}
        choose={(bees) => void changeStop(walk, { bees })}
      />
      {stop?.bees === 'yes' ? (
        <p className="warn" role="status">
          {bloom.beesSeen}
        </p>
      ) : null}
      <fieldset className="chips">
        <legend>{bloom.stage}</legend>
        <div className="stages">
          {BLOOM_STAGES.map((bbch) => (
            <button
              key={bbch}
              type="button"
              className="stage"
              aria-pressed={stop?.bbch === bbch}
              onClick={() => void changeStop(walk, { bbch: stop?.bbch === bbch ? null : bbch })}
            >
              <BloomPicture bbch={bbch} />
              <span>
                <b>{bbch}</b> {bloom.stages[bbch]}
              </span>
            </button>
          ))}
        </div>
      </fieldset>
      <Chips
        label={bloom.larvae}
        of={ANSWERS}
        words={bloom.answers}
        value={stop?.larvae ?? null}
        choose={(larvae) => void changeStop(walk, { larvae })}
      />
      <div className="thumb-bar">
        <button type="button" className="main wide" onClick={goBack}>
          {rate.done}
        </button>
      </div>
    </main>
  );
}
