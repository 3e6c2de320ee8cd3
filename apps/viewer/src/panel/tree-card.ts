/** A short card about the crown that was pointed at on the map. */
import { element } from '../element.ts';
import { area, percent, type Units } from '../quantities.ts';

/** Fills `card` with the tree's figures; null empties it. Values come from the trees layer's fields. */
export function showTree(card: HTMLElement, tree: GeoJSON.GeoJsonProperties, units: Units): void {
  card.hidden = tree === null;
  if (tree === null) return;
  const severity = typeof tree.severity_pct === 'number' ? `${percent(tree.severity_pct / 100)} affected` : 'not rated';
  const from = tree.severity_from === 'group' ? ', taken from trees like it' : '';
  const cause =
    tree.cause === 'none' || tree.cause === 'unknown' ? `cause ${tree.cause}` : String(tree.cause).replace('_', ' ');
  card.replaceChildren(
    element('strong', {}, String(tree.tree_id)),
    ` ${typeof tree.host === 'string' ? tree.host : 'host not recorded'}`,
    element('br'),
    `${severity}${from} · ${cause} · crown ${area(Number(tree.crown_m2), units)}`,
    element('br'),
    `stains ${area(Number(tree.stained_m2), units)} of pavement`,
  );
}
