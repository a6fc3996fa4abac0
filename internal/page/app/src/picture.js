// The picture: every thing of the scene where it stands, lifted, turned, cut.
import {
  Box3, BufferGeometry, BufferAttribute, CanvasTexture, DirectionalLight, Group, HemisphereLight, LineSegments, Matrix4, Mesh,
  MeshBasicMaterial, Plane, PlaneGeometry, Raycaster, Scene, Vector2, Vector3, WebGLRenderer, LineBasicMaterial,
} from 'three';
import { Eye, LOOKS } from './eye.js';
import { Looks, schemes, setGrain } from './looks.js';
import { bolt, dress, unpack } from './skin.js';
import { cap } from './cut.js';

const AXIS = { x: 0, y: 1, z: 2 };

export class Picture {
  constructor(canvas, context, data) {
    this.canvas = canvas;
    this.data = data;
    this.renderer = new WebGLRenderer({ canvas, context });
    this.renderer.localClippingEnabled = true;
    this.renderer.debug.checkShaderErrors = false; // asking would hold up the first picture
    this.scene = new Scene();
    this.schemes = schemes(data);
    this.state = { show: 'all', view: 'matter', apart: 0, cutWay: '', cutAt: 0.5, turns: data.moving.map(() => 0), picked: '' };
    this.settled = () => {};
    this.lights();
    this.things();
    this.box = new Box3();
    for (const t of this.all) this.box.union(t.mesh.geometry.boundingBox.clone().applyMatrix4(t.matrix));
    this.ground();
    this.caps = new Group();
    this.marks = new Group();
    this.scene.add(this.caps, this.marks);
    this.eye = new Eye(canvas, () => this.look());
    this.looks = new Looks(false);
    this.arrange();
    new ResizeObserver(() => this.resize()).observe(canvas.parentElement);
    this.framed = 'corner';
    this.resize();
  }

  lights() {
    this.scene.add(new HemisphereLight('#ffffff', '#c9b592', 1.75));
    this.sun = new DirectionalLight('#fff4e0', 1.9);
    this.scene.add(this.sun, this.sun.target);
  }

  things() {
    const skins = this.data.meshes.map((m) => dress(unpack(m)));
    const bolts = new Map();
    this.all = this.data.things.map((t) => {
      let skin = skins[t.mesh];
      if (t.bolt) {
        const key = JSON.stringify(t.bolt);
        if (!bolts.has(key)) bolts.set(key, dress(bolt(t.bolt)));
        skin = bolts.get(key);
      }
      const matrix = new Matrix4().set(...t.m, 0, 0, 0, 1);
      const mesh = new Mesh(skin.faces);
      const lines = new LineSegments(skin.lines);
      const thing = { ...t, skin, matrix, mesh, lines };
      if (t.bolt) thing.box = [0, 0, 0];
      thing.rest = (p) => new Vector3(...p).applyMatrix4(matrix);
      thing.now = (p) => new Vector3(...p).applyMatrix4(mesh.matrix);
      thing.own = (p) => p.clone().applyMatrix4(mesh.matrix.clone().invert());
      for (const o of [mesh, lines]) { o.matrixAutoUpdate = false; this.scene.add(o); }
      mesh.userData = thing;
      return thing;
    });
  }

  // ground is a soft shadow under the wheels.
  ground() {
    const c = document.createElement('canvas');
    c.width = c.height = 128;
    const g = c.getContext('2d');
    const r = g.createRadialGradient(64, 64, 8, 64, 64, 64);
    r.addColorStop(0, 'rgba(40,28,14,.34)');
    r.addColorStop(1, 'rgba(40,28,14,0)');
    g.fillStyle = r;
    g.fillRect(0, 0, 128, 128);
    const size = this.box.getSize(new Vector3());
    const mid = this.box.getCenter(new Vector3());
    this.shade = new Mesh(new PlaneGeometry(size.x * 1.45, size.y * 1.7), new MeshBasicMaterial({ map: new CanvasTexture(c), transparent: true, depthWrite: false }));
    this.shade.position.set(mid.x, mid.y, this.box.min.z - 4);
    this.scene.add(this.shade);
  }

