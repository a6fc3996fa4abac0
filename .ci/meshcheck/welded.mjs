// Reads an STL file into the independent mesh library, welded by the bits of its corners.
import { readFileSync } from 'node:fs';
import Module from 'manifold-3d';

export const wasm = await Module();
wasm.setup();

export function welded(file) {
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
