// The files of a project, as bytes under their paths, and which of them is the project file.

const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** Kinds that a project can be made of. */
const kinds = /\.(ya?ml|csv|txt|stl|obj|glb)$/i;
export const isText = (path) => /\.(ya?ml|csv|txt|obj)$/i.test(path);
const isYaml = (path) => /\.ya?ml$/i.test(path);
const most = { files: 2000, bytes: 512 << 20 };

export const textOf = (bytes) => decoder.decode(bytes);
export const bytesOf = (text) => encoder.encode(text);

/** A path that stays below the folder, or nothing. */
function plainPath(path) {
  const parts = path.split('/').filter((each) => each && each !== '.');
  const plain = parts.length && parts.every((each) => each !== '..' && !each.includes('\0') && !each.startsWith('.'));
  return plain ? parts.join('/') : '';
}

/** Without the folder that all paths begin with. */
function withoutTop(paths) {
  const top = paths[0]?.split('/')[0];
  const inOne = paths.every((each) => each.includes('/') && each.split('/')[0] === top);
  return inOne ? (path) => path.slice(top.length + 1) : (path) => path;
}

/** What is kept of what was given, and what is said of the rest. */
export async function taken(given) {
  const files = new Map();
  let bytes = 0;
  let left = 0;
  const plain = given.map(({ path, file }) => ({ path: plainPath(path), file })).filter(({ path }) => path);
  left += given.length - plain.length;
  const short = withoutTop(plain.map(({ path }) => path));
  for (const { path, file } of plain) {
    if (!kinds.test(path) || files.size >= most.files || bytes + file.size > most.bytes) {
      left += 1;
      continue;
    }
    bytes += file.size;
    files.set(short(path), new Uint8Array(await file.arrayBuffer()));
  }
  const note = left ? `${left} ${left === 1 ? 'file was' : 'files were'} left out: no part of a project, or too large` : '';
  return { files, note };
}

/** Files that can be a project file: those that no other file includes; first `project.yaml`, then those
 *  that include others. */
export function projectFiles(files) {
  const included = new Set();
  const candidates = [];
  const including = new Set();
  for (const [path, bytes] of files) {
    if (!isYaml(path)) continue;
    const text = textOf(bytes);
    const folder = path.includes('/') ? path.slice(0, path.lastIndexOf('/') + 1) : '';
    const list = /^include:\s*(\[[^\]]*\]|(?:\n\s*-\s.*)+)/m.exec(text);
    if (list) including.add(path);
    for (const name of list ? list[1].match(/[^\s,[\]'"]+\.ya?ml/g) || [] : []) included.add(plainPath(folder + name));
    if (/^linewright:/m.test(text)) candidates.push(path);
  }
  const chosen = candidates.filter((path) => !included.has(path));
  const rank = (path) =>
    [!/(^|\/)project\.ya?ml$/.test(path), !including.has(path), path.split('/').length, path].join(' ');
  return (chosen.length ? chosen : candidates).sort((a, b) => (rank(a) < rank(b) ? -1 : 1));
}
