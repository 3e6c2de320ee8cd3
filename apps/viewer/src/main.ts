/** Starts the viewer: fetches the reckoned project, builds panel and map, and ties them to one choice. */
import '@fontsource/inter/latin-400.css';
import '@fontsource/inter/latin-500.css';
import '@fontsource/inter/latin-600.css';
import '@fontsource/inter/latin-ext-400.css';
import 'maplibre-gl/dist/maplibre-gl.css';
import './style/page.css';
import './style/panel.css';
import './style/map.css';
import { element } from './element.ts';
import { townMap } from './map/town-map.ts';
import { findingsList } from './panel/findings.ts';
import { legend } from './panel/legend.ts';
import { masthead } from './panel/masthead.ts';
import { ranking } from './panel/ranking.ts';
import { showTree } from './panel/tree-card.ts';
import { fetchProject, type Layers, type Project } from './project.ts';
import { viewState } from './view-state.ts';

const app = document.getElementById('app') as HTMLElement;

try {
  const { project, layers } = await fetchProject();
  build(app, project, layers);
} catch (error) {
  const why = error instanceof Error ? error.message : String(error);
  app.replaceChildren(element('p', { class: 'failure', role: 'alert' }, `The project could not be shown. ${why}`));
}

function build(root: HTMLElement, project: Project, layers: Layers): void {
  document.title = `${project.title}: blocks by stained pavement`;
  const state = viewState({ units: project.units, blockId: null });
  const holder = element('div', { class: 'map-holder' });
  const card = element('output', { class: 'tree-card', hidden: true });
  const all = element('button', { type: 'button', class: 'whole' }, 'Whole town');
  const view = element('div', { class: 'view' }, holder, all, card);
  const stage = element('section', { class: 'stage', 'aria-label': 'Map' }, view, legend());
  const panel = element(
    'main',
    { class: 'panel' },
    masthead(project, state),
    ranking(project, state),
    findingsList(project.findings),
    element('footer', { class: 'foot' }, FOOT),
  );
  root.replaceChildren(panel, stage);
  let pointed: GeoJSON.GeoJsonProperties = null;
  const map = townMap(holder, project, layers, {
    blockClicked: (blockId) => state.change({ blockId }),
    treePointed: (tree) => {
      pointed = tree;
      showTree(card, tree, state.now().units);
    },
  });
  map.showUnits(state.now().units);
  all.addEventListener('click', () => {
    state.change({ blockId: null });
    map.showAll();
  });
  state.listen((choice, before) => {
    if (choice.blockId !== before.blockId) map.showBlock(choice.blockId);
    if (choice.units !== before.units) {
      map.showUnits(choice.units);
      showTree(card, pointed, choice.units);
    }
  });
}

const FOOT =
  'Crownfall computes and reminds. It prescribes no treatment: the product label, local codes and licensed applicators decide.';
