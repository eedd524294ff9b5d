// Geometry of lines and marks: centres, directions off them and radii, so that what is thin can be
// drawn no thinner than the eye sees.
import { add, between, cross, dot, norm, points, unit } from './vectors.js';

const sides = 8;

class Swept {
  constructor() {
    this.centre = [];
    this.offset = [];
    this.radius = [];
    this.index = [];
  }

  get count() {
    return this.radius.length;
  }

  ring(at, first, second, radius) {
    for (let i = 0; i < sides; ++i) {
      const angle = (2 * Math.PI * i) / sides;
      const off = add(first.map((each) => each * Math.cos(angle)), second, Math.sin(angle));
      this.vertex(at, off, radius);
    }
  }

  vertex(at, off, radius) {
    this.centre.push(...at);
    this.offset.push(...off);
    this.radius.push(radius);
  }

  join(from, to) {
    for (let i = 0; i < sides; ++i) {
      const next = (i + 1) % sides;
      this.index.push(from + i, to + i, to + next, from + i, to + next, from + next);
    }
  }
}

/** A round body along `path`, with a radius at each point; parted where a radius is null. */
export function tube(path, radii) {
  const swept = new Swept();
  let across = null;
  let before = -1;
  path.forEach((at, i) => {
    const along = unit(add(path[Math.min(i + 1, path.length - 1)], path[Math.max(i - 1, 0)], -1));
    if (!across) across = cross(along, Math.abs(along[2]) < 0.9 ? [0, 0, 1] : [0, 1, 0]);
    across = unit(add(across, along, -dot(across, along)));
    if (radii[i] === null) {
      before = -1;
      return;
    }
    const ring = swept.count;
    swept.ring(at, across, cross(along, across), radii[i]);
    if (before >= 0) swept.join(before, ring);
    before = ring;
  });
  return swept;
}

/** Small eight-sided marks. */
export function marks(places, radius) {
  const swept = new Swept();
  const corners = [[1, 0, 0], [0, 1, 0], [-1, 0, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]];
  for (const at of places) {
    const first = swept.count;
    for (const corner of corners) swept.vertex(at, corner, radius);
    for (let i = 0; i < 4; ++i)
      swept.index.push(first + i, first + ((i + 1) % 4), first + 4, first + i, first + 5,
        first + ((i + 1) % 4));
  }
  return swept;
}

/** The part of a line between two distances along it. */
export function part(route, path, from, to) {
  const at = (distance) => {
    const along = Math.max(route.along[0], Math.min(route.along.at(-1), distance));
    const i = Math.max(1, route.along.findIndex((each) => each >= along));
    const t = (along - route.along[i - 1]) / (route.along[i] - route.along[i - 1] || 1);
    return between(path[i - 1], path[i], t);
  };
  const inner = path.filter((_, i) => route.along[i] > from && route.along[i] < to);
  return [at(from), ...inner, at(to)];
}

/** Corners' bounds as [least, most]. */
export function bounds(scene) {
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  const include = (flat) => {
    for (let i = 0; i < flat.length; ++i) {
      least[i % 3] = Math.min(least[i % 3], flat[i]);
      most[i % 3] = Math.max(most[i % 3], flat[i]);
    }
  };
  for (const each of scene.parts) {
    include(each.faces);
    include(each.edges);
  }
  for (const route of scene.routes) include(route.at);
  for (const mover of scene.movers) include(mover.points);
  return Number.isFinite(least[0]) ? [least, most] : [[0, 0, 0], [1, 1, 1]];
}

/** Places between which the whole picture lies. */
export function outline(scene) {
  const flat = [...scene.routes.map((each) => each.at), ...scene.movers.map((each) => each.points),
    ...scene.parts.map((each) => (each.edges.length ? each.edges : each.faces))].flat();
  return flat.length ? points(flat) : [[0, 0, 0]];
}

export const spanOf = ([least, most]) => norm(add(most, least, -1));
