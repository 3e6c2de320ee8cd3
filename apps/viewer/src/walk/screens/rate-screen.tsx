/** Rating by steps: no typing, one thumb. */
import { CAUSES, CONFIDENCES, GALL_LOADS } from '@crownfall/survey';
import { missingFrom } from '../../outline/rating-draft.ts';
import { goBack, useShown, useWalk, useWords } from '../doing/walk-session.ts';
import { changeStop } from '../doing/walking.ts';
import { Chips, ManyChips, ScreenHead, Stepper } from '../parts/parts.tsx';
import { pctOf } from '../parts/quantities-shown.ts';
import { EVIDENCE, isRated, type Stop, steppedPct } from '../stop/stop.ts';
import { draftOfStop } from '../stop/visit-of-stop.ts';

const PRESETS = [0, 10, 25, 50, 75, 100] as const;
const BLAMING: readonly (string | null)[] = ['frass', 'honeydew', 'fruit', 'leaf_litter'];

export function RateScreen() {
  const walk = useWalk();
  const words = useWords();
  const stop = useShown((state) => state.stop);
  const treeId = useShown((state) => state.treeId ?? '');
  const set = (part: Partial<Stop>): void => void changeStop(walk, part);
  const { rate } = words;
  return (
    <main className="screen rate">
      <ScreenHead title={rate.title(treeId)} />
      <Share label={rate.browned} pct={stop?.brownedPct ?? null} set={(brownedPct) => set({ brownedPct })} />
      <Share
        label={rate.defoliated}
        pct={stop?.defoliatedPct ?? null}
        set={(defoliatedPct) => set({ defoliatedPct })}
      />
      <Chips
        label={rate.galls}
        of={GALL_LOADS}
        words={rate.gallLoad}
        value={stop?.gallLoad ?? null}
        choose={(gallLoad) => set({ gallLoad })}
      />
      <Chips
        label={rate.cause}
        of={CAUSES}
        words={rate.causes}
        value={stop?.cause ?? null}
        choose={(cause) => set({ cause })}
      />
      {BLAMING.includes(stop?.cause ?? null) ? (
        <ManyChips
          label={rate.evidence}
          of={EVIDENCE}
          words={rate.signs}
          values={stop?.evidence ?? []}
          change={(evidence) => set({ evidence })}
        />
      ) : null}
      <Chips
        label={rate.sure}
        of={CONFIDENCES}
        words={rate.confidence}
        value={stop?.confidence ?? null}
        choose={(confidence) => set({ confidence })}
      />
      <div className="thumb-bar column">
        <Missing stop={stop} />
        <button type="button" className="main wide" onClick={goBack}>
          {rate.done}
        </button>
      </div>
    </main>
  );
}

/** What a rating still lacks, by the same rules as at the desk. It is kept all the same. */
function Missing({ stop }: { readonly stop: Stop | null }) {
  const { rate } = useWords();
  if (!stop || !isRated(stop)) return null;
  const missing = missingFrom(draftOfStop(stop, 'field')).flatMap((each) => rate.missing[each] ?? []);
  return missing.length === 0 ? null : (
    <p className="warn" role="status">
      {missing[0]}
    </p>
  );
}

interface ShareProps {
  readonly label: string;
  readonly pct: number | null;
  readonly set: (pct: number | null) => void;
}

function Share({ label, pct, set }: ShareProps) {
  const { rate } = useWords();
  const words = Object.fromEntries(PRESETS.map((each) => [each, String(each)])) as Record<
    (typeof PRESETS)[number],
    string
  >;
  return (
    <Stepper
      label={label}
      shown={pct === null ? rate.not : pctOf(pct)}
      share={pct === null ? null : pct / 100}
      less={rate.less(label)}
      more={rate.more(label)}
      step={(by) => set(steppedPct(pct, by))}
    >
      <Chips
        label={`${label} (%)`}
        hidden
        of={PRESETS}
        words={words}
        value={PRESETS.find((each) => each === pct) ?? null}
        choose={set}
      />
    </Stepper>
  );
}
