// A view as words in the address, so that it can be linked to:
// #see:view=known&part=near-reach&eye=38,17,6000,0,0,800

const START = '#see:';

export function write(state, eye) {
  const q = new URLSearchParams();
  if (state.view !== 'matter') q.set('view', state.view);
  if (state.show !== 'all') q.set('show', state.show);
  if (state.picked) q.set('part', state.picked);
  if (state.apart) q.set('apart', Math.round(state.apart * 100));
  if (state.cutWay) q.set('cut', `${state.cutWay},${Math.round(state.cutAt * 1000)}`);
  if (state.turns.some((t) => t)) q.set('turn', state.turns.map((t) => Math.round(t)).join());
  q.set('eye', [eye.round, eye.high, eye.far, eye.at.x, eye.at.y, eye.at.z].map((n) => Math.round(n * 10) / 10).join());
  return START + q.toString().replaceAll('%2C', ',');
}

// read is what an address asks for; null where it asks for no view. What is no
// number, or out of bounds, is left as it was.
export function read(hash, views, limits) {
  if (!hash.startsWith(START)) return null;
  const q = new URLSearchParams(hash.slice(START.length));
  const number = (text, lo, hi) => {
    const n = Number(text);
    return text !== null && text.trim() !== '' && Number.isFinite(n) ? Math.min(hi, Math.max(lo, n)) : undefined;
  };
  const numbers = (text, bounds) => {
    const list = (text ?? '').split(',');
    const out = bounds.map(([lo, hi], i) => number(list[i] ?? null, lo, hi));
    return out.every((n) => n !== undefined) ? out : null;
  };
  const [way, at] = (q.get('cut') ?? '').split(',');
  const far = 1e5;
  return {
    view: views.includes(q.get('view')) ? q.get('view') : 'matter',
    show: ['all', 'timber', 'iron'].includes(q.get('show')) ? q.get('show') : 'all',
    picked: q.get('part') ?? '',
    apart: (number(q.get('apart'), 0, 100) ?? 0) / 100,
    cutWay: ['x', 'y', 'z'].includes(way) ? way : '',
    cutAt: (number(at ?? null, 0, 1000) ?? 500) / 1000,
    turns: numbers(q.get('turn'), limits) ?? limits.map(() => 0),
    eye: numbers(q.get('eye'), [[-1e4, 1e4], [-89.9, 89.9], [150, 40000], [-far, far], [-far, far], [-far, far]]),
  };
}
