package parts

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// Arc is a piece of a wheel's rim: a ring's sector, sawn to the curve out of
// straight stock.
//
// Its x runs along the chord, y across the tyre's width and z out from the
// wheel's centre in the middle of the piece. The box starts at the origin: z = 0
// is where the belly meets the joints, x = 0 where the back meets the first one.
type Arc struct {
	Radius Length // of the back, under the tyre; where it is bevelled, of its larger edge
	Wide   Length // across the tyre's width
	Depth  Length // from the back's larger edge to the belly's smaller one, along a spoke
	Pieces int    // that make up the whole rim
	Gap    Length // left open at each joint; half of it comes off either end
	// Bevel is how far back and belly are out of square to the sides, as in a
	// dished wheel: where positive they are larger at the first side.
	Bevel Angle
}

// belly is the radius of its inside, at its smaller edge.
func (a Arc) belly() Length { return a.Radius - a.Depth }

// fall is how much the bevel changes the radii from side to side.
func (a Arc) fall() Length { return a.Wide * Length(math.Abs(math.Tan(float64(a.Bevel)))) }

// under is how far the radii at a place across are below those at the larger side.
func (a Arc) under(y Length) Length {
	if a.Bevel < 0 {
		y = a.Wide - y
	}
	if a.Bevel == 0 {
		return 0
	}
	return y * Length(math.Abs(math.Tan(float64(a.Bevel))))
}

// backAt and bellyAt are the radii of back and belly at a place across.
func (a Arc) backAt(y Length) Length { return a.Radius - a.under(y) }

func (a Arc) bellyAt(y Length) Length { return a.belly() + a.fall() - a.under(y) }

// half is the angle from the piece's middle to its end, at a radius.
func (a Arc) half(radius Length) float64 {
	return math.Pi/float64(a.Pieces) - math.Asin(float64(a.Gap/2/radius))
}

// at is the place in the side's frame at a radius and an angle from the middle.
func (a Arc) at(radius Length, angle float64) form.Point {
	c := a.Centre()
	sin, cos := math.Sincos(angle)
	return form.Point{X: c.X + radius*Length(sin), Y: c.Y + radius*Length(cos)}
}

// Centre is the wheel's, in the first side's frame.
func (a Arc) Centre() form.Point {
	return form.Point{
		X: a.Radius * Length(math.Sin(a.half(a.Radius))),
		Y: -a.belly() * Length(math.Cos(a.half(a.belly()))),
	}
}

// Chord is the length of the back from end to end, straight across.
func (a Arc) Chord() Length { return 2 * a.Centre().X }

// Sagitta is the rise of the back above its chord.
func (a Arc) Sagitta() Length { return a.Radius * Length(1-math.Cos(a.half(a.Radius))) }

// sector is its outline seen from the side.
func (a Arc) sector() form.Profile {
	back, belly := a.half(a.Radius), a.half(a.belly())
	p := form.Profile{
		{Point: a.at(a.belly(), -belly), Bulge: -math.Tan(belly / 2)},
		{Point: a.at(a.belly(), belly)},
		{Point: a.at(a.Radius, back), Bulge: math.Tan(back / 2)},
		{Point: a.at(a.Radius, -back)},
	}
	p[0].Y, p[1].Y, p[3].X = 0, 0, 0 // the box starts here, to the last digit
	return p
}

func (a Arc) sawn() Sawn {
	s := a.sector()
	return Sawn{Plan: form.Rectangle(form.Point{}, form.Point{X: s[2].X, Y: a.Wide}), Side: s}
}

// Box is as in Body. It is deeper than the wood by the rise of the belly.
func (a Arc) Box() (long, wide, deep Length) {
	return a.Chord(), a.Wide, a.Centre().Y + a.Radius
}

// Volume is as in Body.
func (a Arc) Volume() form.Volume {
	if a.Bevel != 0 {
		return a.coned()
	}
	return form.Prism{Frame: FirstSide.Frame(a), Profile: a.sector(), From: -a.Wide}
}

// Outline is as in Body.
func (a Arc) Outline(f Face) form.Profile {
	long, wide, deep := a.Box()
	switch {
	case f == FirstSide:
		return a.sector()
	case f == SecondSide:
		return a.sector().Mirrored(deep)
	case a.Bevel != 0:
		return a.leaning(f)
	}
	switch f {
	case FirstEnd, SecondEnd:
		return form.Rectangle(form.Point{}, form.Point{X: wide, Y: deep})
	}
	return form.Rectangle(form.Point{}, form.Point{X: long, Y: wide})
}

// Net is as in Body.
func (a Arc) Net() quantity.Volume {
	if a.Bevel != 0 {
		return a.conedNet()
	}
	return a.sawn().Net()
}

// Mirrored is as in Body: a rim's piece is alike both ways, but for its bevel.
func (a Arc) Mirrored() Body {
	if a.Bevel != 0 {
		a.Bevel = -a.Bevel
	}
	return a
}

// Blank is as in Body: as long as the chord, and as deep as the rise of the
// back and the depth together. That is the rule for felloe stock; it leaves
// the belly's corners whole until the joints are cut.
func (a Arc) Blank() Blank {
	return Blank{Long: a.Chord(), Wide: a.Wide, Deep: a.Sagitta() + a.Depth, Making: Curved}
}

// end is a joint's plane: U across the rim, V from belly to back.
func (a Arc) end(f Face) (form.Frame, form.Profile) {
	side := 1.0
	u := form.Dir{Y: 1}
	origin := form.Vec{}
	if f == FirstEnd {
		side, u, origin.Y = -1, u.Opposite(), a.Wide
	}
	sin, cos := math.Sincos(math.Pi / float64(a.Pieces))
	belly := a.at(a.belly(), side*a.half(a.belly()))
	origin.X, origin.Z = belly.X, belly.Y
	return form.Frame{Origin: origin, U: u, V: form.Dir{X: side * sin, Z: cos}}, a.joint(f)
}

// joint is the wood's section on a joint's plane, from the belly's smaller edge up.
func (a Arc) joint(f Face) form.Profile {
	// On a plane half the gap beside the wheel's centre.
	up := func(radius Length) Length {
		along := func(r Length) Length { return Length(math.Sqrt(float64(r*r - a.Gap*a.Gap/4))) }
		return along(radius) - along(a.belly())
	}
	near, far := Length(0), a.Wide
	if f == FirstEnd {
		near, far = far, near
	}
	p := form.Polygon(
		form.Point{X: 0, Y: up(a.bellyAt(near))}, form.Point{X: a.Wide, Y: up(a.bellyAt(far))},
		form.Point{X: a.Wide, Y: up(a.backAt(far))}, form.Point{X: 0, Y: up(a.backAt(near))})
	if a.Bevel == 0 {
		p[0].Y, p[1].Y, p[2].Y = 0, 0, p[3].Y
	}
	return p
}
