/** Records that two people changed: both versions side by side, and which of them is to count. */
import { Button } from 'react-aria-components';
import type { Words } from '../language/words.ts';
import type { Conflict } from '../project/store-api.ts';
import { chooseTree, treeFeature } from '../session/drawing.ts';
import { middleOf } from '../session/middle-of.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { decide } from '../session/sharing.ts';

const NONE: readonly Conflict[] = [];

export function Conflicts() {
  const conflicts = useApp((state) => state.sharing?.conflicts ?? NONE);
  const { sharing: words } = useWords();
  if (conflicts.length === 0) return null;
  return (
    <section className="conflicts" aria-labelledby="conflicts-title">
      <h2 id="conflicts-title">{words.conflicts(conflicts.length)}</h2>
      <p className="lead">{words.conflictLead}</p>
      {conflicts.map((conflict) => (
        <ConflictCard key={conflict.conflictId} conflict={conflict} />
      ))}
    </section>
  );
}

function ConflictCard({ conflict }: { readonly conflict: Conflict }) {
  const session = useSession();
  const mayDecide = useApp((state) => state.sharing?.asker.role !== 'rater');
  const { sharing: words } = useWords();
  const treeId = String(conflict.current?.properties?.tree_id ?? conflict.given.properties?.tree_id ?? '');
  const show = (): void => {
    void chooseTree(session, treeId);
    const at = middleOf(treeFeature(session, treeId));
    if (at) session.map?.flyTo(at, 20);
  };
  return (
    <article className="conflict" aria-label={treeId}>
      <table>
        <caption>
          <Button className="button quiet" aria-label={`${words.showPlace}: ${treeId}`} onPress={show}>
            {treeId}
          </Button>
        </caption>
        <thead>
          <tr>
            <td />
            <th scope="col">{words.stands}</th>
            <th scope="col">{words.given(conflict.givenBy.author)}</th>
          </tr>
        </thead>
        <tbody>
          {differences(conflict, words).map(({ field, stands, given }) => (
            <tr key={field}>
              <th scope="row">{field}</th>
              <td>{stands}</td>
              <td>{given}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {mayDecide ? (
        <div className="button-row">
          <Button className="button" onPress={() => void decide(session, conflict, 'drop')}>
            {words.drop}
          </Button>
          <Button className="button" onPress={() => void decide(session, conflict, 'take')}>
            {words.take}
          </Button>
        </div>
      ) : null}
    </article>
  );
}

interface Difference {
  readonly field: string;
  readonly stands: string;
  readonly given: string;
}

/** The fields in which the two differ, and the outlines when these do. */
function differences({ given, current }: Conflict, words: Words['sharing']): readonly Difference[] {
  const isOutline =
    given.geometry !== undefined && JSON.stringify(given.geometry) !== JSON.stringify(current?.geometry);
  const outline = {
    field: words.outlineField,
    stands: current ? shapeInWords(current.geometry, words) : words.deleted,
    given: given.action === 'delete' ? words.deleted : shapeInWords(given.geometry ?? null, words),
  };
  const mine = given.properties ?? {};
  const theirs = current?.properties ?? {};
  const fields = Object.keys(mine).filter((field) => text(mine[field]) !== text(theirs[field]));
  return [
    ...(isOutline || given.action === 'delete' || !current ? [outline] : []),
    ...fields.map((field) => ({ field, stands: text(theirs[field]), given: text(mine[field]) })),
  ];
}

const text = (value: unknown): string =>
  value === undefined || value === null ? '–' : typeof value === 'object' ? JSON.stringify(value) : String(value);

function shapeInWords(geometry: GeoJSON.Geometry | null, words: Words['sharing']): string {
  if (geometry?.type === 'Point') return words.at;
  if (geometry?.type === 'Polygon') return words.points(geometry.coordinates[0].length - 1);
  if (geometry?.type === 'MultiPolygon')
    return words.points(geometry.coordinates.reduce((sum, [shell]) => sum + shell.length - 1, 0));
  return '–';
}
