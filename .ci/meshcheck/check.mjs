// Says of each STL file what an independent mesh library finds: whether its
// triangles, welded by the bits of their corners, bound a solid; that solid's
// volume; and how many ways lead through it. One line a file, as JSON.
import { welded, wasm } from './welded.mjs';

for (const file of process.argv.slice(2)) {
  try {
    const solid = new wasm.Manifold(welded(file));
    console.log(JSON.stringify({ file, status: String(solid.status()), volume: solid.volume(), through: solid.genus(), triangles: solid.numTri() }));
    solid.delete();
  } catch (e) {
    console.log(JSON.stringify({ file, status: String(e.message ?? e) }));
  }
}
