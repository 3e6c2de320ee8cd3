/** The forester's bench: draw and correct crowns, rate them, see what was changed. */
import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { chooseTree, copyLast, startDrawing } from '../session/drawing.ts';
import { exportLayer } from '../session/exporting.ts';
import { hasPicture } from '../session/picture.ts';
import { startFromPicture } from '../session/proposing.ts';
import { goToUnrated } from '../session/rating.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { OpenButtons } from '../shell/open-elsewhere.tsx';
import { ChangesList } from './changes-list.tsx';
import { RatingForm } from './rating-form.tsx';
import { TOOLS } from './sketch.ts';
import { SketchPanel } from './sketch-panel.tsx';
import { ToolSign } from './tool-sign.tsx';
import { TreeCard } from './tree-card.tsx';

export function OutlineBench() {
  const session = useSession();
  const editing = useApp((state) => state.editing);
  const sketch = useApp((state) => state.sketch);
  const treeId = useApp((state) => state.treeId);
  const can = editing.can;
  useEffect(() => {
    // A link or a reload may name the tree before its records are at hand.
    const { treeId, tree } = session.store.get();
    if (can === 'yes' && treeId !== null && tree === null) void chooseTree(session, treeId);
  }, [can, session]);
  return (
    <>
      <EditingState />
      {can === 'yes' && !sketch ? <Tools /> : null}
      {sketch ? <SketchPanel sketch={sketch} /> : treeId === null ? <NothingChosen /> : <TreeCard treeId={treeId} />}
      {sketch ? null : <RatingForm />}
      <ChangesList />
      <LayerExports />
    </>
  );
}

function EditingState() {
  const editing = useApp((state) => state.editing);
  const words = useWords();
  const { outline } = words;
  if (editing.can === 'yes') return null;
  if (editing.can === 'soon') {
    const share = Math.round(editing.share * 100);
    return (
      <p className="editing-state" role="status">
        {outline.soon(words.stage[editing.stage] ?? '')}
        <progress max={100} value={share} aria-label={words.stage[editing.stage] ?? ''} />
      </p>
    );
  }
  const why = {
    'no-files': outline.noFiles,
    'other-figures': outline.otherFigures,
    failed: outline.openFailed(editing.detail),
  };
  return (
    <div className="editing-state">
      <p>{why[editing.why]}</p>
      <OpenButtons />
    </div>
  );
}

function Tools() {
  const session = useSession();
  const { outline, picture } = useWords();
  const pictured = useApp(hasPicture);
  const drewBefore = useApp(({ history }) => history.entries.some(({ edit }) => edit.kind === 'crown' && edit.after));
  return (
    <section className="tools" aria-label={outline.new}>
      <h2>{outline.new}</h2>
      <div className="tool-row">
        {TOOLS.map((tool) => (
          <Button key={tool} className="tool" onPress={() => startDrawing(session, tool)}>
            <ToolSign tool={tool} />
            {outline.tools[tool]}
          </Button>
        ))}
        {pictured ? (
          <Button className="tool" onPress={() => startFromPicture(session)}>
            <ToolSign tool="picture" />
            {picture.tool}
          </Button>
        ) : null}
        {drewBefore ? (
          <Button className="tool" onPress={() => copyLast(session)}>
            <ToolSign tool="copy" />
            {outline.copyLast}
          </Button>
        ) : null}
      </div>
    </section>
  );
}

function NothingChosen() {
  const session = useSession();
  const words = useWords();
  const can = useApp((state) => state.editing.can);
  return (
    <section className="nothing">
      <h2>{words.outline.emptyTitle}</h2>
      <p>{words.outline.empty}</p>
      {can === 'yes' ? (
        <Button className="button" onPress={() => void goToUnrated(session, 1)}>
          {words.rating.next} <kbd>N</kbd>
        </Button>
      ) : null}
    </section>
  );
}

function LayerExports() {
  const session = useSession();
  const can = useApp((state) => state.editing.can);
  const { exports } = useWords();
  if (can !== 'yes') return null;
  return (
    <div className="button-row layer-exports">
      <Button className="button" onPress={() => void exportLayer(session, 'crowns')}>
        {exports.crowns}
      </Button>
      <Button className="button" onPress={() => void exportLayer(session, 'ratings')}>
        {exports.ratings}
      </Button>
    </div>
  );
}
