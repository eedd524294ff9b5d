export const add = (a, b, k = 1) => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
export const cross = (a, b) =>
  [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const norm = (a) => Math.hypot(...a);
export const unit = (a) => {
  const length = norm(a) || 1;
  return a.map((each) => each / length);
};
export const between = (a, b, t) => a.map((each, i) => each + (b[i] - each) * t);
/** Turned about an axis through the origin, by the right-hand rule. */
export function turned(a, axis, angle) {
  const along = dot(axis, a) * (1 - Math.cos(angle));
  const square = cross(axis, a);
  return a.map((each, i) => each * Math.cos(angle) + square[i] * Math.sin(angle) + axis[i] * along);
}
/** The points of a flat array of numbers. */
export const points = (flat) =>
  Array.from({ length: flat.length / 3 }, (_, i) => flat.slice(3 * i, 3 * i + 3));
