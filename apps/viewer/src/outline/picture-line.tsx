/** What the picture says to the crown in the making: where to point, how sure its proposal is, or why it has none. */
import { area } from '../language/quantities.ts';
import { useUnits, useWords } from '../session/session.ts';
import { asksPicture, type Sketch } from './sketch.ts';

export function PictureLine({ sketch }: { readonly sketch: Sketch }) {
  const { picture: words, rating } = useWords();
  const units = useUnits();
  const { picture, proposed, tool } = sketch;
  if (!picture) return null;
  if (picture.state === 'asked') return <p role="status">{words.looking}</p>;
  if (picture.state === 'refused') {
    const { because } = picture;
    const why =
      typeof because === 'object' ? words.failed(because.failed) : words.refused[because]((m2) => area(m2, units));
    return (
      <p role="status" className="caveat">
        {why}
      </p>
    );
  }
  if (proposed && tool === 'polygon')
    return (
      <p role="status">
        {words.made(rating.confidences[proposed.confidence])} {asksPicture(sketch) ? words.another : ''}
      </p>
    );
  return (
    <p role="status" className="lead">
      {words.how}
    </p>
  );
}
