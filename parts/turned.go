package parts

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// A Station is a place on a turned body: along it, and its diameter there.
type Station struct{ Along, Diameter Length }

// Turned is a body turned about its middle line: its profile runs straight from
// station to station, the first at 0. Its box starts at the origin.
type Turned struct{ Stations []Station }

// Stout is its greatest diameter.
func (t Turned) Stout() Length {
	d := Length(0)
	for _, s := range t.Stations {
		d = max(d, s.Diameter)
	}
	return d
}

func (t Turned) long() Length {
	if len(t.Stations) == 0 {
		return 0
	}
	return t.Stations[len(t.Stations)-1].Along
}

// axis is its middle line's frame: U across, V up, W along.
func (t Turned) axis() form.Frame {
	r := t.Stout() / 2
	return form.Frame{Origin: form.Vec{Y: r, Z: r}, U: form.Dir{Y: 1}, V: form.Dir{Z: 1}}
}

// RadiusAt is its radius at a place along it.
func (t Turned) RadiusAt(x Length) Length {
	ss := t.Stations
	for i := 1; i < len(ss); i++ {
		a, b := ss[i-1], ss[i]
		if (x <= b.Along || i == len(ss)-1) && b.Along > a.Along {
			return (a.Diameter + (b.Diameter-a.Diameter)*(x-a.Along)/(b.Along-a.Along)) / 2
		}
	}
	return t.Stout() / 2
}

// meridian is half its section through the middle line: radius by place along.
func (t Turned) meridian() form.Profile {
	p := form.Profile{{Point: form.Point{}}}
	for _, s := range t.Stations {
		p = append(p, form.Vertex{Point: form.Point{X: s.Diameter / 2, Y: s.Along}})
	}
	return append(p, form.Vertex{Point: form.Point{Y: t.long()}})
}

// Box is as in Body.
func (t Turned) Box() (long, wide, deep Length) { return t.long(), t.Stout(), t.Stout() }

// Volume is as in Body.
func (t Turned) Volume() form.Volume {
	return form.Revolved{Frame: t.axis(), Profile: t.meridian(), Sweep: 2 * math.Pi}
}

// Outline is as in Body.
func (t Turned) Outline(f Face) form.Profile {
	r := t.Stout() / 2
	if f.isEnd() {
		return form.Circle(form.Point{X: r, Y: r}, r)
	}
	var p form.Profile
	for _, s := range t.Stations {
		p = append(p, form.Vertex{Point: form.Point{X: s.Along, Y: r - s.Diameter/2}})
	}
	for i := len(t.Stations) - 1; i >= 0; i-- {
		s := t.Stations[i]
		p = append(p, form.Vertex{Point: form.Point{X: s.Along, Y: r + s.Diameter/2}})
	}
	return p
}

// Net is as in Body.
func (t Turned) Net() quantity.Volume {
	return form.Revolved{Profile: t.meridian(), Sweep: 2 * math.Pi}.Content()
}

// Mirrored is as in Body: it is alike both ways.
func (t Turned) Mirrored() Body { return t }

// Blank is as in Body: as thick both ways as it is stout.
func (t Turned) Blank() Blank {
	return Blank{Long: t.long(), Wide: t.Stout(), Deep: t.Stout(), Making: Lathed}
}

// end is one end's plane and the round of wood there.
func (t Turned) end(f Face) (form.Frame, form.Profile) {
	r, at := t.Stout()/2, Length(0)
	if f == SecondEnd {
		at = t.long()
	}
	return f.Frame(t), form.Circle(form.Point{X: r, Y: r}, t.RadiusAt(at))
}