  theme(dark) {
    this.looks = new Looks(dark);
    this.dress();
    this.cut();
  }

  // seen tells whether a thing is shown at all.
  seen(t) {
    return this.state.show === 'all' || (this.state.show === 'timber') === (t.sort === 'timber');
  }

  // dress gives every thing its materials.
  dress() {
    const scheme = this.schemes[this.state.view];
    for (const t of this.all) {
      t.mark = scheme.mark(t);
      const picked = t.id === this.state.picked;
      t.mesh.material = this.looks.face(t.mark, picked);
      t.lines.material = this.looks.line(picked);
      t.mesh.visible = t.lines.visible = this.seen(t);
    }
    this.invalidate();
  }

  // lifted is how far a thing is on its way out, 0 to 1: the last to go together comes off first.
  lifted(t) {
    const { apart } = this.state;
    const steps = Math.max(1, this.data.steps);
    const overlap = 4;
    const at = apart * (steps + overlap) - (steps - 1 - t.step);
    const s = Math.min(1, Math.max(0, at / overlap));
    return s * s * (3 - 2 * s);
  }

  // arrange puts every thing where it stands now.
  arrange() {
    for (const t of this.all) {
      const m = t.matrix.clone();
      if (t.turns >= 0 && this.state.turns[t.turns]) {
        const g = this.data.moving[t.turns];
        const at = new Vector3(...g.at);
        m.premultiply(new Matrix4().makeTranslation(at.clone().negate()));
        m.premultiply(new Matrix4().makeRotationAxis(new Vector3(...g.way), (this.state.turns[t.turns] * Math.PI) / 180));
        m.premultiply(new Matrix4().makeTranslation(at));
      }
      const s = this.lifted(t);
      m.premultiply(new Matrix4().makeTranslation(t.lift[0] * s, t.lift[1] * s, t.lift[2] * s));
      for (const o of [t.mesh, t.lines]) { o.matrix.copy(m); o.matrixWorldNeedsUpdate = true; }
    }
    this.scene.updateMatrixWorld(true);
    this.shade.visible = this.state.apart === 0;
    this.cut();
  }

  extent() {
    const box = new Box3();
    for (const t of this.all) if (t.mesh.visible) box.union(t.mesh.geometry.boundingBox.clone().applyMatrix4(t.mesh.matrix));
    return box.isEmpty() ? this.box.clone() : box;
  }

  // cut opens everything at a plane and closes the faces of the cut.
  cut() {
    for (const o of [...this.caps.children]) { o.geometry.dispose(); this.caps.remove(o); }
    this.sections = new Map();
    this.openCuts = 0;
    const axis = AXIS[this.state.cutWay];
    if (axis === undefined) {
      this.plane = null;
      this.looks.cut([]);
      this.invalidate();
      return;
    }
    const whole = this.extent();
    const lo = whole.min.getComponent(axis), hi = whole.max.getComponent(axis);
    const where = lo + this.state.cutAt * (hi - lo);
    this.plane = new Plane(new Vector3().setComponent(axis, -1), where);
    this.looks.cut([this.plane]);
    this.where = where;
    for (const t of this.all) if (t.mesh.visible) this.close(t, axis, where);
    this.invalidate();
  }

  close(t, axis, where) {
    const b = t.mesh.geometry.boundingBox.clone().applyMatrix4(t.mesh.matrix);
    if (b.min.getComponent(axis) > where || b.max.getComponent(axis) < where) return;
    const c = cap(t.skin, t.mesh.matrix, axis, where);
    this.openCuts += c.open;
    if (!c.face) return;
    this.sections.set(t.id, (this.sections.get(t.id) ?? 0) + c.area);
    const face = new Mesh(c.face, this.looks.cap(t.mark));
    face.userData = t;
    this.caps.add(face, new LineSegments(c.lines, this.looks.section()));
  }

