// Pieces of the page. Text is text: no name and no content is ever read as markup.

export function element(name, attributes = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key === 'on') for (const [event, act] of Object.entries(value)) made.addEventListener(event, act);
    else if (value === true) made.setAttribute(key, '');
    else if (value !== false && value !== undefined) made.setAttribute(key, value);
  }
  made.append(...children);
  return made;
}

export const byId = (id) => document.getElementById(id);

/** Gives the reader a file to save. */
export function save(name, bytes, type = 'application/octet-stream') {
  const address = URL.createObjectURL(new Blob([bytes], { type }));
  const link = element('a', { href: address, download: name.split('/').pop() });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60000);
}

export function size(bytes) {
  if (bytes < 1024) return `${bytes} bytes`;
  return bytes < 1 << 20 ? `${(bytes / 1024).toFixed(1)} KiB` : `${(bytes / (1 << 20)).toFixed(1)} MiB`;
}
