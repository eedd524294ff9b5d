/*! Drawn with ogl 1.0.11, in the public domain by the Unlicense: see viewer/LICENSE-ogl */
// Puts the picture in space into a report's page. Without this script the page says the same in
// words and drawings.
import { Picture } from './picture.js';
import { buildPanel } from './panel.js';
import { Overlay } from './overlay.js';
import { handleInput } from './input.js';
import { keptState, keepState, reloadWhenTold } from './keep.js';
import { element } from './element.js';
import { bringUp, joinOutside } from './embedded.js';

function hasWebGl() {
  try {
    const canvas = document.createElement('canvas');
    return Boolean(canvas.getContext('webgl2') || canvas.getContext('webgl'));
  } catch {
    return false;
  }
}

function beforePrinting() {
  let opened = [];
  addEventListener('beforeprint', () => {
    opened = [...document.querySelectorAll('main details:not([open])')];
    for (const each of opened) each.open = true;
  });
  addEventListener('afterprint', () => {
    for (const each of opened) each.open = false;
  });
}

/** Opens the line that a link leads into. */
function openTarget() {
  const target = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const details = target && target.closest('details');
  if (details) details.open = true;
}

/** A finding in the picture, or in words where it has no place. */
function showFinding(scene, picture, id) {
  const finding = scene.findings.find((each) => each.id === id);
  if (!finding) return;
  bringUp(document.getElementById(finding.at ? 'picture' : id));
  if (finding.at) picture.goTo(finding);
}

function showPicture(scene, section, state) {
  const viewer = document.getElementById('viewer');
  const canvas = element('canvas', {
    tabindex: '0',
    role: 'application',
    'aria-roledescription': 'picture in space',
    'aria-label': 'Structure, lines, supports and findings',
    'aria-describedby': 'picture-keys',
  });
  const over = element('div', { class: 'over' });
  const stage = element('div', { class: 'stage' }, canvas, over);
  const chosen = element('div', { class: 'chosen-line', role: 'status' });
  viewer.append(stage);
  viewer.hidden = false;

  const picture = new Picture(canvas, scene, state);
  const overlay = new Overlay(over, scene, picture);
  const panel = buildPanel(scene, picture, chosen);
  viewer.append(panel.box, chosen);
  picture.onDraw = () => {
    overlay.place();
    changed();
    stage.dataset.camera = picture.camera.position.map((each) => each.toFixed(2)).join(' ');
  };
  const changed = joinOutside(state, (id) => showFinding(scene, picture, id));
  picture.onChoice = () => {
    panel.showChoice();
    changed();
  };
  handleInput(canvas, picture);

  for (const finding of scene.findings) {
    const article = document.getElementById(finding.id);
    if (!article || !finding.at) continue;
    const button = element('button', { type: 'button' }, 'Show in picture');
    button.addEventListener('click', () => {
      section.scrollIntoView({ block: 'start' });
      picture.goTo(finding);
      canvas.focus({ preventScroll: true });
    });
    article.append(button);
  }
  new ResizeObserver(() => picture.resize()).observe(stage);
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => picture.recolour());
  picture.resize();
  panel.showChoice();
  addEventListener('pagehide', () => keepState(state));
}

function start() {
  const scene = JSON.parse(document.getElementById('scene').textContent);
  const section = document.getElementById('picture');
  const state = keptState();
  beforePrinting();
  addEventListener('hashchange', openTarget);
  openTarget();
  if (scene.routes && hasWebGl()) {
    section.querySelector('.without-script').hidden = true;
    showPicture(scene, section, state);
  }
  if (section.dataset.watched) reloadWhenTold(section, state);
}

start();
