// What can be set beside the picture, and what is told of a line or finding that was chosen.
import { element, shown, verdictMark } from './element.js';
import { stepFinding } from './input.js';
import { colourOf } from './picture.js';

function button(text, act, label) {
  const made = element('button', { type: 'button', ...(label ? { 'aria-label': label } : {}) }, text);
  made.addEventListener('click', act);
  return made;
}

function group(title, ...children) {
  return element('fieldset', {}, element('legend', {}, title), ...children);
}

function slider(text, least, most, step, value, words, act) {
  const range = element('input', { type: 'range', min: least, max: most, step, 'aria-label': text });
  const told = element('span', { class: 'value', 'aria-hidden': 'true' });
  const tell = () => {
    told.textContent = `${text}: ${words(Number(range.value))}`;
    range.setAttribute('aria-valuetext', words(Number(range.value)));
  };
  range.value = value;
  tell();
  range.addEventListener('input', () => {
    const held = act(Number(range.value));
    if (held !== undefined) range.value = held;
    tell();
  });
  return element('div', {}, told, range);
}

function views(picture) {
  const turn = (yaw) => () => picture.view.turn(yaw, 0);
  return element('div', { class: 'tools' },
    button('Slant', () => picture.view.reset('slant')),
    button('Side', () => picture.view.reset('side')),
    button('Plan', () => picture.view.reset('plan')),
    button('Front', () => picture.view.reset('front')),
    button('\u27f2', turn(-15), 'Turn left'),
    button('\u27f3', turn(15), 'Turn right'),
    button('+', () => picture.view.zoom(0.8), 'Nearer'),
    button('\u2212', () => picture.view.zoom(1.25), 'Farther'));
}

function cuts(scene, picture) {
  const [least, most] = [Math.floor(picture.bounds[0][0]), Math.ceil(picture.bounds[1][0])];
  const words = (value) => `FS ${(value * scene.unit_per_in).toFixed(scene.unit === 'mm' ? 0 : 1)}`;
  const set = (end) => (value) => {
    const cut = [...picture.state.cut];
    cut[end] = end === 0 ? Math.min(value, cut[1]) : Math.max(value, cut[0]);
    picture.state.cut = cut;
    picture.applyState();
    return cut[end];
  };
  return group('Cut by station',
    slider('From', least, most, 0.5, picture.state.cut[0], words, set(0)),
    slider('To', least, most, 0.5, picture.state.cut[1], words, set(1)));
}

/** Colours of what is in the picture; names say the same. */
function legend(scene) {
  const kinds = new Set(scene.routes.map(colourOf));
  const words = [['air', 'static and vent lines'], ['pressure', 'pitot and alpha lines'],
    ['cable', 'cables, rods and casings'], ['wire', 'wires']].filter(([kind]) => kinds.has(kind));
  words.push(['ink', 'supports and ends'], ['accent', 'what is fixed to a cable'], ['chosen', 'the chosen line']);
  return element('ul', { class: 'legend' },
    ...words.map(([kind, text]) => element('li', {}, element('span', { class: `swatch ${kind}` }), text)));
}

function reach(scene, picture) {
  const choices = [['none', 'not shown'], ['likely', 'likely'], ['bound', 'at the most']];
  const select = element('select', {}, ...choices.map(([value, text]) => element('option', { value }, text)));
  select.value = picture.state.reach;
  select.addEventListener('change', () => {
    picture.state.reach = select.value;
    picture.applyState();
  });
  const names = element('input', { type: 'checkbox' });
  names.checked = picture.state.names;
  names.addEventListener('change', () => {
    picture.state.names = names.checked;
    picture.draw();
  });
  return group('Shown', element('label', {}, 'Reach of the lines ', select),
    element('label', {}, names, ' Names'), legend(scene));
}

function motion(scene, picture) {
  const moves = scene.movers.length > 0 || scene.routes.some((each) => each.moves && each.attached.length);
  const rows = scene.tensions.length ? scene.tensions[0].rows : [];
  const children = [];
  if (moves)
    children.push(slider('Travel', -100, 100, 5, picture.state.travel,
      (value) => (value === 0 ? 'as drawn' : `${Math.abs(value)} % ${value < 0 ? 'one way' : 'the other'}`),
      (value) => picture.setTravel(value)));
  if (rows.length > 1) {
    const list = element('div', { class: 'hint' });
    const tell = (i) => {
      list.replaceChildren(...scene.tensions.map(({ name, rows: own }) => {
        const known = own[i] && own[i][1] !== null;
        return element('div', {}, `${shown(name).slice(0, 40)}: ${known ? `${own[i][1].toFixed(1)} lbf` : 'not known'}`);
      }));
    };
    const rigged = picture.state.temperature ?? rows.findIndex(([degrees]) => degrees === scene.rigged_degf);
    tell(rigged);
    children.push(slider('Temperature', 0, rows.length - 1, 1, rigged, (i) => `${rows[i][0]} degF`, (i) => {
      picture.state.temperature = i;
      tell(i);
    }), list);
  }
  if (moves)
    children.push(element('p', { class: 'hint' },
      'Everything that travels is moved at once, each through its own travel; which way one goes while another does is not meant.'));
  return children.length ? group('Moved and warmed', ...children) : '';
}

