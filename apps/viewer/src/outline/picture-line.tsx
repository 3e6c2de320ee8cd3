/** What the picture says to the crown in the making: where to point, how sure its proposal is, or why it has none. */
import { useEffect, useRef } from 'react';
import { area } from '../language/quantities.ts';
import { useUnits, useWords } from '../session/session.ts';
import { asksPicture, type Sketch } from './sketch.ts';

export function PictureLine({ sketch }: { readonly sketch: Sketch }) {
  const line = useRef<HTMLParagraphElement>(null);
  const said = useSaid(sketch);
  // On a phone the panel is short: what is said must be in it.
  useEffect(() => {
    if (said !== null) line.current?.scrollIntoView({ block: 'nearest' });
  }, [said]);
  if (said === null) return null;
  return (
    <p role="status" ref={line} className={sketch.picture?.state === 'refused' ? 'caveat' : undefined}>
      {said}
    </p>
  );
}

function useSaid(sketch: Sketch): string | null {
  const { picture: words, rating } = useWords();
  const units = useUnits();
  const { picture, proposed, tool } = sketch;
  if (!picture) return null;
  if (picture.state === 'asked') return words.looking;
  if (picture.state === 'refused') {
    const { because } = picture;
    if (typeof because === 'object') return words.failed(because.failed);
    return words.refused[because]((m2) => area(m2, units));
  }
  if (!proposed || tool !== 'polygon') return words.how;
  const made = words.made(rating.confidences[proposed.confidence]);
  return asksPicture(sketch) ? `${made} ${words.another}` : made;
}
