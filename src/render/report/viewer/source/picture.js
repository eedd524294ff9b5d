// The picture itself: what is drawn, from where, and what of it is shown.
import { Camera, Geometry, Mesh, Program, Renderer, Transform } from 'ogl';
import { OrbitView } from './orbit_view.js';
import { bounds, marks, outline, part, tube } from './shapes.js';
import { flatShader, linesShader, sweptShader } from './shaders.js';
import { add, points, turned } from './vectors.js';

const colourNames = ['sky', 'part', 'part-edge', 'air', 'pressure', 'cable', 'wire', 'accent', 'ink', 'chosen', 'water'];

function rgb(style, name, context) {
  context.fillStyle = style.getPropertyValue(`--${name}`).trim();
  const hex = context.fillStyle;
  return [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16) / 255);
}

/** The name of a line's colour, by what it carries. */
export function colourOf(route) {
  if (/^(static|vent)/.test(route.system)) return 'air';
  if (/^(pitot|alpha)/.test(route.system)) return 'pressure';
  return /^(cable|rod|push-pull)/.test(route.system) ? 'cable' : 'wire';
}

export class Picture {
  constructor(canvas, scene, state) {
    this.canvas = canvas;
    this.scene = scene;
    this.state = state;
    this.onDraw = () => {};
    this.onChoice = () => {};
    this.renderer = new Renderer({
      canvas, alpha: true, antialias: true, preserveDrawingBuffer: true,
      dpr: Math.min(devicePixelRatio || 1, 2),
    });
    this.gl = this.renderer.gl;
    this.root = new Transform();
    this.bounds = bounds(scene);
    state.cut ||= [Math.floor(this.bounds[0][0]), Math.ceil(this.bounds[1][0])];
    this.view = new OrbitView(this.bounds, outline(scene), state, () => this.draw());
    this.camera = new Camera(this.gl, { fov: this.view.fov });
    this.camera.up.set(0, 0, 1);
    this.shared = { cut: { value: state.cut }, pixel: { value: 0.001 }, light: { value: [0, 0, 1] } };
    this.readColours();
    this.items = [];
    for (const each of scene.parts) this.addPart(each);
    for (const route of scene.routes) this.addRoute(route);
    for (const pool of scene.pools) this.addPool(pool);
    for (const mover of scene.movers) this.addMoving(mover.name, 'part-edge', () => this.chain(mover));
    this.applyState();
  }

  readColours() {
    const style = getComputedStyle(document.documentElement);
    const context = document.createElement('canvas').getContext('2d');
    this.colours = {};
    for (const name of colourNames) this.colours[name] = rgb(style, name, context);
  }

  program(shader, colour, alpha, least = 0) {
    return new Program(this.gl, {
      ...shader,
      uniforms: { ...this.shared, colour: { value: this.colours[colour] }, alpha: { value: alpha },
        least: { value: least } },
      transparent: alpha < 1,
      depthWrite: alpha === 1,
      cullFace: false,
    });
  }

  add(item, geometry, program, mode = this.gl.TRIANGLES) {
    const mesh = new Mesh(this.gl, { geometry, program, mode, frustumCulled: false });
    mesh.setParent(this.root);
    const entry = { ...item, mesh, program };
    this.items.push(entry);
    return entry;
  }

  flat(numbers) {
    return new Geometry(this.gl, { position: { size: 3, data: new Float32Array(numbers) } });
  }

  swept(shape) {
    return new Geometry(this.gl, {
      position: { size: 3, data: new Float32Array(shape.centre) },
      offset: { size: 3, data: new Float32Array(shape.offset) },
      radius: { size: 1, data: new Float32Array(shape.radius) },
      index: { data: new Uint32Array(shape.index) },
    });
  }

  addPart(each) {
    const item = { name: each.name, kind: each.kind };
    if (each.faces.length)
      this.add({ ...item, colour: 'part' }, this.flat(each.faces),
        this.program(flatShader, 'part', each.kind === 'pulleys' ? 0.5 : 0.2));
    if (each.edges.length)
      this.add({ ...item, colour: 'part-edge' }, this.flat(each.edges),
        this.program(linesShader, 'part-edge', 0.75), this.gl.LINES);
  }

  addRoute(route) {
    const colour = colourOf(route);
    const item = { name: route.name, kind: 'lines', route, colour };
    route.path = points(route.at);
    this.add(item, this.swept(tube(route.path, route.radius)), this.program(sweptShader, colour, 1, 1.5));
    for (const reach of ['likely', 'bound']) {
      const radii = route[reach].map((width, i) => (width === null ? null : width + route.radius[i]));
      if (radii.some((each) => each !== null))
        this.add({ ...item, reach }, this.swept(tube(route.path, radii)),
          this.program(sweptShader, colour, reach === 'likely' ? 0.3 : 0.16));
    }
    const held = route.supports.map((each) => each.at);
    if (held.length)
      this.add({ ...item, colour: 'ink' }, this.swept(marks(held, 0.2)),
        this.program(sweptShader, 'ink', 1, 3));
    for (const each of route.attached)
      this.addMoving(route.name, 'accent', () => this.attachment(route, each), 'lines');
  }

