// Words and marks over the picture.
import { element, shown, verdictMark } from './element.js';
import { between } from './vectors.js';

export class Overlay {
  constructor(box, scene, picture) {
    this.picture = picture;
    const placed = scene.findings.filter((each) => each.at);
    this.findings = placed.map((finding, i) => {
      const words = shown(`${finding.verdict}: ${finding.rule}, ${finding.route}: ${finding.message}`);
      const button = element('button', { type: 'button', class: finding.verdict, 'aria-label': words,
        title: words.slice(0, 300) }, verdictMark(finding.verdict));
      button.addEventListener('click', () => picture.goTo(finding));
      // The worst, which come first, lie on top.
      button.style.zIndex = placed.length - i;
      box.append(button);
      return { node: button, at: finding.at, finding };
    });
    const label = (name, at, kind, css = '') => {
      const node = element('span', { class: css, 'aria-hidden': 'true' }, shown(name).slice(0, 60));
      box.append(node);
      return { node, at, name, kind };
    };
    this.labels = scene.routes.map((route) =>
      label(route.name, route.path[Math.floor(route.path.length / 2)], 'lines'));
    for (const part of scene.parts) {
      if (part.kind === 'pulleys') continue;
      const at = top(part);
      if (at) this.labels.push(label(part.name, at, part.kind, 'axis-name'));
    }
  }

  /** Puts everything where it belongs; a word that would cover another is left out. */
  place() {
    const { picture } = this;
    const taken = [];
    const stage = picture.size;
    const put = (node, at) => {
      node.style.transform = `translate(${at[0].toFixed(1)}px, ${at[1].toFixed(1)}px)`;
    };
    const inside = (at) => at && at[0] > 0 && at[1] > 0 && at[0] < stage[0] && at[1] < stage[1];
    for (const { node, at, finding } of this.findings) {
      const there = picture.isShown('lines', finding.route, at[0]) && picture.onStage(at);
      node.hidden = !inside(there);
      node.style.display = node.hidden ? 'none' : '';
      node.classList.toggle('chosen', finding.id === picture.state.finding);
      if (node.hidden) continue;
      put(node, there);
      taken.push([there[0] - 12, there[1] - 12, there[0] + 12, there[1] + 12]);
    }
    const chosenFirst = [...this.labels].sort((a, b) => rank(b, picture) - rank(a, picture));
    for (const each of chosenFirst) {
      const wanted = picture.state.names || each.name === picture.state.route;
      const there = wanted && picture.isShown(each.kind, each.name, each.at[0]) && picture.onStage(each.at);
      const fits = inside(there) && this.fit(each, there, taken);
      each.node.style.display = fits ? '' : 'none';
      if (fits) put(each.node, fits);
    }
  }

  fit(each, at, taken) {
    each.width ||= Math.min(176, 6 + 6.2 * each.node.textContent.length);
    const [width, height] = [each.width, 17];
    const stage = this.picture.size;
    for (const dy of [-height - 4, 4, -2 * height - 8, height + 8]) {
      const x = Math.max(2, Math.min(stage[0] - width - 2, at[0] - width / 2));
      const box = [x, at[1] + dy, x + width, at[1] + dy + height];
      if (box[1] < 0 || box[3] > stage[1]) continue;
      if (taken.some((other) => box[0] < other[2] && box[2] > other[0] && box[1] < other[3] && box[3] > other[1]))
        continue;
      taken.push(box);
      return box;
    }
    return null;
  }
}

const rank = (label, picture) =>
  (label.kind === 'lines' && label.name === picture.state.route ? 2 : 0) + (label.kind === 'lines' ? 1 : 0);

/** The middle of a part at its top. */
function top(part) {
  const flat = part.edges.length ? part.edges : part.faces;
  if (!flat.length) return null;
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  flat.forEach((each, i) => {
    least[i % 3] = Math.min(least[i % 3], each);
    most[i % 3] = Math.max(most[i % 3], each);
  });
  const middle = between(least, most, 0.5);
  return [middle[0], middle[1], most[2]];
}