  resize() {
    const { clientWidth: w, clientHeight: h } = this.canvas.parentElement;
    if (!w || !h) return;
    const ratio = Math.min(2, devicePixelRatio || 1);
    setGrain(ratio);
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(w, h, false);
    this.eye.camera.aspect = w / h;
    if (this.framed) this.look3(this.framed, true);
    else this.look();
  }

  // corners are those of every shown thing's box.
  corners() {
    const out = [];
    for (const t of this.all) {
      if (!t.mesh.visible || t.sort === 'fastening') continue;
      const { min, max } = t.mesh.geometry.boundingBox.clone().applyMatrix4(t.mesh.matrix);
      const axis = AXIS[this.state.cutWay];
      if (axis !== undefined && this.plane) { // what is cut away needs no room
        if (min.getComponent(axis) > this.where) continue;
        max.setComponent(axis, Math.min(max.getComponent(axis), this.where));
      }
      for (let i = 0; i < 8; i++) out.push(new Vector3(i & 1 ? max.x : min.x, i & 2 ? max.y : min.y, i & 4 ? max.z : min.z));
    }
    return out;
  }

  // look3 looks from one of the named places, all in the picture.
  look3(name, atOnce) {
    const [round, high] = LOOKS[name] ?? [this.eye.round, this.eye.high];
    const was = { round: this.eye.round, high: this.eye.high };
    Object.assign(this.eye, { round, high });
    const to = { round, high, ...this.eye.frame(this.extent(), this.corners()) };
    if (atOnce) Object.assign(this.eye, { far: to.far, at: to.at });
    else { Object.assign(this.eye, was); this.eye.go(to); }
    this.framed = name;
    if (atOnce) this.look(true);
  }

  look(kept) {
    if (!kept && !this.eye.going) this.framed = null;
    this.eye.place();
    this.sun.position.copy(this.eye.camera.position);
    const e = this.eye.camera.matrixWorld.elements;
    this.sun.position.addScaledVector(new Vector3(e[0], e[1], e[2]), -this.eye.far * 0.45).addScaledVector(new Vector3(e[4], e[5], e[6]), this.eye.far * 0.75);
    this.sun.target.position.copy(this.eye.at);
    this.sun.target.updateMatrixWorld();
    this.invalidate();
  }

  invalidate() {
    this.moving?.();
    clearTimeout(this.rest);
    this.rest = setTimeout(() => this.settled(), 120);
    if (this.asked) return;
    this.asked = requestAnimationFrame(() => this.draw());
  }

  draw() {
    cancelAnimationFrame(this.asked);
    this.asked = 0;
    this.renderer.render(this.scene, this.eye.camera);
  }

  // hits are the things under a pixel of the page, nearest first, but for what is cut away.
  hits(x, y, only) {
    const r = this.canvas.getBoundingClientRect();
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2(((x - r.left) / r.width) * 2 - 1, 1 - ((y - r.top) / r.height) * 2), this.eye.camera);
    const among = [...(only ?? this.all.filter((t) => t.mesh.visible).map((t) => t.mesh)), ...this.caps.children.filter((o) => o.isMesh)];
    return ray.intersectObjects(among, false).filter((h) => !this.plane || this.plane.distanceToPoint(h.point) > -0.01);
  }

  // pixel is where a place is on the page; null where it is behind the eye.
  pixel(p) {
    const q = p.clone().project(this.eye.camera);
    if (q.z > 1) return null;
    const r = this.canvas.getBoundingClientRect();
    return { x: r.left + ((q.x + 1) / 2) * r.width, y: r.top + ((1 - q.y) / 2) * r.height };
  }

  // tape draws a measured line between two places.
  tape(a, b) {
    for (const o of [...this.marks.children]) { o.geometry.dispose(); this.marks.remove(o); }
    const ends = [a, b].filter(Boolean);
    if (ends.length === 2) {
      const g = new BufferGeometry().setAttribute('position', new BufferAttribute(new Float32Array([...ends[0].toArray(), ...ends[1].toArray()]), 3));
      const line = new LineSegments(g, new LineBasicMaterial({ color: this.looks.colours.lit, depthTest: false }));
      line.renderOrder = 9;
      this.marks.add(line);
    }
    this.invalidate();
  }
}
