/** Outlines proposed from the picture: asked for by a click, at the cross, or for the chosen tree; kept only by saving. */
import type { CrownRecord } from '../edits/edit.ts';
import { crownsNear, type NearCrown } from '../outline/crowns-near.ts';
import { type Position, type Sketch, sketchOf, withProposal } from '../outline/sketch.ts';
import { changeSketch, startDrawing, startEditing, treeFeature } from './drawing.ts';
import { middleOf } from './middle-of.ts';
import { failureInWords, hasPicture, openPicture, showPicture } from './picture.ts';
import type { Session } from './session.ts';

/** A new crown: its outline is proposed where the picture is clicked next. */
export function startFromPicture(session: Session): void {
  if (!hasPicture(session.store.get())) return;
  showPicture(session);
  startDrawing(session, 'polygon');
  const { sketch } = session.store.get();
  if (sketch) changeSketch(session, { ...sketch, picture: { state: 'wanted' } });
}

/** An outline for the chosen tree, about the middle of what is known of its crown. */
export async function proposeForTree(session: Session): Promise<void> {
  const { store } = session;
  const { tree } = store.get();
  const at = tree && middleOf(treeFeature(session, tree.treeId));
  if (!at || !hasPicture(store.get())) return;
  showPicture(session);
  await startEditing(session);
  await proposeAt(session, at);
}

/** Asks for an outline about a point. A new crown begun inside one that was only paced becomes the outline of that tree. */
export async function proposeAt(session: Session, at: Position): Promise<void> {
  const { store } = session;
  const begun = store.get().sketch;
  if (!begun || !hasPicture(store.get())) return;
  const asked = { state: 'asked' } as const;
  /** Puts an answer into the sketch, unless it was left or asked elsewhere meanwhile. */
  const settle = (change: (sketch: Sketch) => Sketch): void => {
    const now = store.get().sketch;
    if (now?.picture === asked) changeSketch(session, change(now));
  };
  changeSketch(session, { ...begun, picture: asked });
  try {
    const scene = await sceneAbout(session, at);
    const own = begun.before ? undefined : scene.find(({ holds, trunk }) => holds && trunk !== null);
    if (own) settle(() => ({ ...sketchOf(own.treeId, own.crown), picture: asked }));
    const others = scene.filter(({ treeId }) => treeId !== (own ?? begun).treeId);
    const spreadM = Number((own?.crown ?? begun.before)?.properties.spread_m);
    const picture = await openPicture(session);
    const answer = await picture.outline({
      at,
      ...(spreadM > 0 && { spreadM }),
      rivals: others.flatMap(({ trunk }) => (trunk ? [trunk] : [])),
      drawn: others.flatMap(({ trunk, shells }) => (trunk ? [] : shells)),
    });
    if (answer.proposed) settle((now) => withProposal(now, positionsOf(answer.ring), answer.confidence));
    else settle((now) => ({ ...now, picture: { state: 'refused', because: answer.because } }));
  } catch (error) {
    const failed = failureInWords(error, store.get().preferences.language);
    settle((now) => ({ ...now, picture: { state: 'refused', because: { failed } } }));
  }
}

interface CrownAbout extends NearCrown {
  readonly crown: CrownRecord;
  /** Of a crown that was paced; null when its outline was drawn. */
  readonly trunk: Position | null;
}

async function sceneAbout({ store, reckoner }: Session, at: Position): Promise<readonly CrownAbout[]> {
  const near = crownsNear(store.get().layers?.trees.features ?? [], at);
  const records = await Promise.all(near.map(({ treeId }) => reckoner.ask('tree', treeId)));
  return near.flatMap((each, i) => {
    const crown = records[i]?.crown;
    return crown ? [{ ...each, crown, trunk: trunkOf(crown) }] : [];
  });
}

function trunkOf({ geometry }: CrownRecord): Position | null {
  return geometry.type === 'Point' ? [geometry.coordinates[0], geometry.coordinates[1]] : null;
}

function positionsOf(flat: ArrayLike<number>): readonly Position[] {
  return Array.from({ length: flat.length / 2 }, (_, i): Position => [flat[2 * i], flat[2 * i + 1]]);
}
