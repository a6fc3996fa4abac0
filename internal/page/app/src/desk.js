// The desk: everything that a reader touches, and what it says back.
import { between, anchored, snap, words } from './measure.js';
import { size } from './words.js';
import { read, write } from './link.js';
import { card } from './card.js';

const id = (name) => document.getElementById(name);

export class Desk {
  constructor(picture, letters, data) {
    Object.assign(this, { picture, letters, data, state: picture.state, eye: picture.eye });
    this.ends = [null, null];
    const stage = id('stage');
    picture.moving = () => { letters.hide(); stage.dataset.rest = 'no'; };
    picture.settled = () => { letters.show(); this.keepAddress(); stage.dataset.rest = 'yes'; };
    this.controls();
    this.measuring();
    this.themes();
    this.printing();
    addEventListener('hashchange', () => this.follow());
  }

  open() {
    this.follow();
    this.apply();
  }

  controls() {
    for (const r of document.querySelectorAll('input[name=show]')) r.addEventListener('change', () => { this.state.show = r.value; this.apply(); });
    id('view').addEventListener('change', (e) => { this.state.view = e.target.value; this.apply(); });
    id('pick').addEventListener('change', (e) => this.pick(e.target.value, 'list'));
    id('apart').addEventListener('input', (e) => { this.state.apart = e.target.value / 100; this.apply(); });
    id('cut-way').addEventListener('change', (e) => { this.state.cutWay = e.target.value; this.apply(); });
    id('cut-at').addEventListener('input', (e) => { this.state.cutAt = e.target.value / 1000; this.apply(); });
    this.turning = [...document.querySelectorAll('input.turn')];
    this.turning.forEach((s, i) => s.addEventListener('input', () => { this.state.turns[i] = Number(s.value); this.apply(); }));
    for (const b of document.querySelectorAll('[data-look]')) b.addEventListener('click', () => { this.picture.look3(b.dataset.look); this.say(`Seen from ${b.textContent}.`); });
    id('back').addEventListener('click', () => this.putBack());
    id('link').addEventListener('click', () => this.link());
    id('reasons')?.addEventListener('click', (e) => {
      const all = document.querySelectorAll('#derived details');
      const open = [...all].some((d) => !d.open);
      for (const d of all) d.open = open;
      e.target.textContent = open ? 'Close all the reasons' : 'Open all the reasons';
    });
    this.eye.tapped = (x, y) => this.tap(x, y);
    this.picture.canvas.addEventListener('keydown', (e) => this.key(e));
  }

  key(e) {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const next = { n: 1, N: 1, p: -1, P: -1 }[e.key];
    if (next) this.step(next);
    else if (e.key === 'Escape') this.pick('');
    else if (e.key === 'Home') this.picture.look3('corner');
    else if (!this.eye.key(e)) return;
    e.preventDefault();
  }

  // step picks the next part of the list.
  step(by) {
    const options = [...id('pick').options].map((o) => o.value).filter((v) => v && this.picture.all.some((t) => t.id === v && this.picture.seen(t)));
    if (!options.length) return;
    const at = options.indexOf(this.state.picked);
    this.pick(options[at < 0 ? (by > 0 ? 0 : options.length - 1) : (at + by + options.length) % options.length]);
  }

  tap(x, y) {
    const hit = this.picture.hits(x, y)[0];
    const thing = hit?.object.userData;
    if (this.on) {
      if (thing) this.mark(snap(thing, hit.point, x, y, (p) => this.picture.pixel(p)));
      return;
    }
    this.pick(thing ? thing.id : '');
  }

  pick(name) {
    const thing = this.picture.all.find((t) => t.id === name);
    this.state.picked = thing ? thing.id : '';
    this.picture.dress();
    id('pick').value = thing && thing.sort !== 'fastening' ? thing.id : '';
    card(id('chosen'), thing);
    id('record').scrollTop = 0;
    this.report();
    this.keepAddress();
  }

  // apply brings the picture to the state, and the desk's own faces with it.
  apply() {
    const s = this.state;
    for (const r of document.querySelectorAll('input[name=show]')) r.checked = r.value === s.show;
    id('view').value = s.view;
    id('apart').value = Math.round(s.apart * 100);
    id('cut-way').value = s.cutWay;
    id('cut-at').value = Math.round(s.cutAt * 1000);
    id('cut-at').disabled = !s.cutWay;
    this.turning.forEach((r, i) => { r.value = s.turns[i]; r.setAttribute('aria-valuetext', `${s.turns[i]} degrees`); });
    const scheme = this.picture.schemes[s.view];
    this.picture.dress();
    this.picture.arrange();
    this.letters.drawKey(scheme);
    if (this.picture.framed) this.picture.look3(this.picture.framed, true);
    this.report();
  }

  // report says what a cut goes through.
  report() {
    const stage = id('stage');
    const p = this.picture;
    stage.dataset.openCuts = p.openCuts;
    if (!p.plane) { this.say(''); return; }
    const cut = [...p.sections.keys()];
    const of = (sort) => cut.filter((c) => p.all.some((t) => t.id === c && t.sort === sort)).length;
    let says = `Cut through ${of('timber')} timbers, ${of('iron')} irons and ${of('fastening')} fastenings.`;
    const area = p.sections.get(this.state.picked);
    if (area !== undefined) {
      const inches = ['in', 'ft'].includes(this.data.unit);
      says += ` The picked part's cut face is ${(area / (inches ? 645.16 : 100)).toFixed(2)} ${inches ? 'square inches' : 'square centimetres'}.`;
    }
    this.say(says);
  }

