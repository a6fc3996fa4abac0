package mesh

import "math"

// A knot is a vertex's number. Places nearer than snap are one knot.
type knot = int

// knots gives places numbers.
type knots struct {
	snap  float64
	at    []point
	cells map[[3]int64][]knot
}

// cell is the side of the boxes that knots are kept in.
const cell = 1.0

func newKnots(snap float64) *knots { return &knots{snap: snap, cells: map[[3]int64][]knot{}} }

// of returns the knot at p, tying a new one if there is none.
func (k *knots) of(p point) knot {
	snap := k.snap
	lo := [3]int64{int64(math.Floor((p.X - snap) / cell)), int64(math.Floor((p.Y - snap) / cell)), int64(math.Floor((p.Z - snap) / cell))}
	hi := [3]int64{int64(math.Floor((p.X + snap) / cell)), int64(math.Floor((p.Y + snap) / cell)), int64(math.Floor((p.Z + snap) / cell))}
	for x := lo[0]; x <= hi[0]; x++ {
		for y := lo[1]; y <= hi[1]; y++ {
			for z := lo[2]; z <= hi[2]; z++ {
				for _, i := range k.cells[[3]int64{x, y, z}] {
					if k.at[i].Sub(p).Length() <= snap {
						return i
					}
				}
			}
		}
	}
	home := [3]int64{int64(math.Floor(p.X / cell)), int64(math.Floor(p.Y / cell)), int64(math.Floor(p.Z / cell))}
	k.at = append(k.at, p)
	k.cells[home] = append(k.cells[home], len(k.at)-1)
	return len(k.at) - 1
}