/** In which attitude the water is shown that does not run out. */
function water(scene, picture) {
  if (!scene.attitudes.length) return '';
  const told = (name) => {
    const lines = new Set(scene.pools.filter((each) => each.attitude === name).map((each) => each.route));
    return `${shown(name).slice(0, 40)}: ${lines.size ? `in ${lines.size} of the lines` : 'none'}`;
  };
  const select = element('select', {}, element('option', { value: '' }, 'not shown'),
    ...scene.attitudes.map((name, i) => element('option', { value: String(i) }, told(name))));
  select.value = picture.state.attitude ?? '';
  select.addEventListener('change', () => {
    picture.state.attitude = select.value;
    picture.applyState();
  });
  return group('Water that stays',
    element('label', {}, 'In the attitude ', select),
    element('p', { class: 'hint' }, 'The aeroplane is drawn level whatever the attitude; the lines that water stands in are thick there.'));
}

function parts(scene, picture) {
  const kinds = new Map([['lines', scene.routes.map((each) => each.name)]]);
  for (const { kind, name } of [...scene.parts, ...scene.movers.map((each) => ({ ...each, kind: 'moving parts' }))])
    kinds.set(kind, [...(kinds.get(kind) || []), name]);
  const box = element('div', { class: 'parts', tabindex: '0', role: 'group', 'aria-label': 'Parts shown' });
  for (const [kind, names] of kinds) {
    const boxes = names.map((name) => partBox(picture, `${kind}/${name}`, name));
    const all = element('input', { type: 'checkbox' });
    all.checked = boxes.some(({ check }) => check.checked);
    all.addEventListener('change', () => {
      for (const { check, set } of boxes) {
        check.checked = all.checked;
        set();
      }
    });
    box.append(element('h4', {}, element('label', {}, all, ` all ${kind}`)), ...boxes.map(({ label }) => label));
  }
  return element('details', { id: 'picture-parts' }, element('summary', {}, 'Hide parts'), box);
}

function partBox(picture, key, name) {
  const check = element('input', { type: 'checkbox' });
  check.checked = !picture.state.hidden.includes(key);
  const set = () => {
    picture.state.hidden = picture.state.hidden.filter((each) => each !== key);
    if (!check.checked) picture.state.hidden.push(key);
    picture.applyState();
  };
  check.addEventListener('change', set);
  return { check, set, label: element('label', {}, check, ` ${shown(name).slice(0, 80)}`) };
}

/** The strip of a line, as it stands further down in the page. */
function stripOf(scene, name) {
  const number = scene.routes.findIndex((each) => each.name === name) + 1;
  const details = document.getElementById(`line-${number}`);
  const strip = details && details.querySelector('svg.strip');
  if (!strip) return [];
  const link = element('a', { href: `#line-${number}` }, 'Its figures');
  link.addEventListener('click', () => (details.open = true));
  return [element('div', { class: 'wide', tabindex: '0', role: 'region', 'aria-label': 'Strip of the line' },
    strip.cloneNode(true)), element('p', {}, link)];
}

export function buildPanel(scene, picture, chosen) {
  const finds = scene.findings.some((each) => each.at)
    ? element('div', { class: 'tools' },
      button('Finding before', () => stepFinding(picture, -1)),
      button('Next finding', () => stepFinding(picture, 1)))
    : '';
  const select = element('select', {}, element('option', { value: '' }, 'none'),
    ...scene.routes.map((each) => element('option', { value: each.name }, shown(each.name).slice(0, 60))));
  select.addEventListener('change', () => picture.choose(select.value));
  const box = element('div', { class: 'panel' }, views(picture), finds,
    group('Line', element('label', {}, 'Chosen: ', select)),
    cuts(scene, picture), reach(scene, picture), motion(scene, picture), water(scene, picture),
    parts(scene, picture),
    element('p', { class: 'hint', id: 'picture-keys' },
      'Drag turns, shift and drag moves, the wheel zooms once the picture was clicked. Keys: arrows turn, with shift they move, + and \u2212 zoom, n and p go from finding to finding, Home goes back. Click a line or a mark.'));

  const showChoice = () => {
    const { route, finding: id } = picture.state;
    select.value = route || '';
    const finding = scene.findings.find((each) => each.id === id && each.route === route);
    const said = [];
    if (finding)
      said.push(element('p', {}, element('b', { class: finding.verdict }, verdictMark(finding.verdict),
        finding.verdict), ` ${shown(`${finding.rule}, ${finding.route}: ${finding.message}`)} `,
      element('a', { href: `#${finding.id}` }, 'What mends it')));
    else if (route) said.push(element('p', {}, element('b', {}, shown(route))));
    else said.push(element('p', { class: 'hint' }, 'Choose a line to see its strip of gaps.'));
    chosen.replaceChildren(...said, ...(route ? stripOf(scene, route) : []));
  };
  return { box, showChoice };
}
