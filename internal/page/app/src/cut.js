// Cutting open: where a plane goes through closed skins, the faces of the cut are
// worked out and closed, so that wood looks like wood and not like a shell.
import { BufferAttribute, BufferGeometry, ShapeUtils, Vector2, Vector3 } from 'three';

// rings are the closed lines in which a plane square to an axis meets a skin
// that stands at a matrix: loops of places on the plane's two other axes.
// It also tells how many lines could not be closed.
export function rings(skin, matrix, axis, where) {
  const { at, tri } = skin;
  const [u, v] = [0, 1, 2].filter((k) => k !== axis);
  const many = at.length / 3;
  const world = new Float64Array(at.length);
  const off = new Float64Array(many);
  const p = new Vector3();
  for (let i = 0; i < many; i++) {
    p.set(at[3 * i], at[3 * i + 1], at[3 * i + 2]).applyMatrix4(matrix);
    world[3 * i] = p.x; world[3 * i + 1] = p.y; world[3 * i + 2] = p.z;
    off[i] = world[3 * i + axis] - where;
    if (Math.abs(off[i]) < 1e-6) off[i] = 1e-6; // no corner lies on the plane: each side is crossed or is not
  }
  const next = new Map(); // from the edge where a line comes in to where it goes out
  const place = new Map();
  const cross = (a, b) => {
    const lo = Math.min(a, b), hi = Math.max(a, b), key = lo * many + hi;
    if (!place.has(key)) {
      const t = off[lo] / (off[lo] - off[hi]);
      place.set(key, [world[3 * lo + u] + t * (world[3 * hi + u] - world[3 * lo + u]), world[3 * lo + v] + t * (world[3 * hi + v] - world[3 * lo + v])]);
    }
    return key;
  };
  for (let i = 0; i < tri.length; i += 3) {
    let out, back;
    for (let k = 0; k < 3; k++) {
      const a = tri[i + k], b = tri[i + ((k + 1) % 3)];
      if (off[a] < 0 && off[b] >= 0) out = cross(a, b);
      else if (off[a] >= 0 && off[b] < 0) back = cross(a, b);
    }
    if (out !== undefined) next.set(out, back);
  }
  const loops = [];
  let open = 0;
  while (next.size) {
    const [start] = next.keys();
    const loop = [];
    let key = start;
    while (next.has(key)) {
      loop.push(place.get(key));
      const n = next.get(key);
      next.delete(key);
      key = n;
    }
    if (key === start) loops.push(loop);
    else open++;
  }
  return { loops, open };
}

const area = (loop) => loop.reduce((s, a, i) => { const b = loop[(i + 1) % loop.length]; return s + (a[0] * b[1] - b[0] * a[1]) / 2; }, 0);

function inside([x, y], loop) {
  let odd = false;
  for (let i = 0, j = loop.length - 1; i < loop.length; j = i++) {
    const [xi, yi] = loop[i], [xj, yj] = loop[j];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) odd = !odd;
  }
  return odd;
}

// cap closes the cut: its face, its outline, its area in square millimetres.
export function cap(skin, matrix, axis, where) {
  const { loops, open } = rings(skin, matrix, axis, where);
  if (!loops.length) return { open };
  const all = loops.map((l) => ({ loop: l, size: Math.abs(area(l)) })).filter((l) => l.size > 1e-3).sort((a, b) => b.size - a.size);
  all.forEach((l, i) => { l.within = all.slice(0, i).filter((o) => inside(l.loop[0], o.loop)); });
  const to3 = (q) => { const r = [0, 0, 0]; const rest = [0, 1, 2].filter((k) => k !== axis); r[axis] = where; r[rest[0]] = q[0]; r[rest[1]] = q[1]; return r; };
  const faces = [];
  const lines = [];
  let sum = 0;
  for (const l of all) {
    l.loop.forEach((q, i) => lines.push(...to3(q), ...to3(l.loop[(i + 1) % l.loop.length])));
    if (l.within.length % 2) { sum -= l.size; continue; }
    sum += l.size;
    const holes = all.filter((o) => o.within.includes(l) && o.within.length === l.within.length + 1).map((o) => o.loop);
    const flat = [l.loop, ...holes].map((r) => r.map((q) => new Vector2(q[0], q[1])));
    const corners = flat.flat();
    for (const t of ShapeUtils.triangulateShape(flat[0], flat.slice(1))) for (const c of t) faces.push(...to3([corners[c].x, corners[c].y]));
  }
  const geometry = (list) => new BufferGeometry().setAttribute('position', new BufferAttribute(new Float32Array(list), 3));
  const face = geometry(faces);
  const normals = new Float32Array(faces.length);
  for (let i = axis; i < normals.length; i += 3) normals[i] = 1;
  face.setAttribute('normal', new BufferAttribute(normals, 3));
  return { open, area: sum, face, lines: geometry(lines) };
}
