/** The ranked blocks as a list: arrow keys move through it, a click or Enter opens a block and shows it on the map. */
import { element } from '../element.ts';
import type { BlockSummary, Project } from '../project.ts';
import { area, areaNumber, areaUnit, percent } from '../quantities.ts';
import type { ViewState } from '../view-state.ts';
import { CRITERION_LOOKS, points } from './criteria.ts';
import { scoreParts } from './score-parts.ts';

export function ranking(project: Project, state: ViewState): HTMLElement {
  const rows = project.blocks.map((block) => blockRow(block, state));
  const list = element('ol', { class: 'ranking' }, ...rows.map((row) => row.item));
  list.addEventListener('keydown', (event) => moveFocus(event, rows));
  rows[0]?.head.setAttribute('tabindex', '0');
  state.listen((choice, before) => {
    for (const row of rows) row.show();
    if (choice.blockId === before.blockId) return;
    const chosen = rows.find((row) => row.blockId === choice.blockId);
    chosen?.item.scrollIntoView({ block: 'nearest', behavior: 'instant' });
  });
  return element(
    'section',
    { class: 'blocks', 'aria-labelledby': 'blocks-title' },
    element('h2', { id: 'blocks-title' }, 'Blocks in order of need'),
    rows.length === 0 ? element('p', { class: 'empty' }, 'The project has no blocks.') : list,
  );
}

interface Row {
  readonly blockId: string;
  readonly item: HTMLElement;
  readonly head: HTMLButtonElement;
  readonly show: () => void;
}

function blockRow(block: BlockSummary, state: ViewState): Row {
  const figure = element('span', { class: 'figure' });
  const caption = element('span', { class: 'caption' });
  const head = element(
    'button',
    { type: 'button', class: 'row-head', tabindex: '-1', 'data-block': block.blockId },
    element('span', { class: block.rank <= 5 ? 'rank first' : 'rank' }, String(block.rank)),
    element('span', { class: 'name' }, block.name ?? block.blockId, caption),
    figure,
    scoreStrip(block),
  );
  const details = element('div', { class: 'details', hidden: true });
  const item = element('li', {}, head, details);
  head.addEventListener('click', () => {
    state.change({ blockId: state.now().blockId === block.blockId ? null : block.blockId });
  });
  const show = (): void => {
    const { units, blockId } = state.now();
    const open = blockId === block.blockId;
    figure.replaceChildren(areaNumber(block.stainedM2.value, units), element('small', {}, ` ${areaUnit(units)}`));
    caption.textContent = `${percent(block.stainedM2.value / block.pavementM2)} of ${area(block.pavementM2, units)} · ${block.treesRated} of ${block.trees} trees rated`;
    head.setAttribute('aria-expanded', String(open));
    item.classList.toggle('chosen', open);
    details.hidden = !open;
    details.replaceChildren(...(open ? [scoreParts(block, units)] : []));
  };
  show();
  return { blockId: block.blockId, item, head, show };
}

/** The whole score as one strip, each criterion its own length. */
function scoreStrip(block: BlockSummary): HTMLElement {
  const strip = element('span', { class: 'strip', role: 'img', 'aria-label': `Score ${points(block.score)} of 100` });
  for (const part of block.scoreParts) {
    if (part.points <= 0) continue;
    const piece = element('span', { class: `piece ${part.criterion}` });
    piece.style.width = `${part.points * 100}%`;
    piece.style.background = `var(${CRITERION_LOOKS[part.criterion].tone})`;
    strip.append(piece);
  }
  return strip;
}

function moveFocus(event: KeyboardEvent, rows: readonly Row[]): void {
  const at = rows.findIndex((row) => row.head === document.activeElement);
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 }[event.key];
  if (at < 0 || to === undefined || rows[to] === undefined) return;
  event.preventDefault();
  rows[at].head.setAttribute('tabindex', '-1');
  rows[to].head.setAttribute('tabindex', '0');
  rows[to].head.focus();
}
