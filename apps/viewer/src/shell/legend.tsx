/** What the map's colours, hatches and lines mean. */
import { CLEAN_BELOW_PCT, STAIN_CLASSES } from '../map/stain-ramp.ts';
import { useApp, useWords } from '../session/session.ts';

const WATER_MARKS = ['keep', 'drain', 'well', 'way'] as const;
const OPEN_AT_FIRST = matchMedia('(min-width: 60rem)').matches;

export function Legend() {
  const { legend } = useWords();
  const water = useApp((state) => state.blockWater);
  const hasWater = water !== null && water.trees.length > 0;
  const marks = [
    ['crown staining', legend.staining],
    ['crown', legend.without],
    ['drift', legend.fallout],
    ['block-first', legend.first],
    ...(hasWater ? WATER_MARKS.map((kind) => [`water-${kind}`, legend.water[kind]] as const) : []),
  ] as const;
  return (
    <details className="legend" open={OPEN_AT_FIRST}>
      <summary>{legend.title}</summary>
      <p id="legend-pavement">{legend.share}</p>
      <ul className="classes" aria-labelledby="legend-pavement">
        <li>
          <span className="swatch clean" aria-hidden="true" />
          {legend.under(CLEAN_BELOW_PCT)}
        </li>
        {STAIN_CLASSES.map((each, i) => (
          <li key={each.fromPct}>
            <span className={`swatch stain-${i}`} aria-hidden="true" />
            {i === STAIN_CLASSES.length - 1 ? legend.over(each.fromPct) : each.label}
          </li>
        ))}
      </ul>
      <ul className="marks">
        {marks.map(([kind, words]) => (
          <li key={kind}>
            <span className={`mark ${kind}`} aria-hidden="true" />
            {words}
          </li>
        ))}
      </ul>
    </details>
  );
}
