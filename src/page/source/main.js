/*! With CodeMirror and fflate, both under the MIT licence: see LICENSES */
// The page: files, findings and pictures of a project, checked here and nowhere else.
import { zipSync } from 'fflate';
import { byId, element, save, size } from './element.js';
import { Checker } from './checker.js';
import { Commands } from './commands.js';
import { Editor } from './editor.js';
import { errorsOf, findingsOf, tallyWords } from './findings.js';
import { chosen, dropped, openedFolder, written } from './intake.js';
import { clear, keep, kept } from './kept.js';
import { Pictures } from './pictures.js';
import { bytesOf, isText, projectFiles, taken, textOf } from './project.js';
import { lacking } from './lacking.js';

/** How long a hand rests, in ms, before what it typed is checked or kept. */
const rest = { check: 450, keep: 300 };

class Page {
  constructor() {
    this.files = new Map();
    this.findings = [];
    this.state = { name: '', project: '', open: '' };
    this.checker = new Checker();
    this.editor = new Editor(byId('editor'), {
      changed: (text) => this.typed(text),
      atLine: (line) => this.pickAt(line),
    });
    this.pictures = new Pictures({ picked: (id) => this.pick(id, 'picture') });
    this.commands = new Commands({
      run: (words) => this.run(words),
      project: () => this.names(),
      made: (made) => this.add(made),
    });
    this.listen();
  }

  listen() {
    const on = (id, event, act) => byId(id).addEventListener(event, act);
    on('open-files', 'change', ({ target }) => this.given(chosen(target)).then(() => (target.value = '')));
    on('open-folder', 'change', ({ target }) => this.given(chosen(target)).then(() => (target.value = '')));
    on('open-handle', 'click', () => openedFolder().then(({ given, folder }) => this.given(given, folder), () => {}));
    on('demo', 'click', () => this.demo());
    on('starter', 'click', () => this.starter());
    on('zip', 'click', () => this.zip());
    on('write', 'click', () => this.writeBack());
    on('clear', 'click', () => this.forget());
    on('project-file', 'change', ({ target }) => {
      this.state.project = target.value;
      this.check();
      this.keepSoon();
    });
    on('stop', 'click', () => this.checker.stop());
    byId('open-handle').hidden = !('showDirectoryPicker' in window);
    for (const tab of document.querySelectorAll('[role=tab]')) {
      tab.addEventListener('click', () => this.showTab(tab));
      tab.addEventListener('keydown', (event) => this.stepTab(event, tab));
    }
    addEventListener('dragover', (event) => {
      event.preventDefault();
      document.body.classList.add('over');
    });
    addEventListener('dragleave', (event) => event.relatedTarget || document.body.classList.remove('over'));
    addEventListener('drop', (event) => {
      event.preventDefault();
      document.body.classList.remove('over');
      dropped(event.dataTransfer).then(({ given, folder }) => this.given(given, folder),
        () => this.say('This browser does not read a dropped folder here: choose it with “Open folder”, or drop its files.'));
    });
    addEventListener('visibilitychange', () => document.hidden && this.keepNow());
    addEventListener('pagehide', () => this.keepNow());
  }

  showTab(tab) {
    for (const each of document.querySelectorAll('[role=tab]')) {
      const here = each === tab;
      each.setAttribute('aria-selected', here);
      each.tabIndex = here ? 0 : -1;
      byId(each.getAttribute('aria-controls')).hidden = !here;
    }
  }

  stepTab(event, tab) {
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (!by) return;
    const tabs = [...document.querySelectorAll('[role=tab]')];
    const next = tabs[(tabs.indexOf(tab) + by + tabs.length) % tabs.length];
    this.showTab(next);
    next.focus();
  }

  say(words) {
    byId('note').textContent = words;
  }

  // Files come in.

  async begin() {
    const last = await kept();
    if (last?.files?.length) this.take(new Map(last.files), last, 'What you had here last is back.');
    else this.demo();
  }

  demo() {
    const files = JSON.parse(byId('demo-files').textContent);
    this.take(new Map(Object.entries(files).map(([path, text]) => [path, bytesOf(text)])),
      { name: 'demo', project: 'as-drawn.yaml' }, 'The demo: an invented aeroplane as first drawn, with faults to find.');
  }

  async starter() {
    const answer = await this.checker.run(['init', 'my-aeroplane', '--quiet'], new Map());
    if (answer.failure) return this.say(`The checker failed: ${answer.failure}`);
    const files = new Map(answer.made.map(([path, bytes]) => [path.replace('my-aeroplane/', ''), bytes])
      .filter(([path]) => path.endsWith('.yaml')));
    this.take(files, { name: 'my-aeroplane' }, 'A small project that checks clean, to begin with.');
  }

