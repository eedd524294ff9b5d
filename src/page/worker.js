// Runs the checker beside the page: files and a command line in, its outcome out. Before this stands what
// loads the checker, `linewrightModule`.
'use strict';

const folder = '/project';
let checker = null;
/** Paths that the page knows of. */
const known = new Set();

const start = async (wasmBinary) => {
  checker = await linewrightModule({ wasmBinary, print: () => {}, printErr: () => {} });
  checker.FS.mkdir(folder);
  checker.FS.chdir(folder);
};

const makeFolders = (path) => {
  const parts = path.split('/').slice(0, -1);
  parts.reduce((above, part) => {
    const here = `${above}/${part}`;
    if (!checker.FS.analyzePath(here).exists) checker.FS.mkdir(here);
    return here;
  }, folder);
};

const take = ({ written, removed }) => {
  for (const path of removed) {
    known.delete(path);
    if (checker.FS.analyzePath(`${folder}/${path}`).exists) checker.FS.unlink(`${folder}/${path}`);
  }
  for (const [path, bytes] of written) {
    makeFolders(path);
    checker.FS.writeFile(`${folder}/${path}`, bytes);
    known.add(path);
  }
};

/** Files that a command has written, taken away again: the page says where they go. */
const madeFiles = (below = '') => {
  const made = [];
  for (const name of checker.FS.readdir(`${folder}/${below}`)) {
    if (name === '.' || name === '..') continue;
    const path = below + name;
    const { mode } = checker.FS.stat(`${folder}/${path}`);
    if (checker.FS.isDir(mode)) made.push(...madeFiles(`${path}/`));
    else if (!known.has(path)) {
      made.push([path, checker.FS.readFile(`${folder}/${path}`)]);
      checker.FS.unlink(`${folder}/${path}`);
    }
  }
  return made;
};

const run = (words) => {
  const bytes = new TextEncoder().encode(words.map((word) => `${word.replaceAll('\0', '')}\0`).join(''));
  const at = checker._malloc(bytes.length || 1);
  checker.HEAPU8.set(bytes, at);
  const code = checker._linewright_run(at, bytes.length);
  checker._free(at);
  const from = checker._linewright_result();
  const result = checker.HEAPU8.slice(from, from + checker._linewright_result_size());
  return { code, result, errors: checker.UTF8ToString(checker._linewright_errors()), made: madeFiles() };
};

onmessage = async ({ data }) => {
  try {
    if (data.wasm) await start(data.wasm);
    else take(data);
    postMessage({ number: data.number, ...(data.words ? run(data.words) : {}) });
  } catch (error) {
    postMessage({ number: data.number, failure: String(error) });
  }
};
