// What the reader has set stays when the page is loaded again.
import { element } from './element.js';
import { stateFromOutside } from './embedded.js';

const key = `linewright ${location.pathname}`;

export function keptState() {
  const fresh = { hidden: [], reach: 'likely', names: true, travel: 0, temperature: null, attitude: '' };
  try {
    const kept = stateFromOutside() || JSON.parse(sessionStorage.getItem(key));
    for (const id of (kept && kept.open) || []) {
      const details = document.getElementById(id);
      if (details) details.open = true;
    }
    return { ...fresh, ...kept };
  } catch {
    return fresh;
  }
}

export function keepState(state) {
  try {
    const open = [...document.querySelectorAll('details[id][open]')].map((each) => each.id);
    sessionStorage.setItem(key, JSON.stringify({ ...state, open }));
  } catch {
    // Where nothing may be stored, the view begins anew.
  }
}

/** A page that is written again on each save can load itself again, if the reader says so. */
export function reloadWhenTold(section, state) {
  const box = element('input', { type: 'checkbox' });
  box.checked = Boolean(state.reload);
  const label = element('label', {}, box, ' Load this page again every 2 seconds');
  section.querySelector('h2, #viewer').insertAdjacentElement('beforebegin', label);
  let pressed = false;
  addEventListener('pointerdown', () => (pressed = true));
  addEventListener('pointerup', () => (pressed = false));
  box.addEventListener('change', () => (state.reload = box.checked));
  setInterval(() => {
    if (!state.reload || pressed) return;
    keepState(state);
    location.reload();
  }, 2000);
}
