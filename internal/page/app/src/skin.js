// Skins: closed triangle meshes, from the page's data or built here for bolts
// and clips; their lighting normals and the edges that are drawn as lines.
import { BufferAttribute, BufferGeometry } from 'three';

// A skin is { at: Float32Array of corners, tri: corner indices }, closed and facing outwards.

export function unpack(m) {
  const raw = Uint8Array.from(atob(m.data), (c) => c.charCodeAt(0));
  const q = new Uint16Array(raw.buffer, 0, 3 * m.corners);
  const at = new Float32Array(3 * m.corners);
  for (let i = 0; i < at.length; i++) at[i] = m.low[i % 3] + q[i] * m.step[i % 3];
  const rest = raw.buffer.slice(6 * m.corners);
  return { at, tri: m.wide ? new Uint32Array(rest) : new Uint16Array(rest) };
}

// prism is a closed prism of that many sides about the z axis, or about (x, y).
function prism(sides, radius, from, to, turn = 0, x = 0, y = 0) {
  const at = [];
  const tri = [];
  for (const z of [from, to]) {
    for (let i = 0; i < sides; i++) {
      const a = turn + (2 * Math.PI * i) / sides;
      at.push(x + radius * Math.cos(a), y + radius * Math.sin(a), z);
    }
  }
  for (let i = 0; i < sides; i++) {
    const j = (i + 1) % sides;
    tri.push(i, j, sides + j, i, sides + j, sides + i);
    if (i > 1) tri.push(0, i, i - 1, sides, sides + i - 1, sides + i);
  }
  return { at, tri };
}

function box(x0, x1, y0, y1, z0, z1) {
  const at = [];
  for (const z of [z0, z1]) at.push(x0, y0, z, x1, y0, z, x1, y1, z, x0, y1, z);
  const tri = [0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7];
  for (let i = 0; i < 4; i++) {
    const j = (i + 1) % 4;
    tri.push(i, j, 4 + j, i, 4 + j, 4 + i);
  }
  return { at, tri };
}

function joined(pieces) {
  const at = [];
  const tri = [];
  for (const p of pieces) {
    const base = at.length / 3;
    at.push(...p.at);
    for (const c of p.tri) tri.push(base + c);
  }
  return { at: new Float32Array(at), tri: new Uint16Array(tri) };
}

// bolt draws a fastening along z, its head bearing at 0.
export function bolt({ d, grip, across, screw }) {
  if (!d) {
    const half = across / 2;
    return joined([
      box(-13, 13, -half - 9, half + 9, -9, 0),
      box(-13, 13, half, half + 9, 0, grip + 22),
      box(-13, 13, -half - 9, -half, 0, grip + 22),
    ]);
  }
  const pieces = [prism(12, d / 2, 0, grip), prism(12, d * 0.98, -0.45 * d, 0)];
  if (!screw) pieces.push(prism(4, d * 1.15, grip, grip + 0.85 * d, Math.PI / 4), prism(12, d / 2, grip + 0.85 * d, grip + 1.15 * d));
  return joined(pieces);
}

const CREASE = Math.cos((36 * Math.PI) / 180);

// dress makes what is drawn of a skin: faces with normals that are smooth over
// curves and break at creases, and the creases themselves.
export function dress(skin) {
  const { at, tri } = skin;
  const n = tri.length / 3;
  const normal = new Float32Array(3 * n); // as long as twice the area
  const around = Array.from({ length: at.length / 3 }, () => []);
  for (let t = 0; t < n; t++) {
    const [a, b, c] = [3 * tri[3 * t], 3 * tri[3 * t + 1], 3 * tri[3 * t + 2]];
    const u = [at[b] - at[a], at[b + 1] - at[a + 1], at[b + 2] - at[a + 2]];
    const v = [at[c] - at[a], at[c + 1] - at[a + 1], at[c + 2] - at[a + 2]];
    normal[3 * t] = u[1] * v[2] - u[2] * v[1];
    normal[3 * t + 1] = u[2] * v[0] - u[0] * v[2];
    normal[3 * t + 2] = u[0] * v[1] - u[1] * v[0];
    for (let k = 0; k < 3; k++) around[tri[3 * t + k]].push(t);
  }
  const long = (t) => Math.hypot(normal[3 * t], normal[3 * t + 1], normal[3 * t + 2]) || 1;
  const size = Float32Array.from({ length: n }, (_, t) => long(t));
  const cosine = (s, t) => (normal[3 * s] * normal[3 * t] + normal[3 * s + 1] * normal[3 * t + 1] + normal[3 * s + 2] * normal[3 * t + 2]) / (size[s] * size[t]);
  const places = new Float32Array(9 * n);
  const normals = new Float32Array(9 * n);
  for (let t = 0; t < n; t++) {
    for (let k = 0; k < 3; k++) {
      const c = tri[3 * t + k];
      let x = 0, y = 0, z = 0;
      for (const s of around[c]) {
        if (s !== t && cosine(s, t) < CREASE) continue;
        x += normal[3 * s]; y += normal[3 * s + 1]; z += normal[3 * s + 2];
      }
      const l = Math.hypot(x, y, z) || 1;
      const o = 9 * t + 3 * k;
      places.set([at[3 * c], at[3 * c + 1], at[3 * c + 2]], o);
      normals.set([x / l, y / l, z / l], o);
    }
  }
  const faces = new BufferGeometry();
  faces.setAttribute('position', new BufferAttribute(places, 3));
  faces.setAttribute('normal', new BufferAttribute(normals, 3));
  faces.computeBoundingSphere();
  faces.computeBoundingBox();
  const edges = creases(skin, cosine);
  const lines = new BufferGeometry();
  const ends = new Float32Array(3 * edges.length);
  edges.forEach((c, i) => ends.set([at[3 * c], at[3 * c + 1], at[3 * c + 2]], 3 * i));
  lines.setAttribute('position', new BufferAttribute(ends, 3));
  return { ...skin, edges, faces, lines };
}

// creases are the edges between faces that meet at an angle, as pairs of corners.
function creases({ at, tri }, cosine) {
  const open = new Map();
  const out = [];
  const many = at.length / 3;
  for (let i = 0; i < tri.length; i++) {
    const a = tri[i];
    const b = tri[i % 3 === 2 ? i - 2 : i + 1];
    const key = Math.min(a, b) * many + Math.max(a, b);
    const t = (i / 3) | 0;
    const s = open.get(key);
    if (s === undefined) open.set(key, t);
    else if (cosine(s, t) < CREASE) out.push(a, b);
  }
  return out;
}
