// How things look: by what they are, how they are known, of which timber, how far
// they have come, what is to be heed. No colour stands alone: each has its own
// hatching and letter.
import { Color, LineBasicMaterial, MeshLambertMaterial } from 'three';

const INKS = ['#9cc7dd', '#a9d8cd', '#cfe0a8', '#f0dd94', '#f0bd84', '#eea193', '#ffffff', '#c9b6dc', '#b9c0c7', '#e3c7b0'];

// The hatchings, as GLSL over p, the place on the screen; drawn in the key alike.
const HATCH = [
  '0.',
  'line(p.x + p.y, 9., 1.)',
  'line(p.x - p.y, 9., 1.)',
  'line(p.y, 6., 1.)',
  'max(line(p.x + p.y, 10., 1.), line(p.x - p.y, 10., 1.))',
  'dots(p, 7., 1.7)',
  'max(line(p.x, 8., 1.), line(p.y, 8., 1.))',
  'line(p.x, 6., 1.)',
  'dots(p, 11., 3.2)',
  'line(p.x + p.y, 5., 1.2)',
];

// SECTION is the hatching of cut faces.
export const SECTION = 9;

const GLSL = `
uniform float grain;
float line(float v, float every, float wide) { float d = abs(fract(v / every) - .5) * every; return 1. - smoothstep(.5 * wide, .5 * wide + .9, d); }
float dots(vec2 p, float every, float r) { return 1. - smoothstep(r, r + .9, length(fract(p / every + vec2(0., .5 * mod(floor(p.x / every), 2.))) * every - .5 * every)); }
void main() {`;

// paint is a hatched, lit surface.
function paint(colour, hatch, strength, options) {
  const m = new MeshLambertMaterial({ color: new Color(colour), ...options });
  m.defines = { HATCH: hatch };
  m.onBeforeCompile = (s) => {
    s.uniforms.grain = paint.grain;
    s.fragmentShader = s.fragmentShader
      .replace('void main() {', GLSL)
      .replace('#include <dithering_fragment>', `#include <dithering_fragment>
vec2 p = gl_FragCoord.xy / grain;
gl_FragColor.rgb = mix(gl_FragColor.rgb, vec3(.09, .07, .05), ${strength.toFixed(2)} * (${HATCH[hatch]}));`);
  };
  m.customProgramCacheKey = () => `${hatch} ${strength}`;
  return m;
}
paint.grain = { value: 1 };

export function setGrain(ratio) { paint.grain.value = ratio; }

const DARK = { timber: '#d3b081', iron: '#8a9199', bolt: '#aab0b5', pale: '#5d564c', line: '#0e0b08', lit: '#ff9b5e' };
const LIGHT = { timber: '#dfc092', iron: '#62686f', bolt: '#7f868c', pale: '#ece5d6', line: '#2b241d', lit: '#d2541b' };

// A looks holds the materials of one theme, made as they are asked for.
export class Looks {
  constructor(dark) {
    this.colours = dark ? DARK : LIGHT;
    this.made = new Map();
    this.planes = [];
  }

  keep(key, make) {
    if (!this.made.has(key)) {
      const m = make();
      m.clippingPlanes = this.planes;
      this.made.set(key, m);
    }
    return this.made.get(key);
  }

  face(mark, picked) {
    const colour = this.colours[mark.colour] ?? mark.colour;
    return this.keep(`face ${colour} ${mark.hatch} ${picked}`, () => {
      const m = paint(colour, mark.hatch, 0.6, {});
      if (picked) m.emissive = new Color(this.colours.lit).multiplyScalar(0.42);
      return m;
    });
  }

  cap(mark) {
    const colour = this.colours[mark.colour] ?? mark.colour;
    const m = this.keep(`cap ${colour}`, () => paint(colour, SECTION, 0.75, { side: 2, emissive: new Color(colour).multiplyScalar(0.25) }));
    m.clippingPlanes = null;
    return m;
  }

  line(picked) {
    return this.keep(`line ${picked}`, () => new LineBasicMaterial({ color: picked ? this.colours.lit : this.colours.line, transparent: !picked, opacity: picked ? 1 : 0.62 }));
  }

