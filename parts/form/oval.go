package form

import (
	"errors"
	"fmt"
	"math"

	"lostwood/internal/quantity"
)

// An Ellipse is an oval section of a piece: its centre, and half of what it
// spans along its frame's U and along its V.
type Ellipse struct {
	Centre Point
	U, V   Length
}

// An Oval is a piece of elliptic section, as the body of a spoke, between two
// flat ends square to its frame's W. From one end to the other each half span
// and the centre change evenly, each by itself, so that a face may taper while
// the one across from it stays straight. Its side is ruled: straight lines join
// the places of the two sections that are the same part of the way round.
type Oval struct {
	Frame       Frame
	From, To    Length // where the first and the last section stand along W
	First, Last Ellipse
}

func (Oval) volume() {}

// Valid reports what keeps the piece from being one: numbers that are none,
// ends in the wrong order, a section with no width.
func (o Oval) Valid() error {
	for _, l := range []Length{o.From, o.To, o.First.Centre.X, o.First.Centre.Y, o.First.U, o.First.V, o.Last.Centre.X, o.Last.Centre.Y, o.Last.U, o.Last.V} {
		if math.IsNaN(float64(l)) || math.IsInf(float64(l), 0) {
			return errors.New("a size of the oval is not a number")
		}
	}
	for i, e := range []Ellipse{o.First, o.Last} {
		if e.U < same || e.V < same {
			return fmt.Errorf("the %s section of the oval is %v by %v: it has no width", [...]string{"first", "last"}[i], 2*e.U, 2*e.V)
		}
	}
	if o.To-o.From < same {
		return fmt.Errorf("the oval runs from %v to %v: its last section must lie beyond its first", o.From, o.To)
	}
	return nil
}

// Section is the oval's section at a place along W, beyond its ends too.
func (o Oval) Section(at Length) Ellipse {
	t := (at - o.From) / (o.To - o.From)
	part := func(a, b Length) Length { return a + t*(b-a) }
	return Ellipse{
		Point{part(o.First.Centre.X, o.Last.Centre.X), part(o.First.Centre.Y, o.Last.Centre.Y)},
		part(o.First.U, o.Last.U), part(o.First.V, o.Last.V),
	}
}

// Content is the volume of the oval: its section's area, pi times both half
// spans, is of the second degree along it, so that Simpson's rule is exact.
func (o Oval) Content() quantity.Volume {
	a1, b1, a2, b2 := float64(o.First.U), float64(o.First.V), float64(o.Last.U), float64(o.Last.V)
	return quantity.Volume(math.Pi * float64(o.To-o.From) / 6 * (2*a1*b1 + 2*a2*b2 + a1*b2 + a2*b1))
}

// bounds reach as far as the end sections do: the side's lines run between them.
func (o Oval) bounds() Box {
	w := o.Frame.W()
	return boxOf(func(axis Dir) (lo, hi float64) {
		u, v := axis.dot(o.Frame.U), axis.dot(o.Frame.V)
		lo, hi = math.Inf(1), math.Inf(-1)
		for _, at := range []Length{o.From, o.To} {
			e := o.Section(at)
			mid := float64(axis.Along(o.Frame.Origin)) + u*float64(e.Centre.X) + v*float64(e.Centre.Y) + axis.dot(w)*float64(at)
			reach := math.Hypot(u*float64(e.U), v*float64(e.V))
			lo, hi = min(lo, mid-reach), max(hi, mid+reach)
		}
		return lo, hi
	})
}

func (o Oval) mirrored(wide Length) Oval {
	o.Frame = o.Frame.mirrored(wide)
	o.First.Centre.Y, o.Last.Centre.Y = -o.First.Centre.Y, -o.Last.Centre.Y
	return o
}
