/** An element with attributes and children; strings become text, never markup. */
export function element(tag, attributes = {}, ...children) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.append(...children);
  return made;
}

/** A verdict's mark: a shape of its own, so that colour carries nothing alone. */
export function verdictMark(verdict) {
  const space = 'http://www.w3.org/2000/svg';
  const svg = document.createElementNS(space, 'svg');
  svg.setAttribute('viewBox', '-8 -8 16 16');
  svg.setAttribute('class', 'mark');
  svg.setAttribute('aria-hidden', 'true');
  const use = document.createElementNS(space, 'use');
  use.setAttribute('href', `#mark-${verdict}`);
  svg.append(use);
  return svg;
}

const marks = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** A name as it is shown: marks that turn the reading direction are written out. */
export function shown(name) {
  return name.replace(marks, (mark) =>
    `[U+${mark.codePointAt(0).toString(16).toUpperCase().padStart(4, '0')}]`);
}