  section() {
    const m = this.keep('section', () => new LineBasicMaterial({ color: this.colours.line }));
    m.clippingPlanes = null;
    return m;
  }

  cut(planes) {
    this.planes = planes;
    for (const [key, m] of this.made) if (!key.startsWith('cap') && key !== 'section') m.clippingPlanes = planes;
  }
}

// letters are short words for a list, no two alike.
function letters(words) {
  const used = new Set();
  return words.map((w) => {
    const initials = w.split(/[\s-]+/).filter(Boolean).map((x) => [...x][0].toUpperCase());
    let l = initials.length > 1 ? initials[0] + initials[1] : (initials[0] ?? '?');
    for (let n = 2; used.has(l); n++) l = (initials[0] ?? '?') + n;
    used.add(l);
    return l;
  });
}

const PALE = { colour: 'pale', hatch: 0, letter: '' };

// The ways of telling things apart: what the key says, and the mark of a thing.
export function schemes(scene) {
  const coded = (title, words, letter, index, note) => ({
    title, note,
    entries: words.map((w, i) => ({ words: w, letter: letter[i], colour: INKS[i % INKS.length], hatch: i % SECTION })),
    mark(t) {
      const i = index(t);
      return i < 0 || i === undefined ? PALE : this.entries[i];
    },
  });
  const ofTimber = (get) => (t) => (t.sort === 'timber' ? get(t) : -1);
  const known = [...'MIPLTGN'];
  const pale = 'Irons are left pale.';
  return {
    matter: {
      title: '', entries: [],
      mark: (t) => ({ colour: { timber: 'timber', iron: 'iron', fastening: 'bolt' }[t.sort], hatch: 0, letter: '' }),
    },
    known: coded('How we know the sizes: the least known of long, wide and deep', scene.known, known, ofTimber((t) => t.known), pale),
    placed: coded('How we know where it stands', scene.known, known, ofTimber((t) => t.placed), pale),
    timber: coded('Which timber', scene.timbers, letters(scene.timbers), ofTimber((t) => t.timber), pale),
    status: coded('How far it has come', scene.statuses, letters(scene.statuses), ofTimber((t) => t.status), pale),
    concern: coded('What to heed: the gravest of what is found', scene.concerns, ['X', 'C', 'N', 'U', 'H'], (t) => t.concern, 'What nothing is found of is left pale.'),
  };
}

// swatch draws a mark into the key, hatched as in the picture.
export function swatch(mark) {
  const c = document.createElement('canvas');
  c.width = 68;
  c.height = 40;
  const g = c.getContext('2d');
  g.fillStyle = mark.colour;
  g.fillRect(0, 0, 68, 40);
  g.scale(2, 2);
  g.strokeStyle = g.fillStyle = 'rgba(23,18,13,.8)';
  g.lineWidth = 1;
  const stroke = (x0, y0, x1, y1) => { g.beginPath(); g.moveTo(x0, y0); g.lineTo(x1, y1); g.stroke(); };
  const slant = (every, way) => { for (let x = -24; x < 60; x += every) stroke(x, way > 0 ? 20 : 0, x + 20, way > 0 ? 0 : 20); };
  const dots = (every, r) => { for (let x = every / 2, i = 0; x < 34; x += every, i++) for (let y = i % 2 ? 0 : every / 2; y < 21; y += every) { g.beginPath(); g.arc(x, y, r, 0, 7); g.fill(); } };
  [
    () => {},
    () => slant(9, -1),
    () => slant(9, 1),
    () => { for (let y = 3; y < 20; y += 6) stroke(0, y, 34, y); },
    () => { slant(10, 1); slant(10, -1); },
    () => dots(7, 1.7),
    () => { for (let x = 4; x < 34; x += 8) stroke(x, 0, x, 20); for (let y = 4; y < 20; y += 8) stroke(0, y, 34, y); },
    () => { for (let x = 3; x < 34; x += 6) stroke(x, 0, x, 20); },
    () => dots(11, 3.2),
    () => slant(5, -1),
  ][mark.hatch]();
  return c;
}
