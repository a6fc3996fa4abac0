package gauge

import (
	"math"
	"slices"

	v3 "github.com/deadsy/sdfx/vec/v3"

	"lostwood/internal/solid"
)

// few is how many surfaces a solid may have for every three of them to be
// tried; of more, only those that pass near the same place are.
const few = 20

// corners solves for three surfaces at a time, keeps the true corners and
// measures how far each is from a vertex.
func (g *Gauge) corners(p *probe, n *nest) {
	all := p.s.Surfaces()
	if len(all) <= few {
		g.everyThree(p, n)
		return
	}
	const looks, close = 600, 8 // places to look at, and how far round each
	for range looks {
		q := p.near(n)
		var near []int
		for i := range all {
			if math.Abs(all[i].Distance(q)) < close {
				near = append(near, i)
			}
		}
		for a := range near {
			for b := range a {
				for c := range b {
					g.corner(p, n, q, [3]int{near[a], near[b], near[c]})
				}
			}
		}
	}
}

func (g *Gauge) everyThree(p *probe, n *nest) {
	all := p.s.Surfaces()
	for i := range all {
		for j := range i {
			for k := range j {
				for range 2 {
					q := p.near(n)
					if all[i].Kind == solid.Plane && all[j].Kind == solid.Plane && all[k].Kind == solid.Plane {
						q = p.s.BoundingBox().Center()
					}
					g.corner(p, n, q, [3]int{i, j, k})
				}
			}
		}
	}
}

// corner goes from q to where three surfaces meet, if that is a true corner.
func (g *Gauge) corner(p *probe, n *nest, q v3.Vec, of [3]int) {
	all := p.s.Surfaces()
	q, ok := p.onto(q, of[:]...)
	if !ok || math.Abs(p.s.Evaluate(q)) > 1e-9 || math.Abs(all[of[0]].Normal(q).Dot(all[of[1]].Normal(q).Cross(all[of[2]].Normal(q)))) < 0.2 {
		return
	}
	m := p.meets(q)
	for _, i := range of {
		if !slices.Contains(m, i) {
			return
		}
	}
	g.Corners++
	best := math.Inf(1)
	for _, v := range n.at {
		best = min(best, v.Sub(q).Length())
	}
	g.Corner.take(best, q)
}
