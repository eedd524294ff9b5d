// Mouse, touch and keys.

export function handleInput(canvas, picture) {
  const held = new Map();
  let moved = 0;
  const view = picture.view;

  canvas.addEventListener('contextmenu', (event) => event.preventDefault());
  canvas.addEventListener('pointerdown', (event) => {
    canvas.setPointerCapture(event.pointerId);
    held.set(event.pointerId, [event.offsetX, event.offsetY]);
    moved = held.size > 1 ? 99 : 0;
  });
  canvas.addEventListener('pointermove', (event) => {
    const last = held.get(event.pointerId);
    if (!last) return;
    const [dx, dy] = [event.offsetX - last[0], event.offsetY - last[1]];
    moved += Math.abs(dx) + Math.abs(dy);
    if (held.size === 2) {
      const other = [...held].find(([id]) => id !== event.pointerId)[1];
      const apart = (at) => Math.hypot(at[0] - other[0], at[1] - other[1]) || 1;
      view.zoom(apart(last) / apart([event.offsetX, event.offsetY]));
      view.pan(dx / 2 / picture.size[1], dy / 2 / picture.size[1]);
    } else if (event.shiftKey || event.buttons & 6) {
      view.pan(dx / picture.size[1], dy / picture.size[1]);
    } else {
      view.turn(-0.4 * dx, 0.4 * dy);
    }
    held.set(event.pointerId, [event.offsetX, event.offsetY]);
  });
  const release = (event) => {
    const was = held.delete(event.pointerId);
    if (!was || moved > 5 || event.type !== 'pointerup') return;
    const name = picture.routeNear(event.offsetX, event.offsetY);
    if (name) picture.choose(name);
  };
  canvas.addEventListener('pointerup', release);
  canvas.addEventListener('pointercancel', release);
  // The page scrolls over a picture that nobody has taken hold of.
  canvas.addEventListener('wheel', (event) => {
    if (document.activeElement !== canvas && !event.ctrlKey) return;
    event.preventDefault();
    view.zoom(Math.exp(Math.max(-60, Math.min(60, event.deltaY)) / 300));
  }, { passive: false });

  const turns = { ArrowLeft: [-6, 0], ArrowRight: [6, 0], ArrowUp: [0, 6], ArrowDown: [0, -6] };
  canvas.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const turn = turns[event.key];
    if (turn && event.shiftKey) view.pan(-turn[0] / 60, turn[1] / 60);
    else if (turn) view.turn(...turn);
    else if (event.key === '+' || event.key === '=') view.zoom(0.85);
    else if (event.key === '-') view.zoom(1 / 0.85);
    else if (event.key === 'Home') view.reset();
    else if (event.key === 'n' || event.key === 'p') stepFinding(picture, event.key === 'n' ? 1 : -1);
    else return;
    event.preventDefault();
  });
}

/** The next finding that has a place, or the one before. */
export function stepFinding(picture, by) {
  const placed = picture.scene.findings.filter((each) => each.at);
  if (!placed.length) return;
  const now = placed.findIndex((each) => each.id === picture.state.finding);
  const next = now < 0 ? (by > 0 ? 0 : placed.length - 1) : (now + by + placed.length) % placed.length;
  picture.goTo(placed[next]);
}
