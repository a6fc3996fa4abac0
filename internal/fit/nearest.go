package fit

import (
	"container/heap"
	"math"

	"lostwood/internal/solid"

	v3 "github.com/deadsy/sdfx/vec/v3"
)

// A pose takes a place in the vehicle back to where it was in the thing that moved.
type pose func(p v3.Vec) v3.Vec

// A cell is a cube that is still looked into.
type cell struct {
	mid   v3.Vec
	half  float64
	least float64 // no place in it is lower than this
}

type cells []cell

func (c cells) Len() int           { return len(c) }
func (c cells) Less(i, j int) bool { return c[i].least < c[j].least }
func (c cells) Swap(i, j int)      { c[i], c[j] = c[j], c[i] }
func (c *cells) Push(x any)        { *c = append(*c, x.(cell)) }
func (c *cells) Pop() any {
	last := (*c)[len(*c)-1]
	*c = (*c)[:len(*c)-1]
	return last
}

// most is how many cells are looked into before the answer so far is taken.
const most = 30000

// nearest finds the place that is deepest in both of two solids, or nearest to both:
// the least over space of the larger of the two distances. It is half the room
// between them where they are apart, and below nothing where they are in each other.
// The answer is no higher than the true one, and lower by no more than a quarter of
// it or a twentieth of a millimetre. Distances never fall faster than one goes, so
// whole cubes can be left out.
func nearest(a, b *solid.Solid, moved pose, mid v3.Vec, half float64) (least float64, at v3.Vec) {
	value := func(p v3.Vec) float64 { return math.Max(a.Evaluate(moved(p)), b.Evaluate(p)) }
	best := math.Inf(1)
	look := func(h *cells, mid v3.Vec, half float64) {
		v := value(mid)
		if v < best {
			best, at = v, mid
		}
		heap.Push(h, cell{mid, half, v - half*math.Sqrt(3)})
	}
	h := &cells{}
	look(h, mid, half)
	for n := 0; n < most; n++ {
		c := heap.Pop(h).(cell)
		if best-c.least <= math.Max(0.05, 0.25*math.Abs(best)) {
			return c.least, at
		}
		q := c.half / 2
		for k := range 8 {
			d := v3.Vec{X: q, Y: q, Z: q}
			if k&1 != 0 {
				d.X = -q
			}
			if k&2 != 0 {
				d.Y = -q
			}
			if k&4 != 0 {
				d.Z = -q
			}
			look(h, c.mid.Add(d), q)
		}
	}
	return (*h)[0].least, at
}
