// Within another page the report tells it which finding is chosen and how the picture is set, and is told
// which finding to show. Only the page around it is listened to, and nothing but a finding's name is taken.

const about = 'linewright ';

/** Scrolls to an element without moving the page around this one. */
export function bringUp(element) {
  scrollTo(0, scrollY + element.getBoundingClientRect().top - 60);
}

/** How the picture was set when the page around showed the last report, or nothing. */
export function stateFromOutside() {
  if (parent === window || !window.name.startsWith(about)) return null;
  try {
    return JSON.parse(window.name.slice(about.length));
  } catch {
    return null;
  }
}

/** `show(id)` brings a finding into view. Returns what to call when the reader has changed something. */
export function joinOutside(state, show) {
  if (parent === window) return () => {};
  const tell = (words) => parent.postMessage({ linewright: 'report', ...words }, '*');
  let told = state.finding;
  let waiting = 0;
  addEventListener('message', ({ source, data }) => {
    if (source !== parent || data?.linewright !== 'page' || typeof data.finding !== 'string') return;
    told = data.finding;
    show(data.finding);
  });
  const changed = () => {
    if (state.finding && state.finding !== told) tell({ finding: (told = state.finding) });
    clearTimeout(waiting);
    waiting = setTimeout(() => tell({ state: about + JSON.stringify(state) }), 200);
  };
  // The picture is what the reader is here for; once read further, the page stays where it was.
  if (state.scroll === undefined) bringUp(document.getElementById('picture'));
  else scrollTo(0, state.scroll);
  addEventListener('scroll', () => {
    state.scroll = scrollY;
    changed();
  });
  return changed;
}
