// Every command of the checker, its result as text to read and as a file to save.
import { byId, element, save, size } from './element.js';
import { textOf } from './project.js';

/** What can be asked without knowing the words. PROJECT is the project file. */
const asked = [
  ['Check', 'check PROJECT'], ['Check, passes and sources too', 'check PROJECT --verbose'], ['Check as JSON', 'check PROJECT --format json'],
  ['Check as SARIF', 'check PROJECT --format sarif'], ['Report (HTML)', 'report PROJECT'], ['Cut list', 'cutlist PROJECT'],
  ['Cut list (CSV)', 'cutlist PROJECT --format csv'], ['Cut list (bend charts, SVG)', 'cutlist PROJECT --format svg'],
  ['Supports and holes, by part', 'schedule PROJECT --by part'], ['Supports and holes (CSV)', 'schedule PROJECT --format csv'],
  ['What to buy', 'parts PROJECT'], ['What to buy (CSV)', 'parts PROJECT --format csv'], ['Rigging of the cables', 'rig PROJECT'],
  ['Rigging (CSV)', 'rig PROJECT --format csv'], ['Rigging (SVG)', 'rig PROJECT --format svg'], ['Before closing up', 'close-up PROJECT'],
  ['Sheets for a walk round', 'walk-round PROJECT'],
  ['Leak test, planned', 'leak-test plan PROJECT --system static --field-elevation 800 --altimeter-setting 29.95 --temperature 64'],
  ['Fewest supports of a line', 'suggest PROJECT --route ROUTE'], ['As if something were changed', 'compare PROJECT --set routes.ROUTE.line=LINE'],
  ['The project as one file', 'expand PROJECT'], ['Drawing: side (SVG)', 'draw PROJECT --view side'], ['Drawing: plan (SVG)', 'draw PROJECT --view plan'],
  ['Drawing: a frame (SVG)', 'draw PROJECT --view front --frame FRAME'], ['Drawing: a line unrolled (SVG)', 'draw PROJECT --view strip --route ROUTE'],
  ['Model in space (glTF)', 'export PROJECT --to gltf'], ['A frame to cut (DXF)', 'export PROJECT --to dxf --frame FRAME'],
  ['The rules', 'rules'], ['A rule explained', 'explain chafe'], ['Tubes, cables, fittings', 'catalogue'],
  ['Schema of project files', 'schema'], ['All commands', '--help'],
];

/** The words of a command line: blanks part them, quotes hold them together. */
export function wordsOf(line) {
  const words = [];
  for (const [, ...parts] of line.matchAll(/((?:"[^"]*"|'[^']*'|[^\s"'])+)/g))
    words.push(parts[0].replace(/"([^"]*)"|'([^']*)'/g, (all, a, b) => a ?? b));
  return words[0] === 'linewright' ? words.slice(1) : words;
}

const quoted = (word) => (/[\s"']/.test(word) ? (word.includes('"') ? `'${word}'` : `"${word}"`) : word);

const endings = { csv: 'csv', json: 'json', sarif: 'sarif', svg: 'svg' };

/** The name under which the result of these words is saved. */
function fileName(words) {
  const [command] = words;
  const after = (option) => words[words.indexOf(option) + 1];
  const format = words.includes('--format') ? endings[after('--format')] : undefined;
  const own = { report: 'html', draw: 'svg', expand: 'yaml', schema: 'json', export: after('--to') === 'dxf' ? 'dxf' : 'glb' }[command];
  return `${command.replace(/^-+/, '')}.${format || own || 'txt'}`;
}

const binary = (bytes) => bytes.subarray(0, 4096).includes(0);

export class Commands {
  /** `run(words)` gives the outcome; `project()` the name of the project file and names of the project. */
  constructor({ run, project, made }) {
    Object.assign(this, { run, project, made });
    this.line = byId('command-line');
    this.choice = byId('command-choice');
    this.choice.append(element('option', { value: '' }, 'Choose a result'),
      ...asked.map(([name, line]) => element('option', { value: line }, name)));
    this.choice.addEventListener('change', () => this.choice.value && this.choose(this.choice.value));
    byId('command').addEventListener('submit', (event) => {
      event.preventDefault();
      this.show();
    });
    byId('command-save').addEventListener('click', () => this.result && save(this.result.name, this.result.bytes));
  }

  choose(line) {
    const { file, route, frame, lineType } = this.project();
    this.line.value = line.replace('PROJECT', quoted(file || '.')).replace('ROUTE', quoted(route || 'ROUTE'))
      .replace('FRAME', quoted(frame || 'FRAME')).replace('LINE', quoted(lineType || 'LINE'));
    this.show();
  }

  async show() {
    const words = wordsOf(this.line.value);
    if (!words.length) return;
    const output = byId('command-output');
    const image = byId('command-image');
    output.textContent = 'working';
    image.hidden = true;
    const answer = await this.run(words);
    if (answer.failure) {
      output.textContent = answer.stopped ? 'stopped' : `The checker failed: ${answer.failure}`;
      return;
    }
    const name = fileName(words);
    this.result = answer.result.length ? { name, bytes: answer.result } : null;
    const unreadable = binary(answer.result);
    output.textContent = answer.errors + (unreadable ? `${size(answer.result.length)}, not text: save it as a file` : textOf(answer.result));
    output.dataset.code = answer.code;
    byId('command-save').disabled = !this.result;
    byId('command-save').textContent = this.result ? `Save ${name}` : 'Save';
    if (name.endsWith('.svg') && this.result) this.draw(answer.result);
    if (answer.made.length) this.made(answer.made);
  }

  draw(bytes) {
    const image = byId('command-image');
    if (this.address) URL.revokeObjectURL(this.address);
    this.address = URL.createObjectURL(new Blob([bytes], { type: 'image/svg+xml' }));
    image.src = this.address;
    image.hidden = false;
  }
}
