// Says of each STL file what an independent mesh library finds: whether its
// triangles, welded by the bits of their corners, bound a solid; that solid's
// volume; and how many ways lead through it. One line a file, as JSON.
import { readFileSync } from 'node:fs';
import Module from 'manifold-3d';

const wasm = await Module();
wasm.setup();

function welded(file) {
  const b = readFileSync(file);
  const count = b.readUInt32LE(80);
  const places = new Map();
  const vertices = [];
  const corners = [];
  for (let t = 0; t < count; t++) {
    for (let k = 0; k < 3; k++) {
      const at = 84 + 50 * t + 12 + 12 * k;
      const key = b.toString('hex', at, at + 12);
      if (!places.has(key)) {
        places.set(key, vertices.length / 3);
        vertices.push(b.readFloatLE(at), b.readFloatLE(at + 4), b.readFloatLE(at + 8));
      }
      corners.push(places.get(key));
    }
  }
  return new wasm.Mesh({ numProp: 3, vertProperties: new Float32Array(vertices), triVerts: new Uint32Array(corners) });
}

for (const file of process.argv.slice(2)) {
  try {
    const solid = new wasm.Manifold(welded(file));
    console.log(JSON.stringify({ file, status: String(solid.status()), volume: solid.volume(), through: solid.genus(), triangles: solid.numTri() }));
    solid.delete();
  } catch (e) {
    console.log(JSON.stringify({ file, status: String(e.message ?? e) }));
  }
}
