/** The head of the panel: which project, as of when, the total, the bench, and the settings. */
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { area, percent } from '../language/quantities.ts';
import { useApp, useSession, useUnits, useWords } from '../session/session.ts';
import type { Bench } from '../state/app-state.ts';
import { SettingsMenu } from './settings-menu.tsx';
import { SharingState } from './sharing-state.tsx';
import { UndoButtons } from './undo-buttons.tsx';

export function Masthead() {
  const project = useApp((state) => state.project);
  const bench = useApp((state) => state.bench);
  const words = useWords();
  if (!project) return null;
  return (
    <header className="masthead">
      <div className="masthead-line">
        <h1>{project.title}</h1>
        <SettingsMenu />
      </div>
      <p className="dateline">{words.dateline(project.season, project.run.asOf, project.trees, project.treesRated)}</p>
      <SharingState />
      {bench === 'weigh' ? <Totals /> : null}
      <div className="masthead-line bench-line">
        <BenchSwitch />
        <WalkLink />
        <UndoButtons />
      </div>
    </header>
  );
}

/** What the whole project comes to, and how far it may be trusted. */
function Totals() {
  const project = useApp((state) => state.project);
  const units = useUnits();
  const words = useWords();
  if (!project) return null;
  const { stainedM2, pavementM2, falloutM2 } = project.total;
  const share = percent(stainedM2.value / pavementM2);
  return (
    <>
      <p className="total">
        <strong>{area(stainedM2.value, units)}</strong>
        {words.total(share, area(pavementM2, units), area(falloutM2, units))}
      </p>
      {project.run.calibrated ? null : <p className="caveat">{words.uncalibrated}</p>}
    </>
  );
}

function BenchSwitch() {
  const { store } = useSession();
  const bench = useApp((state) => state.bench);
  const words = useWords();
  return (
    <ToggleButtonGroup
      className="switch benches"
      aria-label={words.benches.label}
      disallowEmptySelection
      selectedKeys={[bench]}
      onSelectionChange={(keys) => store.change({ bench: [...keys][0] as Bench })}
    >
      <ToggleButton id="weigh">{words.benches.weigh}</ToggleButton>
      <ToggleButton id="outline">{words.benches.outline}</ToggleButton>
      <ToggleButton id="plan">{words.benches.plan}</ToggleButton>
    </ToggleButtonGroup>
  );
}

/** The walk is a page of its own, which a phone loads without the desk's. */
function WalkLink() {
  const blockId = useApp((state) => state.blockId);
  const words = useWords();
  const block = blockId === null ? '' : `#${new URLSearchParams({ block: blockId })}`;
  return (
    <a className="button" href={`walk.html${location.search}${block}`}>
      {words.benches.walk}
    </a>
  );
}