  async given(given, folder = null) {
    if (!given.length) return;
    const { files, note } = await taken(given);
    if (!projectFiles(files).length && !this.fits(files))
      return this.say(`No project file among ${given.length} ${given.length === 1 ? 'file' : 'files'}: one begins with “linewright: 1”. ${note}`);
    if (projectFiles(files).length) {
      const top = given[0].path.includes('/') ? given[0].path.split('/')[0] : folder?.name;
      this.take(files, { name: top || 'project' }, note, folder);
    } else this.add([...files], note);
  }

  /** Files without a project file, such as readings or a mesh, join the project that is open. */
  fits(files) {
    return this.files.size > 0 && files.size > 0;
  }

  add(made, note = '') {
    for (const [path, bytes] of made) this.files.set(path, bytes);
    this.say(`Added: ${made.map(([path]) => path).join(', ')}. ${note}`);
    this.listFiles();
    this.check();
    this.keepSoon();
  }

  take(files, { name, project, open }, note, folder = null) {
    this.files = files;
    this.folder = folder;
    const roots = projectFiles(files);
    this.state = { name, project: roots.includes(project) ? project : roots[0] || '', open: '' };
    this.editor.forget();
    this.pictures.clear();
    this.findings = [];
    this.picked = '';
    this.say(note);
    byId('write').hidden = !folder;
    this.listFiles();
    this.openFile(files.has(open) ? open : this.state.project || [...files.keys()][0]);
    this.check();
    this.keepSoon();
  }

  // The files are shown.

  listFiles() {
    const roots = projectFiles(this.files);
    const short = (path) => (path.length > 60 ? `${path.slice(0, 57)}…` : path);
    byId('project-file').replaceChildren(...roots.map((path) => element('option', { value: path }, short(path))));
    byId('project-file').value = this.state.project;
    byId('files').replaceChildren(...[...this.files.keys()].sort().map((path) =>
      element('li', {}, element('button', {
        type: 'button', 'data-path': path, on: { click: () => this.openFile(path, true) },
      }, short(path)))));
    this.countFindings();
    byId('name').textContent = this.state.name;
  }

  countFindings() {
    for (const button of document.querySelectorAll('#files button')) {
      const count = this.findings.filter(({ location }) => this.inFolder(location.file) === button.dataset.path).length;
      button.querySelector('span')?.remove();
      if (count) button.append(element('span', { class: 'count', title: `${count} found` }, ` ${count}`));
      button.setAttribute('aria-current', button.dataset.path === this.state.open);
    }
  }

  openFile(path, focus = false) {
    const bytes = this.files.get(path);
    if (!bytes) return;
    this.state.open = path;
    if (isText(path)) this.editor.open(path, textOf(bytes));
    else this.editor.open(path, `${size(bytes.length)}, not text`, true);
    this.editor.mark(this.placed());
    this.countFindings();
    if (focus) this.editor.view.focus();
  }

  typed(text) {
    this.files.set(this.state.open, bytesOf(text));
    this.keepSoon();
    clearTimeout(this.toCheck);
    this.toCheck = setTimeout(() => this.check(), rest.check);
  }

  // The checker works.

  /** Runs a command, unless it is no longer `wanted` when its turn comes. */
  async run(words, wanted) {
    const from = performance.now();
    this.running = (this.running || 0) + 1;
    byId('working').hidden = false;
    const tick = setInterval(() => {
      const seconds = Math.round((performance.now() - from) / 1000);
      if (seconds >= 1) byId('seconds').textContent = `working, ${seconds} s`;
    }, 500);
    const answer = await this.checker.run(words, this.files, wanted);
    clearInterval(tick);
    this.running -= 1;
    if (!this.running) byId('working').hidden = true;
    byId('seconds').textContent = 'working';
    return { ...answer, seconds: (performance.now() - from) / 1000 };
  }

  /** Checks, then draws; what is typed meanwhile makes both void. */
  async check() {
    clearTimeout(this.toCheck);
    const turn = (this.turn = (this.turn || 0) + 1);
    const { project } = this.state;
    if (!project) return this.told({ errors: [], words: 'There is no project file: one begins with “linewright: 1”.' });
    const wanted = () => turn === this.turn;
    const answer = await this.run(['check', project, '--format', 'json'], wanted);
    if (!wanted()) return;
    byId('took').textContent = answer.failure ? '' : `checked in ${answer.seconds.toFixed(2)} s`;
    if (answer.failure) return this.told({ errors: [], words: answer.stopped ? 'Stopped.' : `The checker failed: ${answer.failure}` });
    if (answer.code > 1) {
      this.told({ errors: errorsOf(answer.errors), words: 'Nothing was judged: the files have errors.', said: answer.errors });
      return;
    }
    const found = JSON.parse(textOf(answer.result));
    this.report = found;
    this.told({ errors: findingsOf(found), words: tallyWords(found.summary) });
    const page = await this.run(['report', project], wanted);
    if (wanted() && !page.failure && page.code <= 1) this.pictures.show(textOf(page.result));
  }