  addPool(pool) {
    const route = this.scene.routes.find((each) => each.name === pool.route);
    const path = part(route, route.path, pool.from, pool.to);
    const thick = 1.6 * Math.max(...route.radius);
    this.add({ name: route.name, kind: 'lines', colour: 'water', attitude: pool.attitude },
      this.swept(tube(path, path.map(() => thick))), this.program(sweptShader, 'water', 1, 4.5));
  }

  addMoving(name, colour, shape, kind = 'moving parts') {
    const entry = this.add({ name, kind, colour, shape }, this.swept(shape()),
      this.program(sweptShader, colour, 1, 2.5));
    entry.moves = true;
  }

  attachment(route, each) {
    const travel = this.state.travel / 100;
    const moves = route.moves || [0, 0];
    const shift = travel < 0 ? travel * moves[0] : travel * moves[1];
    const middle = each.at + shift;
    const path = part(route, route.path, middle - each.length / 2, middle + each.length / 2);
    return tube(path, path.map(() => each.radius));
  }

  chain(mover) {
    const travel = this.state.travel / 100;
    const degrees = travel < 0 ? -travel * mover.sweep[0] : travel * mover.sweep[1];
    const path = points(mover.points).map((at) =>
      add(mover.pivot, turned(add(at, mover.pivot, -1), mover.axis, (degrees * Math.PI) / 180)));
    return tube(path, path.map(() => mover.radius));
  }

  /** Shows what the state says. */
  applyState() {
    const hidden = new Set(this.state.hidden);
    for (const each of this.items) {
      const reach = !each.reach || this.state.reach === each.reach;
      const wet = each.attitude === undefined || each.attitude === this.scene.attitudes[this.state.attitude];
      each.mesh.visible = reach && wet && !hidden.has(`${each.kind}/${each.name}`);
      const chosen = each.route && each.route.name === this.state.route;
      const tubeItself = each.route && !each.reach && each.colour !== 'ink';
      each.program.uniforms.colour.value = this.colours[chosen && each.colour !== 'ink' ? 'chosen' : each.colour];
      if (tubeItself) each.program.uniforms.least.value = chosen ? 3 : 1.5;
    }
    this.shared.cut.value = this.state.cut;
    this.draw();
  }

  setTravel(percent) {
    this.state.travel = percent;
    for (const each of this.items) {
      if (!each.moves) continue;
      each.mesh.geometry.remove();
      each.mesh.geometry = this.swept(each.shape());
    }
    this.draw();
  }

  choose(name) {
    this.state.route = name;
    this.applyState();
    this.onChoice();
  }

  goTo(finding) {
    this.state.finding = finding.id;
    this.state.route = finding.route || this.state.route;
    const [front, rear] = this.state.cut;
    if (finding.at[0] < front || finding.at[0] > rear)
      this.state.cut = [Math.min(front, Math.floor(finding.at[0])), Math.max(rear, Math.ceil(finding.at[0]))];
    this.applyState();
    this.view.goTo(finding.at, 16);
    this.onChoice();
  }

  recolour() {
    this.readColours();
    this.applyState();
  }

  resize() {
    const { clientWidth: width, clientHeight: height } = this.canvas.parentElement;
    if (!width || !height) return;
    this.renderer.setSize(width, height);
    this.canvas.style.width = '';
    this.canvas.style.height = '';
    this.size = [width, height];
    this.draw();
  }

  /** Where a place is on the stage, in pixels, or nothing behind the eye. */
  onStage(at) {
    const { viewMatrix: v, projectionMatrix: p } = this.camera;
    const seen = [0, 1, 2].map((i) => v[i] * at[0] + v[i + 4] * at[1] + v[i + 8] * at[2] + v[i + 12]);
    if (seen[2] > -0.01) return null;
    const x = (p[0] * seen[0]) / -seen[2];
    const y = (p[5] * seen[1]) / -seen[2];
    return [((x + 1) / 2) * this.size[0], ((1 - y) / 2) * this.size[1]];
  }

  isShown(kind, name, station) {
    return !this.state.hidden.includes(`${kind}/${name}`) &&
      station >= this.state.cut[0] - 1e-6 && station <= this.state.cut[1] + 1e-6;
  }

  /** The line nearest to a place on the stage, if one is near. */
  routeNear(x, y) {
    let best = null;
    let nearest = 14;
    for (const route of this.scene.routes)
      for (const at of route.path) {
        const there = this.isShown('lines', route.name, at[0]) && this.onStage(at);
        const off = there ? Math.hypot(there[0] - x, there[1] - y) : Infinity;
        if (off < nearest) [nearest, best] = [off, route.name];
      }
    return best;
  }

  draw() {
    if (this.waiting || !this.size) return;
    this.waiting = true;
    requestAnimationFrame(() => {
      this.waiting = false;
      this.view.place(this.camera, this.size);
      this.shared.pixel.value = (2 * Math.tan((this.view.fov * Math.PI) / 360)) / this.size[1];
      this.shared.light.value = this.view.away();
      this.renderer.render({ scene: this.root, camera: this.camera });
      this.onDraw();
    });
  }
}
