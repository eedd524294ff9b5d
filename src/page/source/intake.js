// Files from outside: dropped, chosen, or out of a folder that the reader opened to the page.

async function below(handle, path, found) {
  for await (const [name, each] of handle.entries()) {
    if (name.startsWith('.') || name === 'node_modules') continue;
    if (each.kind === 'directory') await below(each, `${path}${name}/`, found);
    else found.push({ path: path + name, file: await each.getFile() });
  }
  return found;
}

function entriesBelow(entry, path, found) {
  if (entry.isFile)
    return new Promise((tell, fail) => entry.file((file) => tell(found.push({ path: path + entry.name, file })), fail));
  const reader = entry.createReader();
  const next = () => new Promise((tell, fail) => reader.readEntries(tell, fail));
  return (async () => {
    for (let entries = await next(); entries.length; entries = await next())
      for (const each of entries) if (!each.name.startsWith('.')) await entriesBelow(each, `${path}${entry.name}/`, found);
  })();
}

/** What was dropped: {given, folder}. What the browser hands out it hands out at once, or never. */
export async function dropped(transfer) {
  const items = [...transfer.items].filter((each) => each.kind === 'file');
  const loose = [...transfer.files].map((file) => ({ path: file.name, file }));
  const handles = items.map((each) => each.getAsFileSystemHandle?.().catch(() => null));
  const entries = items.map((each) => each.webkitGetAsEntry?.());
  const given = [];
  let folder = null;
  for (const [i, handle] of (await Promise.all(handles)).entries()) {
    if (handle?.kind === 'directory') {
      folder = items.length === 1 ? handle : null;
      await below(handle, items.length === 1 ? '' : `${handle.name}/`, given);
    } else if (handle) given.push({ path: handle.name, file: await handle.getFile() });
    else if (entries[i]) await entriesBelow(entries[i], '', given);
    else return { given: loose, folder: null };
  }
  return { given: given.length ? given : loose, folder };
}

export const chosen = (input) =>
  [...input.files].map((file) => ({ path: file.webkitRelativePath || file.name, file }));

export async function openedFolder() {
  const folder = await showDirectoryPicker({ mode: 'readwrite' });
  return { given: await below(folder, '', []), folder };
}

/** Writes a file into the folder that was opened. */
export async function written(folder, path, bytes) {
  const parts = path.split('/');
  let here = folder;
  for (const part of parts.slice(0, -1)) here = await here.getDirectoryHandle(part, { create: true });
  const file = await (await here.getFileHandle(parts.at(-1), { create: true })).createWritable();
  await file.write(bytes);
  await file.close();
}
