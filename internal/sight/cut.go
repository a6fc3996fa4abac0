package sight

import "lostwood/parts/form"

// Cut is the section of a body where it is at that depth in a view: closed runs,
// the wood to their left. A depth that falls on a face is moved on by a hair.
func (b *Body) Cut(v View, depth Length) []form.Path {
	spots := make([]spot, len(b.corners))
	at := float64(depth)
	for i, c := range b.corners {
		spots[i] = v.spot(c)
	}
	const hair = 1.7e-6
	for clash := true; clash; {
		clash = false
		for _, s := range spots {
			if s.z == at {
				at, clash = at+hair, true
				break
			}
		}
	}
	type side [2]int // an edge of the skin, its lower corner first
	next := map[side]side{}
	place := map[side]spot{}
	var order []side
	for _, f := range b.facets {
		var in, out side
		crossed := false
		for k := range 3 {
			p, q := f[k], f[(k+1)%3]
			if (spots[p].z > at) == (spots[q].z > at) {
				continue
			}
			e := side{min(p, q), max(p, q)}
			lo, hi := spots[e[0]], spots[e[1]]
			place[e] = lo.between(hi, (at-lo.z)/(hi.z-lo.z))
			crossed = true
			if spots[p].z > at {
				out = e
			} else {
				in = e
			}
		}
		if crossed {
			next[out] = in
			order = append(order, out)
		}
	}
	var loops []form.Path
	done := map[side]bool{}
	for _, from := range order {
		if done[from] {
			continue
		}
		run := []spot{place[from]}
		done[from] = true
		for e := next[from]; e != from && !done[e]; e = next[e] {
			done[e] = true
			run = append(run, place[e])
		}
		loops = append(loops, curved(append(run, run[0]), b.sag))
	}
	return loops
}
