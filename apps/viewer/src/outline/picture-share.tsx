/** The browned share that the picture suggests for the tree at hand: asked for, shown with its range, taken or left. */

import { LIT_PIXELS_NEEDED } from '@crownfall/imagery';
import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { percent } from '../language/quantities.ts';
import { hasPicture } from '../session/picture.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { askOrTakeShare, leaveShare } from '../session/suggesting.ts';
import type { ShareSuggestion } from '../state/app-state.ts';
import type { RatingDraft } from './rating-draft.ts';

export function PictureShare({ draft }: { readonly draft: RatingDraft }) {
  const session = useSession();
  const { suggestion: words } = useWords();
  const there = useApp(hasPicture);
  const suggestion = useApp((state) => (state.suggestion?.treeId === draft.treeId ? state.suggestion : null));
  if (!there) return null;
  const found = suggestion?.state === 'made' && suggestion.found.suggested;
  return (
    <div className="picture-share">
      <div role="status">
        {draft.suggestion ? <p>{words.taken}</p> : suggestion ? <Found suggestion={suggestion} /> : null}
      </div>
      {draft.suggestion ? (
        <Button className="button" onPress={() => leaveShare(session)}>
          {words.leave}
        </Button>
      ) : (
        <Button className="button" isDisabled={suggestion?.state === 'looking'} onPress={() => askOrTakeShare(session)}>
          {found ? words.take : words.ask} <kbd>I</kbd>
        </Button>
      )}
    </div>
  );
}

function Found({ suggestion }: { readonly suggestion: ShareSuggestion }): ReactNode {
  const { suggestion: words } = useWords();
  if (suggestion.state === 'looking') return <p>{words.looking(percent(suggestion.share))}</p>;
  if (suggestion.state === 'failed') return <p className="caveat">{words.failed(suggestion.why)}</p>;
  const { found } = suggestion;
  const flags = found.quality.map((flag) => (
    <p key={flag} className="caveat">
      {words.flags[flag]}
    </p>
  ));
  if (!found.suggested) {
    const why = words.refused[found.because];
    return (
      <>
        <p className="caveat">{why(Math.round(found.litPixels), LIT_PIXELS_NEEDED)}</p>
        {flags}
      </>
    );
  }
  const { share, interval, litPixels, makeUp } = found;
  const range = interval === null ? '' : words.range(percent(interval.lower), percent(interval.upper));
  return (
    <>
      <p>
        <strong>{percent(share)}</strong>
        {words.found(range)}
      </p>
      <p className="lead">{words.rests(Math.round(litPixels), percent(makeUp.shaded), percent(makeUp.notLeaf))}</p>
      {flags}
    </>
  );
}
