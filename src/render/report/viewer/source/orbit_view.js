// Where the picture is seen from: round a place, at a distance, by two angles.
import { spanOf } from './shapes.js';
import { add, between, cross, dot, unit } from './vectors.js';

const radians = Math.PI / 180;
/** Angles of yaw and pitch in degrees: from the left, from above, from the nose. */
export const presets = { side: [-90, 0], plan: [-90, 89], front: [180, 0], slant: [-122, 24] };

export class OrbitView {
  constructor(box, outline, state, onChange) {
    this.fov = 30;
    this.box = box;
    this.outline = outline;
    this.onChange = onChange;
    this.state = state;
    this.aspect = 1.6;
    this.farthest = 6 * Math.max(10, spanOf(box));
    if (!state.eye) this.reset();
  }

  reset(name = 'slant') {
    const [yaw, pitch] = presets[name];
    this.state.eye = { yaw, pitch, ...this.fitting(yaw, pitch) };
    this.fits = name;
    this.onChange();
  }

  /** The eye that sees all of it, in the middle of the stage. */
  fitting(yaw, pitch) {
    const away = direction(yaw, pitch);
    const right = unit(cross([0, 0, 1], away));
    const up = cross(away, right);
    const axes = [right, up, away];
    const least = [Infinity, Infinity, Infinity];
    const most = [-Infinity, -Infinity, -Infinity];
    for (const at of this.outline)
      axes.forEach((axis, i) => {
        const along = dot(at, axis);
        least[i] = Math.min(least[i], along);
        most[i] = Math.max(most[i], along);
      });
    const middle = between(least, most, 0.5);
    const target = axes.reduce((sum, axis, i) => add(sum, axis, middle[i]), [0, 0, 0]);
    const tangent = Math.tan((this.fov / 2) * radians);
    const distance = this.outline.reduce((farthest, at) => {
      const off = add(at, target, -1);
      return Math.max(farthest, dot(off, away) + (1.15 * Math.abs(dot(off, up))) / tangent,
        dot(off, away) + (1.06 * Math.abs(dot(off, right))) / (tangent * this.aspect));
    }, 1);
    return { target, distance };
  }

  away() {
    return direction(this.state.eye.yaw, this.state.eye.pitch);
  }

  turn(yaw, pitch) {
    const eye = this.state.eye;
    this.fits = null;
    eye.yaw += yaw;
    eye.pitch = Math.max(-89, Math.min(89, eye.pitch + pitch));
    this.onChange();
  }

  zoom(factor) {
    const eye = this.state.eye;
    this.fits = null;
    eye.distance = Math.max(1, Math.min(this.farthest, eye.distance * factor));
    this.onChange();
  }

  /** By shares of the stage's height. */
  pan(x, y) {
    const eye = this.state.eye;
    this.fits = null;
    const right = unit(cross([0, 0, 1], this.away()));
    const up = cross(this.away(), right);
    const scale = 2 * Math.tan((this.fov / 2) * radians) * eye.distance;
    eye.target = add(add(eye.target, right, -x * scale), up, y * scale);
    this.onChange();
  }

  goTo(target, distance) {
    const from = { ...this.state.eye };
    this.fits = null;
    const began = performance.now();
    const length = matchMedia('(prefers-reduced-motion: reduce)').matches ? 0 : 450;
    this.moving = began;
    const step = (now) => {
      if (this.moving !== began) return;
      const t = length ? Math.min(1, Math.max(0, now - began) / length) : 1;
      const eased = t * t * (3 - 2 * t);
      this.state.eye.target = between(from.target, target, eased);
      this.state.eye.distance = from.distance * (distance / from.distance) ** eased;
      this.onChange();
      if (t < 1) requestAnimationFrame(step);
    };
    step(began);
  }

  place(camera, [width, height]) {
    this.aspect = width / height;
    if (this.fits) Object.assign(this.state.eye, this.fitting(this.state.eye.yaw, this.state.eye.pitch));
    const { target, distance } = this.state.eye;
    camera.perspective({ fov: this.fov, aspect: this.aspect, near: distance / 200,
      far: distance + this.farthest });
    camera.position.set(...add(target, this.away(), distance));
    camera.lookAt(target);
    camera.updateMatrixWorld();
  }
}

function direction(yaw, pitch) {
  const level = Math.cos(pitch * radians);
  return [level * Math.cos(yaw * radians), level * Math.sin(yaw * radians), Math.sin(pitch * radians)];
}
