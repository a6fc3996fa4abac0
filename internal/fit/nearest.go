package fit

import (
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

// cells are a heap: the most promising cube is the first.
type cells []cell

func (h *cells) push(c cell) {
	*h = append(*h, c)
	q := *h
	for i := len(q) - 1; i > 0 && q[i].least < q[(i-1)/2].least; i = (i - 1) / 2 {
		q[i], q[(i-1)/2] = q[(i-1)/2], q[i]
	}
}

func (h *cells) pop() cell {
	q := *h
	first, last := q[0], len(q)-1
	q[0] = q[last]
	q = q[:last]
	for i := 0; ; {
		k := 2*i + 1
		if k+1 < len(q) && q[k+1].least < q[k].least {
			k++
		}
		if k >= len(q) || q[i].least <= q[k].least {
			break
		}
		q[i], q[k] = q[k], q[i]
		i = k
	}
	*h = q
	return first
}

// How many cubes are looked into before the answer so far is taken: at first, and
// about the best place.
const first, again = 400, 700

// A room is half the room between two solids where they are apart, and below nothing
// where they are in each other: the least over space of the larger of the two
// distances.
type room struct {
	least float64 // it is surely no smaller
	found float64 // what was found, and almost surely it
	at    v3.Vec
}

// nearest finds the room between two solids, one of them moved, within a cube.
// Distances never fall faster than one goes, so whole cubes can be left out. Where
// they are near each other it is looked again, closer, about the best place found.
// So much room is enough not to look farther; under closely it is looked again, to
// the last fiftieth of a millimetre.
func nearest(a, b *solid.Solid, moved pose, mid v3.Vec, half, enough, closely float64) room {
	value := func(p v3.Vec) float64 { return math.Max(a.Evaluate(moved(p)), b.Evaluate(p)) }
	r, size := descend(value, mid, half, 0.25, enough, first)
	if r.found > closely {
		return r
	}
	for range 6 {
		next, smaller := descend(value, r.at, math.Max(4*size, 0.5), 0, enough, again)
		if next.found > r.found-0.005 {
			break
		}
		r.found, r.at, size = next.found, next.at, smaller
	}
	r.least = math.Min(r.least, r.found)
	return r
}

// descend looks into the most promising cube first, until what was found is no more
// than a share above what there can be. It gives the size of the cube of the best place.
func descend(value func(v3.Vec) float64, mid v3.Vec, half, share, enough float64, most int) (r room, size float64) {
	r.found, size = math.Inf(1), half
	h := make(cells, 0, 512)
	look := func(mid v3.Vec, half float64) {
		v := value(mid)
		if v < r.found {
			r.found, r.at, size = v, mid, half
		}
		h.push(cell{mid, half, v - half*math.Sqrt(3)})
	}
	look(mid, half)
	for range most {
		c := h.pop()
		r.least = c.least
		if c.least > enough || r.found-c.least <= math.Max(0.02, share*math.Abs(r.found)) {
			break
		}
		q := c.half / 2
		for k := range 8 {
			look(c.mid.Add(corner(k).MulScalar(q)), q)
		}
	}
	return r, size
}

// corner is one of the eight directions to a cube's corners.
func corner(k int) v3.Vec {
	d := v3.Vec{X: 1, Y: 1, Z: 1}
	if k&1 != 0 {
		d.X = -1
	}
	if k&2 != 0 {
		d.Y = -1
	}
	if k&4 != 0 {
		d.Z = -1
	}
	return d
}