  told({ errors, words, said = '' }) {
    this.findings = errors;
    byId('tally').textContent = words;
    byId('said').textContent = said;
    byId('said').hidden = !said;
    byId('findings').replaceChildren(...errors.map((each) => this.item(each)));
    this.editor.mark(this.placed());
    this.countFindings();
    if (this.picked) this.markPicked();
  }

  item(finding) {
    const { verdict, rule, route, message, mend, location, id } = finding;
    const where = location.file ? `${location.file}:${location.line}` : '';
    return element('li', { class: verdict, 'data-id': id },
      element('button', { type: 'button', on: { click: () => this.pick(id, 'list') } },
        element('b', { class: 'verdict' }, verdict), ' ', element('code', {}, rule), rule ? ' ' : '',
        element('bdi', {}, route ? `${route}: ` : ''), element('span', {}, message)),
      element('p', {}, element('bdi', { class: 'where' }, where), mend ? ` mend: ${mend}` : ''));
  }

  /** A file of the project as the findings name it, from the project file's folder. */
  inFolder(file) {
    const { project } = this.state;
    const folder = project.includes('/') ? project.slice(0, project.lastIndexOf('/') + 1) : '';
    return this.files.has(file) ? file : folder + file;
  }

  placed() {
    return this.findings.map((each) => ({ ...each, location: { ...each.location, file: this.inFolder(each.location.file) } }));
  }

  /** A finding picked anywhere is shown everywhere. */
  pick(id, from) {
    const finding = this.placed().find((each) => each.id === id);
    if (!finding) return;
    this.picked = id;
    this.markPicked(from !== 'list');
    if (from !== 'editor') {
      if (this.files.has(finding.location.file) && this.state.open !== finding.location.file) this.openFile(finding.location.file);
      if (this.state.open === finding.location.file) this.editor.goTo(finding.location.line, from === 'list' && innerWidth > 900);
    }
    if (from !== 'picture') this.pictures.goTo(id);
  }

  pickAt(line) {
    const there = this.placed().find(({ location }) => location.file === this.state.open && location.line === line);
    if (there && there.id !== this.picked) this.pick(there.id, 'editor');
  }

  markPicked(scroll = false) {
    for (const item of document.querySelectorAll('#findings li')) {
      const here = item.dataset.id === this.picked;
      item.querySelector('button').setAttribute('aria-current', here);
      if (here && scroll) item.scrollIntoView({ block: 'nearest' });
    }
  }

  names() {
    const [route] = this.report?.routes || [];
    const frame = [...this.files.values()].map(textOf).map((text) => /frames:\s*\n\s*-\s*\{?\s*name:\s*([\w-]+)/.exec(text)?.[1]).find(Boolean);
    return { file: this.state.project, route: route?.name, lineType: route?.line, frame };
  }

  // Files go out, or stay.

  zip() {
    const top = (this.state.name || 'project').replace(/[^\w.-]+/g, '-');
    const packed = zipSync(Object.fromEntries([...this.files].map(([path, bytes]) => [`${top}/${path}`, bytes])));
    save(`${top}.zip`, packed, 'application/zip');
  }

  async writeBack() {
    try {
      for (const [path, bytes] of this.files) await written(this.folder, path, bytes);
      this.say(`Written into the folder ${this.folder.name}.`);
    } catch (error) {
      this.say(`The folder cannot be written to: ${error.message}`);
    }
  }

  keepSoon() {
    clearTimeout(this.toKeep);
    this.toKeep = setTimeout(() => this.keepNow(), rest.keep);
  }

  async keepNow() {
    clearTimeout(this.toKeep);
    if (!this.files.size) return;
    const done = await keep({ ...this.state, files: [...this.files] });
    byId('kept').textContent = done ? 'Kept in this browser, and sent nowhere.' : 'This browser keeps nothing: save the .zip before you close the page.';
  }

  async forget() {
    await clear();
    this.take(new Map(), { name: '' }, 'Cleared: this browser keeps nothing of it any more.');
    clearTimeout(this.toKeep);
    byId('kept').textContent = 'Nothing is kept.';
    this.editor.open('', '', true);
    this.told({ errors: [], words: 'No project is open.' });
  }
}

const missing = lacking();
if (missing.length) {
  byId('lacking').textContent = `This browser lacks ${missing.join(', ')}. Of this year's browsers all have them.`;
  byId('lacking').hidden = false;
  document.querySelector('main').hidden = true;
} else {
  byId('start').hidden = true;
  const page = new Page();
  page.begin();
}
