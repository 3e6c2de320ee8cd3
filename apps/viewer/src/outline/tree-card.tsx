/** The record of the chosen tree. */
import { Button } from 'react-aria-components';
import { area, percent } from '../language/quantities.ts';
import { chooseTree, removeTree, startEditing, treeFeature } from '../session/drawing.ts';
import { hasPicture } from '../session/picture.ts';
import { proposeForTree } from '../session/proposing.ts';
import { useApp, useSession, useUnits, useWords } from '../session/session.ts';
import { Sign } from '../shell/sign.tsx';
import { MergeForm } from './merge-form.tsx';
import { Photos } from './photos.tsx';

export function TreeCard({ treeId }: { readonly treeId: string }) {
  const session = useSession();
  // The layers change when figures do.
  useApp((state) => state.layers);
  const tree = useApp((state) => state.tree);
  const pictured = useApp(hasPicture);
  const units = useUnits();
  const words = useWords();
  const properties = treeFeature(session, treeId)?.properties;
  if (!properties) return null;
  const { severity_pct, severity_from, cause, crown_m2, stained_m2, host } = properties;
  const rated = typeof severity_pct === 'number';
  const severity = rated ? words.tree.affected(percent(severity_pct / 100)) : words.tree.notRated;
  const from = severity_from === 'group' ? words.tree.fromGroup : '';
  return (
    <section className="tree" aria-labelledby="tree-title">
      <div className="section-head">
        <h2 id="tree-title">{treeId}</h2>
        <Button className="sign-button" aria-label={words.close} onPress={() => void chooseTree(session, null)}>
          <Sign name="close" />
        </Button>
      </div>
      <p className="host">{typeof host === 'string' ? host : words.tree.hostUnknown}</p>
      <p>
        {`${severity}${from} · ${words.rating.causes[cause as keyof typeof words.rating.causes] ?? cause}`}
        <br />
        {`${words.tree.crown(area(Number(crown_m2), units))} · ${words.tree.stains(area(Number(stained_m2), units))}`}
      </p>
      {tree ? (
        <>
          <LastRatings />
          <div className="button-row">
            <Button className="button" onPress={() => void startEditing(session)}>
              {words.outline.edit} <kbd>O</kbd>
            </Button>
            {pictured ? (
              <Button className="button" onPress={() => void proposeForTree(session)}>
                {words.picture.trace} <kbd>T</kbd>
              </Button>
            ) : null}
            <Button className="button quiet" onPress={() => void removeTree(session)}>
              {words.outline.remove}
            </Button>
          </div>
          <MergeForm treeId={treeId} />
          <Photos treeId={treeId} />
        </>
      ) : null}
    </section>
  );
}

/** Newest first, no more than fit the eye. */
const RATINGS_MOST = 4;

function LastRatings() {
  const ratings = useApp((state) => state.tree?.ratings ?? NO_RATINGS);
  const { tree, rating: words } = useWords();
  if (ratings.length === 0) return <p className="lead">{tree.none}</p>;
  return (
    <ul className="last-ratings" aria-label={tree.last}>
      {[...ratings]
        .reverse()
        .slice(0, RATINGS_MOST)
        .map((rating) => (
          <li key={rating.ratedOn + rating.rater + (rating.browned?.share ?? '')}>
            <span>{rating.ratedOn}</span>
            <span>{rating.confirmedBy ?? rating.rater}</span>
            <strong>{rating.browned ? percent(rating.browned.share) : '–'}</strong>
            <span>{[words.causes[rating.cause], rating.evidence].filter(Boolean).join(': ')}</span>
          </li>
        ))}
    </ul>
  );
}

const NO_RATINGS: readonly never[] = [];
