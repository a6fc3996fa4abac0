// Measuring between two places, with the give or take of the result.
import { Vector3 } from 'three';
import { size } from './words.js';

// A place is { thing, at (in the thing's own frame), give (on its axes, below 0
// where not known), ref (of a hole), words, byHand }.

export const anchored = (thing, anchor) => ({ thing, at: anchor.p, give: anchor.g, ref: anchor.r, words: anchor.n });

// onSkin is a place on a thing's edge or face: as sure as its share of the sizes.
export function onSkin(thing, at, words) {
  const give = at.map((x, k) => {
    const share = thing.box[k] > 0 ? Math.min(1, Math.max(0, x / thing.box[k])) : 0;
    if (!thing.boxGive || thing.boxGive[k] < 0) return share === 0 ? 0 : -1;
    return thing.boxGive[k] * share;
  });
  return { thing, at, give, words, byHand: true };
}

const square = (x) => x * x;

// between measures from a to b, as the vehicle stands put together.
export function between(a, b, spacings) {
  const from = a.thing.rest(a.at), to = b.thing.rest(b.at);
  const apart = to.clone().sub(from);
  const same = a.thing === b.thing;
  const told = same ? within(a, b, spacings) : across(a, b, apart);
  const mm = same ? Math.hypot(...[0, 1, 2].map((k) => b.at[k] - a.at[k])) : apart.length();
  return { mm, apart, from, to, ...told };
}

// within is inside one part, on its own axes.
function within(a, b, spacings) {
  const d = [0, 1, 2].map((k) => b.at[k] - a.at[k]);
  const known = a.ref && b.ref && spacings.find((s) => s.of === a.thing.of && ((s.a === a.ref && s.b === b.ref) || (s.a === b.ref && s.b === a.ref)));
  if (known) {
    const mm = Math.hypot(...d);
    const side = Math.hypot(d[1], d[2]);
    const give = mm === 0 ? Math.max(known.along[1], known.across[1]) : Math.sqrt(square((d[0] / mm) * known.along[1]) + square((side / mm) * Math.max(0, known.across[1])));
    return { give: known.along[1] < 0 ? -1 : give, why: 'The give or take is that of the two holes together, from all the readings that bear on them.' };
  }
  const gives = d.map((by, k) => {
    const sized = !a.ref && !b.ref;
    if (sized && a.thing.boxGive) return a.thing.boxGive[k] < 0 ? (Math.abs(by) < 1e-6 ? 0 : -1) : (Math.abs(by) / a.thing.box[k]) * a.thing.boxGive[k];
    return a.give[k] < 0 || b.give[k] < 0 ? (Math.abs(by) < 1e-6 ? 0 : -1) : Math.hypot(a.give[k], b.give[k]);
  });
  return { give: along(d, gives), why: 'The give or take is that of the sizes it lies along' + (a.byHand || b.byHand ? '; how exactly you picked is not in it.' : '.') };
}

// across is between two parts: their places and what is on each, as if none hung on another.
function across(a, b, apart) {
  const d = apart.toArray();
  const one = (p, axis) => {
    let sum = 0;
    for (let k = 0; k < 3; k++) {
      const share = square(p.thing.m[4 * axis + k]);
      if (share < 1e-9) continue;
      if (p.thing.give[k] < 0 || p.give[k] < 0) return -1;
      sum += share * (square(p.thing.give[k]) + square(p.give[k]));
    }
    return Math.sqrt(sum);
  };
  const gives = d.map((_, axis) => {
    const [x, y] = [one(a, axis), one(b, axis)];
    return x < 0 || y < 0 ? -1 : Math.hypot(x, y);
  });
  return { give: along(d, gives), why: 'The give or take adds up both places and both parts as if none hung on another; what they share would make it less.' + (a.byHand || b.byHand ? ' How exactly you picked is not in it.' : '') };
}

// along is the give or take of a distance from those of its three steps.
function along(d, gives) {
  const mm = Math.hypot(...d);
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const share = mm === 0 ? 1 : d[k] / mm;
    if (Math.abs(share) < 1e-3) continue;
    if (gives[k] < 0) return -1;
    sum += square(share * gives[k]);
  }
  return Math.sqrt(sum);
}

export function words(m, unit) {
  const steps = [['fore and aft', m.apart.x], ['across', m.apart.y], ['up', m.apart.z]]
    .filter(([, by]) => Math.abs(by) > 0.05).map(([w, by]) => `${size(Math.abs(by), 0, unit)} ${w}`);
  return { size: size(m.mm, m.give, unit), steps: steps.length > 1 ? steps.join(', ') : '', why: m.why };
}

// snap finds what a click near a thing meant: a hole's centre, a corner, an edge,
// else the place itself. toScreen gives a place's pixel, or null behind the eye.
export function snap(thing, hit, x, y, toScreen) {
  const reach = (p, most) => {
    const s = toScreen(p);
    if (!s) return Infinity;
    const d = Math.hypot(s.x - x, s.y - y);
    return d <= most ? d : Infinity;
  };
  let best = null, least = Infinity;
  for (const a of thing.anchors ?? []) {
    const d = reach(thing.now(a.p), 16);
    if (d < least) [best, least] = [anchored(thing, a), d];
  }
  if (best) return best;
  const { at, edges } = thing.skin;
  const corner = (c) => new Vector3(at[3 * c], at[3 * c + 1], at[3 * c + 2]);
  for (let i = 0; i < edges.length; i += 2) {
    const ends = [corner(edges[i]), corner(edges[i + 1])];
    const [p, q] = ends.map((c) => toScreen(thing.now(c.toArray())));
    if (!p || !q) continue;
    const l = square(q.x - p.x) + square(q.y - p.y);
    let t = l > 0 ? Math.min(1, Math.max(0, ((x - p.x) * (q.x - p.x) + (y - p.y) * (q.y - p.y)) / l)) : 0;
    const d = Math.hypot(p.x + t * (q.x - p.x) - x, p.y + t * (q.y - p.y) - y);
    if (d > 9 || d >= least) continue;
    const long = Math.sqrt(l);
    if (t * long < 9) t = 0;
    else if ((1 - t) * long < 9) t = 1;
    least = d;
    best = onSkin(thing, ends[0].lerp(ends[1], t).toArray(), t === 0 || t === 1 ? 'a corner' : 'an edge');
  }
  return best ?? onSkin(thing, thing.own(hit).toArray(), 'its face');
}
