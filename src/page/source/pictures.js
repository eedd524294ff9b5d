// The report in a frame of its own: the same page as `report` writes, cut off from this one but for a few
// words on which finding is chosen.
import { byId, element } from './element.js';

export class Pictures {
  constructor({ picked }) {
    this.place = byId('report');
    this.state = '';
    addEventListener('message', ({ source, data }) => {
      if (!this.frame || source !== this.frame.contentWindow || data?.linewright !== 'report') return;
      if (typeof data.state === 'string') this.state = data.state;
      if (typeof data.finding === 'string') picked(data.finding);
    });
  }

  /** Shows a page in place of the last one, once it is there. */
  show(html) {
    this.coming?.remove();
    const frame = element('iframe', { sandbox: 'allow-scripts', title: 'Report with pictures', name: this.state });
    this.coming = frame;
    frame.srcdoc = html;
    frame.addEventListener('load', () => {
      if (this.coming !== frame) return;
      this.frame?.remove();
      this.frame = frame;
      this.coming = null;
      frame.classList.add('shown');
      if (this.wanted) this.goTo(this.wanted);
    }, { once: true });
    this.place.append(frame);
  }

  clear() {
    this.coming?.remove();
    this.frame?.remove();
    this.coming = this.frame = null;
    this.state = '';
  }

  goTo(id) {
    this.wanted = id;
    this.frame?.contentWindow.postMessage({ linewright: 'page', finding: id }, '*');
  }
}
