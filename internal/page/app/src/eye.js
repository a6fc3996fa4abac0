// The eye: where the vehicle is looked at from, moved by mouse, touch and keys.
import { PerspectiveCamera, Vector3 } from 'three';

const RAD = Math.PI / 180;
const still = () => matchMedia('(prefers-reduced-motion: reduce)').matches;

export const LOOKS = { corner: [38, 17], near: [90, 0], front: [0, 0], above: [90, 89.9] };

export class Eye {
  constructor(canvas, moved) {
    this.canvas = canvas;
    this.moved = moved;
    this.camera = new PerspectiveCamera(24, 1, 50, 60000);
    this.camera.up.set(0, 0, 1);
    this.round = 38; // degrees from the fore end towards the near side
    this.high = 17; // degrees above level
    this.far = 6000;
    this.at = new Vector3();
    this.fingers = new Map();
    this.tapped = () => {};
    this.listen();
  }

  place() {
    const a = this.round * RAD, h = this.high * RAD;
    this.camera.position.set(Math.cos(a) * Math.cos(h), Math.sin(a) * Math.cos(h), Math.sin(h)).multiplyScalar(this.far).add(this.at);
    this.camera.lookAt(this.at);
    this.camera.near = Math.max(20, this.far / 80);
    this.camera.far = this.far * 6 + 20000;
    this.camera.updateProjectionMatrix();
    this.camera.updateMatrixWorld();
  }

  // frame brings places into the picture, seen from where the eye looks, as
  // large as they go; about is the middle to begin from.
  frame(about, places) {
    const a = this.round * RAD, h = this.high * RAD;
    const out = new Vector3(Math.cos(a) * Math.cos(h), Math.sin(a) * Math.cos(h), Math.sin(h));
    const right = new Vector3(-Math.sin(a), Math.cos(a), 0);
    const up = new Vector3().crossVectors(out, right);
    const tall = Math.tan((this.camera.fov * RAD) / 2) * 0.93;
    const wide = tall * this.camera.aspect;
    const at = about.getCenter(new Vector3());
    let far = 0;
    for (let pass = 0; pass < 3; pass++) {
      // As far away as each place asks, then the middle shifted so that both sides have as much room.
      far = 0;
      const q = places.map((p) => { const d = p.clone().sub(at); return [d.dot(right), d.dot(up), d.dot(out)]; });
      for (const [x, y, z] of q) far = Math.max(far, z + Math.abs(x) / wide, z + Math.abs(y) / tall);
      const side = (k) => { const all = q.map((c) => c[k] / (far - c[2])); return all.length ? (Math.max(...all) + Math.min(...all)) / 2 : 0; };
      at.addScaledVector(right, side(0) * far).addScaledVector(up, side(1) * far);
    }
    far = 0;
    for (const p of places) {
      const d = p.clone().sub(at);
      far = Math.max(far, d.dot(out) + Math.abs(d.dot(right)) / wide, d.dot(out) + Math.abs(d.dot(up)) / tall);
    }
    return { at, far: far || 6000 };
  }

  turn(dx, dy) {
    this.round -= dx;
    this.high = Math.min(89.9, Math.max(-89.9, this.high + dy));
    this.moved();
  }

  // shift moves the picture by pixels.
  shift(dx, dy) {
    const s = (2 * Math.tan((this.camera.fov * RAD) / 2) * this.far) / this.canvas.clientHeight;
    const e = this.camera.matrixWorld.elements;
    this.at.addScaledVector(new Vector3(e[0], e[1], e[2]), -dx * s).addScaledVector(new Vector3(e[4], e[5], e[6]), dy * s);
    this.moved();
  }

  nearer(by) {
    this.far = Math.min(40000, Math.max(150, this.far * by));
    this.moved();
  }

  // go moves there, at once where motion is not wanted.
  go(to) {
    cancelAnimationFrame(this.going);
    const from = { round: this.round, high: this.high, far: this.far, at: this.at.clone() };
    const swing = ((((to.round - from.round) % 360) + 540) % 360) - 180;
    const start = performance.now();
    const step = (now) => {
      const t = still() ? 1 : Math.min(1, Math.max(0, (now - start) / 350));
      const s = t * t * (3 - 2 * t);
      this.round = from.round + swing * s;
      this.high = from.high + (to.high - from.high) * s;
      this.far = from.far + (to.far - from.far) * s;
      this.at.lerpVectors(from.at, to.at, s);
      this.moved();
      if (t < 1) this.going = requestAnimationFrame(step);
    };
    step(start);
  }

  listen() {
    const c = this.canvas;
    c.addEventListener('contextmenu', (e) => e.preventDefault());
    c.addEventListener('pointerdown', (e) => {
      cancelAnimationFrame(this.going);
      if (c.setPointerCapture) { try { c.setPointerCapture(e.pointerId); } catch { /* gone already */ } }
      this.fingers.set(e.pointerId, { x: e.clientX, y: e.clientY });
      if (this.fingers.size === 1) this.pressed = { x: e.clientX, y: e.clientY, moved: false, button: e.button };
      else if (this.pressed) this.pressed.moved = true;
    });
    c.addEventListener('pointermove', (e) => this.dragged(e));
    const up = (e) => {
      const was = this.fingers.delete(e.pointerId);
      if (was && this.fingers.size === 0 && this.pressed && !this.pressed.moved && this.pressed.button === 0 && e.type === 'pointerup') this.tapped(e.clientX, e.clientY);
    };
    c.addEventListener('pointerup', up);
    c.addEventListener('pointercancel', up);
    c.addEventListener('wheel', (e) => { e.preventDefault(); this.nearer(Math.exp(Math.sign(e.deltaY) * Math.min(60, Math.abs(e.deltaY)) * 0.0022)); }, { passive: false });
  }

  dragged(e) {
    const f = this.fingers.get(e.pointerId);
    if (!f) return;
    const dx = e.clientX - f.x, dy = e.clientY - f.y;
    if (Math.hypot(e.clientX - this.pressed.x, e.clientY - this.pressed.y) > 4) this.pressed.moved = true;
    if (!this.pressed.moved) return;
    if (this.fingers.size === 2) {
      const [other] = [...this.fingers].filter(([id]) => id !== e.pointerId).map(([, o]) => o);
      const before = Math.hypot(f.x - other.x, f.y - other.y);
      const now = Math.hypot(e.clientX - other.x, e.clientY - other.y);
      if (now > 10) this.nearer(before / now);
      this.shift(dx / 2, dy / 2);
    } else if (this.pressed.button !== 0 || e.shiftKey) this.shift(dx, dy);
    else this.turn(dx * 0.35, dy * 0.35);
    f.x = e.clientX;
    f.y = e.clientY;
  }

  // key moves by the keyboard; it tells whether the key was one of its own.
  key(e) {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
    if (way && e.shiftKey) this.shift(way[0] * 40, way[1] * 40);
    else if (way) this.turn(way[0] * 6, way[1] * 6);
    else if (e.key === '+' || e.key === '=') this.nearer(1 / 1.15);
    else if (e.key === '-' || e.key === '_') this.nearer(1.15);
    else return false;
    return true;
  }
}