  say(text) { id('say').textContent = text; }

  putBack() {
    Object.assign(this.state, { apart: 0, cutWay: '', cutAt: 0.5, show: 'all', view: 'matter' });
    this.state.turns.fill(0);
    this.picture.framed = 'corner';
    this.pick('');
    this.apply();
    this.say('All is back in its place.');
  }

  // ---- measuring

  measuring() {
    id('measure').addEventListener('click', () => this.measure(!this.on));
    const things = this.picture.all.filter((t, i, all) => t.anchors?.length && all.findIndex((o) => o.id === t.id) === i);
    const option = (value, text) => Object.assign(document.createElement('option'), { value, textContent: text });
    ['from', 'to'].forEach((end, k) => {
      const thing = id(`${end}-thing`), place = id(`${end}-place`);
      thing.append(option('', 'choose'), ...things.map((t) => option(t.id, t.name)));
      const anchors = () => this.picture.all.filter((t) => t.id === thing.value).flatMap((t) => t.anchors.map((a) => ({ t, a })));
      thing.addEventListener('change', () => {
        place.replaceChildren(option('', 'choose'), ...anchors().map(({ a }, i) => option(i, a.n)));
        this.set(k, null);
      });
      place.addEventListener('change', () => {
        const chosen = place.value === '' ? null : anchors()[place.value];
        this.set(k, chosen && anchored(chosen.t, chosen.a));
      });
    });
  }

  measure(on) {
    this.on = on;
    id('measure').setAttribute('aria-pressed', on);
    id('measure').setAttribute('aria-expanded', on);
    id('measuring').hidden = !on;
    this.picture.canvas.classList.toggle('measuring', on);
    this.ends = [null, null];
    if (!on) for (const s of ['from-thing', 'from-place', 'to-thing', 'to-place']) id(s).value = '';
    this.result();
  }

  // mark takes a place that was clicked: the first of two, or the second.
  mark(place) {
    if (this.ends[0] && this.ends[1]) this.ends = [null, null];
    this.set(this.ends[0] ? 1 : 0, place);
  }

  set(k, place) {
    this.ends[k] = place;
    this.result();
  }

  result() {
    const [a, b] = this.ends;
    const out = id('measured');
    const spot = (p) => p.thing.now(p.at);
    this.picture.tape(a && spot(a), b && spot(b));
    const tags = [];
    if (a && !b) out.textContent = `From ${a.thing.name}, ${a.words}. Now the other place.`;
    else if (!a || !b) out.textContent = '';
    else {
      const m = words(between(a, b, this.data.spacings), this.data.unit);
      out.textContent = m.size;
      const detail = document.createElement('span');
      detail.textContent = `From ${a.thing.name}, ${a.words}, to ${b.thing.name}, ${b.words}. ${m.steps ? m.steps[0].toUpperCase() + m.steps.slice(1) + '. ' : ''}${m.why}`;
      out.append(detail);
      tags.push({ at: spot(a).lerp(spot(b), 0.5), words: m.size.split(',')[0] });
    }
    this.letters.tag([...[a, b].map((p, i) => p && { at: spot(p), words: i ? 'B' : 'A' }).filter(Boolean), ...tags]);
  }

  // ---- address

  keepAddress() {
    if (location.hash && !location.hash.startsWith('#see:') && !this.touched) return;
    const hash = write(this.state, this.eye);
    if (!this.touched && !location.hash) { this.touched = hash; return; } // nothing was moved yet
    if (hash === this.touched) return;
    this.touched = hash;
    try { history.replaceState(null, '', hash); } catch { /* a page in a frame may not */ }
  }

  follow() {
    const want = read(location.hash, Object.keys(this.picture.schemes), this.data.moving.map((m) => [m.from, m.to]));
    if (!want) return;
    const { eye, picked, ...rest } = want;
    Object.assign(this.state, rest);
    if (eye) {
      [this.eye.round, this.eye.high, this.eye.far] = eye;
      this.eye.at.set(eye[3], eye[4], eye[5]);
      this.picture.framed = null;
      this.picture.look();
    }
    this.apply();
    this.pick(picked);
  }

  async link() {
    const address = location.href.split('#')[0] + write(this.state, this.eye);
    let done = 'The link to this view is copied.';
    try { await navigator.clipboard.writeText(address); } catch { done = 'The link to this view is now in the address bar: copy it from there.'; }
    try { history.replaceState(null, '', new URL(address).hash); } catch { /* a page in a frame may not */ }
    this.say(done);
  }

  // ---- light and dark, print

  themes() {
    const wish = matchMedia('(prefers-color-scheme: dark)');
    const root = document.documentElement;
    const button = id('theme');
    const dark = () => (root.dataset.theme ? root.dataset.theme === 'dark' : wish.matches);
    const show = () => {
      button.textContent = dark() ? 'Light page' : 'Dark page';
      this.picture.theme(dark());
      this.result();
    };
    button.addEventListener('click', () => { root.dataset.theme = dark() ? 'light' : 'dark'; show(); });
    wish.addEventListener('change', show);
    this.reshow = show;
    show();
  }

  printing() {
    id('print').addEventListener('click', () => print());
    addEventListener('beforeprint', () => { this.picture.theme(false); this.letters.show(); this.picture.draw(); });
    addEventListener('afterprint', () => this.reshow());
  }
}
