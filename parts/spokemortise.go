package parts

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A SpokeMortise is cut in a nave for a spoke's foot: parallel round the nave,
// tapered front to back as the foot is, leaning as the spoke does.
type SpokeMortise struct {
	ID          string
	Along       Length // of its middle at the nave's surface, from the first end
	Around      Angle  // round the nave, from z towards the first side
	Lean        Angle  // out to the second end
	Wide, Thick Length // front to back at the mouth, and round
	Point       Length // front to back at its bottom; 0 is as wide as the mouth
	Deep        Length // along the spoke from the surface, in the middle
}

// Ref is as in Feature.
func (m SpokeMortise) Ref() string { return m.ID }

func (m SpokeMortise) point() Length {
	if m.Point == 0 {
		return m.Wide
	}
	return m.Point
}

// frame has its origin in the middle of the mouth, U out along the spoke and V
// square to it towards the second end; W goes round.
func (m SpokeMortise) frame(b Turned) form.Frame {
	a := b.axis()
	sin, cos := math.Sincos(float64(m.Around))
	lean, upright := math.Sincos(float64(m.Lean))
	r := b.RadiusAt(m.Along)
	return form.Frame{
		Origin: form.Vec{X: m.Along, Y: a.Origin.Y - r*Length(sin), Z: a.Origin.Z + r*Length(cos)},
		U:      form.Dir{X: lean, Y: -upright * sin, Z: upright * cos},
		V:      form.Dir{X: upright, Y: lean * sin, Z: -lean * cos},
	}
}

// slot is its outline seen along the nave's round, from its bottom to a way out.
func (m SpokeMortise) slot(out Length) form.Profile {
	half := func(x Length) Length { return (m.Wide + (m.Wide-m.point())*x/m.Deep) / 2 }
	return form.Polygon(
		form.Point{X: -m.Deep, Y: -half(-m.Deep)}, form.Point{X: out, Y: -half(out)},
		form.Point{X: out, Y: half(out)}, form.Point{X: -m.Deep, Y: half(-m.Deep)})
}

// Cuts is as in Feature.
func (m SpokeMortise) Cuts(b Body) []form.Volume {
	body, ok := b.(Turned)
	if !ok {
		return nil
	}
	past := overrun + m.Wide
	return []form.Volume{form.Prism{Frame: m.frame(body), Profile: m.slot(past), From: -m.Thick / 2, To: m.Thick / 2}}
}

// mouth are the four corners of its mouth, in the part's frame.
func (m SpokeMortise) mouth(b Turned) [4]form.Vec {
	f := m.frame(b)
	axis := b.axis().Origin
	var out [4]form.Vec
	for i, c := range []struct{ front, round Length }{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		at := Length(0) // how far out along the spoke
		for range 30 {
			half := (m.Wide + (m.Wide-m.point())*at/m.Deep) / 2
			p := f.At(at, c.front*half, c.round*m.Thick/2)
			over := Length(math.Hypot(float64(p.Y-axis.Y), float64(p.Z-axis.Z))) - b.RadiusAt(p.X)
			out[i] = p
			if math.Abs(float64(over)) < 1e-9 {
				break
			}
			at -= over
		}
	}
	return out
}

// Marks is as in Feature: its mouth on the long faces that it looks to.
func (m SpokeMortise) Marks(b Body, f Face) []Mark {
	body, ok := b.(Turned)
	if !ok || f.isEnd() || !f.known() {
		return nil
	}
	frame := f.Frame(b)
	sin, cos := math.Sincos(float64(m.Around))
	if frame.W().Along(form.Vec{Y: Length(-sin), Z: Length(cos)}) < .5 {
		return nil
	}
	var p form.Profile
	for _, c := range m.mouth(body) {
		p = append(p, form.Vertex{Point: frame.On(c)})
	}
	if p.Area() < 0 {
		p = p.Reversed()
	}
	k := closed(m.ID, Mortising, Seen, p, "spoke mortise")
	centre := frame.On(m.frame(body).Origin)
	k.Centre, k.Depth = &centre, m.Deep
	return []Mark{k}
}

// Operations is as in Feature.
func (m SpokeMortise) Operations(b Body) []Operation {
	_, wide, _ := b.Box()
	op := Operation{
		Ref: m.ID, Work: Mortising, What: "spoke mortise", Face: Upper, At: form.Point{X: m.Along, Y: wide / 2},
		Sizes: measured(Measure{"long", m.Wide}, Measure{"wide", m.Thick}, Measure{"deep", m.Deep}),
		Note:  m.note(),
	}
	if m.point() != m.Wide {
		op.Sizes = append(op.Sizes, Measure{"long at the bottom", m.Point})
	}
	return []Operation{op}
}

func (m SpokeMortise) note() string {
	s := fmt.Sprintf("at %.2f degrees round", math.Mod(m.Around.Degrees()+360, 360))
	switch {
	case math.Abs(float64(m.Lean)) < 1e-6:
		return s + ", square to the nave"
	case m.Lean > 0:
		return s + fmt.Sprintf(", leaning %.2f degrees to the front", m.Lean.Degrees())
	}
	return s + fmt.Sprintf(", leaning %.2f degrees to the back", -m.Lean.Degrees())
}

// Check is as in Feature.
func (m SpokeMortise) Check(b Body) error {
	body, ok := b.(Turned)
	if !ok {
		return errors.New(m.ID + ": a spoke's mortise is cut in a nave")
	}
	l := limits{}
	l.need(m.ID+" along", m.Along, m.Wide/2+1, body.long()-m.Wide/2-1, "it must lie on the nave")
	l.need(m.ID+" thick", m.Thick, 1, body.Stout()/2, "")
	l.need(m.ID+" deep", m.Deep, 1, body.Stout()/2, "")
	l.need(m.ID+" wide", m.Wide, 1, body.long()/2, "")
	l.need(m.ID+" point", m.point(), 1, m.Wide, "it tapers to its bottom")
	return l.all()
}

// Mirrored is as in Feature.
func (m SpokeMortise) Mirrored(Body) Feature {
	m.Around = -m.Around
	return m
}

// removed sums slices along the nave's length, from side to side of the mortise.
func (m SpokeMortise) removed(b Body) quantity.Volume {
	body, ok := b.(Turned)
	if !ok {
		return 0
	}
	const points = 12
	f, axis := m.frame(body), body.axis().Origin
	depth := func(v, w float64) float64 { // of the wood above the bottom
		at := Length(0)
		for range 30 {
			p := f.At(at, Length(v), Length(w))
			over := Length(math.Hypot(float64(p.Y-axis.Y), float64(p.Z-axis.Z))) - body.RadiusAt(p.X)
			at -= over
			if math.Abs(float64(over)) < 1e-9 {
				break
			}
		}
		bottom := -m.Deep
		if slope := (m.Wide - m.point()) / 2 / m.Deep; slope > 0 {
			bottom = max(bottom, (Length(math.Abs(v))-m.Wide/2)/slope)
		}
		return math.Max(0, float64(at-bottom))
	}
	half, thick := float64(m.Wide)/2, float64(m.Thick)/2
	return quantity.Volume(quad.Fixed(func(w float64) float64 {
		return quad.Fixed(func(v float64) float64 { return depth(v, w) }, -half, half, 64, quad.Legendre{}, 0)
	}, -thick, thick, points, quad.Legendre{}, 0))
}
