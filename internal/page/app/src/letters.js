// Letters on the parts, so that no view rests on colour alone; and the key.
import { Vector3 } from 'three';
import { swatch } from './looks.js';

export class Letters {
  constructor(picture, holder, key) {
    Object.assign(this, { picture, holder, key });
    this.places = [];
  }

  hide() { this.holder.querySelectorAll('span:not(.place)').forEach((s) => s.remove()); }

  // show sets the letter of every part where it can be seen, none over another.
  show() {
    this.hide();
    const p = this.picture;
    const r = p.canvas.getBoundingClientRect();
    const taken = [];
    const done = new Set();
    for (const t of p.all) {
      // Of a wheel's rim one letter on each side is enough.
      const one = t.sort === 'timber' && t.give[0] < 0 ? `${t.record} ${Math.sign(t.m[7])}` : t.id;
      if (!t.mark.letter || !t.mesh.visible || done.has(one)) continue;
      const at = this.spot(t, taken, r);
      if (!at) continue;
      done.add(one);
      taken.push(at);
      this.put(t.mark.letter, at.x - r.left, at.y - r.top).dataset.of = t.id;
    }
    this.tags();
  }

  spot(t, taken, r) {
    const { faces } = t.skin;
    const b = faces.boundingBox;
    for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
      const mid = b.getCenter(new Vector3());
      const long = ['x', 'y', 'z'].reduce((a, k) => (b.max[k] - b.min[k] > b.max[a] - b.min[a] ? k : a), 'x');
      mid[long] = b.min[long] + share * (b.max[long] - b.min[long]);
      const at = this.picture.pixel(t.now(mid.toArray()));
      if (!at || at.x < r.left + 8 || at.x > r.right - 8 || at.y < r.top + 8 || at.y > r.bottom - 8) continue;
      if (taken.some((o) => Math.abs(o.x - at.x) < 24 && Math.abs(o.y - at.y) < 19)) continue;
      if (this.picture.hits(at.x, at.y)[0]?.object.userData === t) return at;
    }
    return null;
  }

  put(words, x, y, kind) {
    const s = document.createElement('span');
    s.textContent = words;
    if (kind) s.className = kind;
    this.holder.append(s);
    s.style.transform = `translate(${Math.round(x - s.offsetWidth / 2)}px, ${Math.round(y - s.offsetHeight / 2)}px)`;
    return s;
  }

  // tag keeps words at places in the picture: what is measured.
  tag(list) {
    this.places = list;
    this.tags();
  }

  tags() {
    this.holder.querySelectorAll('.place').forEach((s) => s.remove());
    const r = this.picture.canvas.getBoundingClientRect();
    for (const { at, words } of this.places) {
      const p = this.picture.pixel(at);
      if (p) this.put(words, p.x - r.left, p.y - r.top, 'place');
    }
  }

  drawKey(scheme) {
    this.key.replaceChildren();
    this.key.hidden = !scheme.entries.length;
    if (this.key.hidden) return;
    const make = (name, words) => { const e = document.createElement(name); if (words) e.textContent = words; return e; };
    this.key.append(make('p', scheme.title));
    const used = new Set(this.picture.all.filter((t) => this.picture.seen(t)).map((t) => t.mark));
    const list = make('ul');
    for (const e of scheme.entries) {
      if (!used.has(e)) continue;
      const li = make('li');
      li.append(swatch(e), make('b', e.letter), make('span', e.words));
      list.append(li);
    }
    this.key.append(list);
    if (scheme.note) this.key.append(make('p', scheme.note));
  }
}
