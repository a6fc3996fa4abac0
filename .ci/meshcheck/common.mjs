// Says how much two solids have in common, by an independent mesh library: the
// volume of the intersection of two STL files, in their unit cubed.
import { welded, wasm } from './welded.mjs';

const [a, b] = process.argv.slice(2).map((file) => new wasm.Manifold(welded(file)));
console.log(JSON.stringify({ volume: a.intersect(b).volume() }));
