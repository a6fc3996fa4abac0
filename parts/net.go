package parts

import (
	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// cutting is a feature that knows how much wood it takes from a body.
type cutting interface {
	removed(b Body) quantity.Volume
}

// Net is the wood left in the finished part, for its mass: the body less
// what each feature takes away.
//
// Each feature is reckoned alone and whole. Where two overlap (a bolt hole
// through a chamfer or a mortise) their common wood is taken off twice, and a
// square neck's corners are the only part of it that counts beside its hole.
// Holes are taken as the length of wood on their middle line times their area,
// which is exact where they enter and leave through planes.
func Net(s Stick) quantity.Volume {
	v := s.Body.Net()
	for _, f := range s.Features {
		if c, ok := f.(cutting); ok {
			v -= c.removed(s.Body)
		}
	}
	return v
}

// depthOfWood is all the wood in line under a place on a face, no further than
// reach below the surface; 0 for reach goes right through.
func depthOfWood(b Body, f Face, at form.Point, reach Length) float64 {
	var sum float64
	stretches := shapeOf(b).wood(f, at)
	for _, w := range stretches {
		to := w.To
		if reach != 0 {
			to = min(to, stretches[0].From+reach)
		}
		sum += max(0, float64(to-w.From))
	}
	return sum
}

func area(p form.Profile) float64 { return float64(p.Area()) }

func (h Hole) removed(b Body) quantity.Volume {
	bore := area(disc(h.At, h.Diameter))
	v := bore * depthOfWood(b, h.Face, h.At, h.Depth)
	cb, _ := h.floors()
	if h.Counterbore != nil {
		v += (area(disc(h.At, h.Counterbore.Diameter)) - bore) * float64(cb)
	}
	if h.Seat != nil {
		v += max(0, area(block(h.At, h.Seat.Width, h.Seat.Width))-bore) * float64(h.Seat.Depth)
	}
	return quantity.Volume(v)
}

func (m Mortise) removed(b Body) quantity.Volume {
	return quantity.Volume(area(block(m.At, m.Long, m.Wide)) * depthOfWood(b, m.Face, m.At, m.Depth))
}
