package outline

import (
	"math"

	"lostwood/parts/form"
)

// A cross is what the plane at a station cuts out of a volume, in that plane:
// x is the part's y, y its z.
type cross struct {
	edges []Segment
	holds func(form.Point) bool
}

// far is beyond any timber: it stands for without end.
const far Length = 1e5

func nowhere() cross { return cross{holds: func(form.Point) bool { return false }} }

// crossOf cuts a volume at a station. A turned piece shows where it lies along the
// part, or where the plane holds its axis.
func crossOf(v form.Volume, x Length) cross {
	switch v := v.(type) {
	case form.Prism:
		return prismCross(v, x)
	case form.Half:
		return halfCross(v, x)
	case form.Oval:
		return ovalCross(v, x)
	case form.Revolved:
		if math.Abs(v.Frame.W().X) > 1-1e-9 {
			return ringCross(v, x)
		}
		return turnedCross(v, x)
	case form.Difference:
		from, cut := crossOf(v.From, x), merged(v.Cut, x)
		return cross{append(from.edges, edgesOf(cut)...), func(p form.Point) bool { return from.holds(p) && !anyHolds(cut, p) }}
	case form.Intersection:
		all := merged(v, x)
		return cross{edgesOf(all), func(p form.Point) bool { return allHold(all, p) }}
	case form.Union:
		all := merged(v, x)
		return cross{edgesOf(all), func(p form.Point) bool { return anyHolds(all, p) }}
	}
	return nowhere()
}

func merged(vs []form.Volume, x Length) []cross {
	var all []cross
	for _, v := range vs {
		all = append(all, crossOf(v, x))
	}
	return all
}

func edgesOf(all []cross) []Segment {
	var s []Segment
	for _, c := range all {
		s = append(s, c.edges...)
	}
	return s
}

func anyHolds(all []cross, p form.Point) bool {
	for _, c := range all {
		if c.holds(p) {
			return true
		}
	}
	return false
}

func allHold(all []cross, p form.Point) bool {
	for _, c := range all {
		if !c.holds(p) {
			return false
		}
	}
	return true
}

// inPlane is a place in space as one in the plane of the section.
func inPlane(v form.Vec) form.Point { return form.Point{X: v.Y, Y: v.Z} }

// enclosed is a closed outline as a cross.
func enclosed(p form.Profile) cross {
	return cross{Path{Run: p, Closed: true}.Segments(), p.Contains}
}

func halfCross(h form.Half, x Length) cross {
	n, off := h.Normal, float64(h.Normal.Along(h.At))-h.Normal.X*float64(x)
	holds := func(p form.Point) bool { return n.Y*float64(p.X)+n.Z*float64(p.Y) <= off }
	long := math.Hypot(n.Y, n.Z)
	if long < 1e-9 {
		return cross{holds: holds}
	}
	ny, nz := n.Y/long, n.Z/long
	foot := form.Point{X: Length(ny * off / long), Y: Length(nz * off / long)}
	along := func(by Length) form.Point {
		return form.Point{X: foot.X - Length(nz)*by, Y: foot.Y + Length(ny)*by}
	}
	return cross{[]Segment{{A: along(-far), B: along(far)}}, holds}
}

func prismCross(p form.Prism, x Length) cross {
	w := p.Frame.W()
	from, to := max(p.From, -far), min(p.To, far)
	switch {
	case math.Abs(w.X) < 1e-9:
		return sweptCross(p, from, to, x)
	case math.Abs(w.X) > 0.5:
		return endwise(p, from, to, x)
	}
	return slanted(p, from, to, x)
}

// sweptCross cuts a prism that is swept across the part: an oblong for each
// stretch of the line in which the plane meets its profile.
func sweptCross(p form.Prism, from, to, x Length) cross {
	f := p.Frame
	n := form.Point{X: Length(f.U.X), Y: Length(f.V.X)} // the plane's normal, in the profile's
	var all []cross
	for _, c := range turnedBy(p.Profile, n).Chords((x - f.Origin.X) / Length(math.Hypot(f.U.X, f.V.X))) {
		corner := func(along, deep Length) form.Point {
			at := (x - f.Origin.X)
			return inPlane(f.At(n.X*at-n.Y*along, n.Y*at+n.X*along, deep))
		}
		all = append(all, oblong(corner(c.From, from), corner(c.To, from), corner(c.To, to), corner(c.From, to)))
	}
	return cross{edgesOf(all), func(q form.Point) bool { return anyHolds(all, q) }}
}

// turnedBy is the profile turned so that n comes to lie along x.
func turnedBy(p form.Profile, n form.Point) form.Profile {
	if n.X == 1 {
		return p
	}
	out := make(form.Profile, len(p))
	for i, v := range p {
		out[i] = form.Vertex{Point: form.Point{X: v.X*n.X + v.Y*n.Y, Y: v.Y*n.X - v.X*n.Y}, Bulge: v.Bulge}
	}
	return out
}

// oblong is a rectangle that may stand askew.
func oblong(a, b, c, d form.Point) cross {
	u, v := form.Point{X: b.X - a.X, Y: b.Y - a.Y}, form.Point{X: d.X - a.X, Y: d.Y - a.Y}
	uu, vv := u.X*u.X+u.Y*u.Y, v.X*v.X+v.Y*v.Y
	return cross{[]Segment{{A: a, B: b}, {A: b, B: c}, {A: c, B: d}, {A: d, B: a}}, func(p form.Point) bool {
		s := (p.X-a.X)*u.X + (p.Y-a.Y)*u.Y
		t := (p.X-a.X)*v.X + (p.Y-a.Y)*v.Y
		return s >= 0 && s <= uu && t >= 0 && t <= vv
	}}
}

// endwise cuts a prism that is swept along the part. Where it slants, as along a
// tapered edge, its arcs are drawn out: chords stand for them, within half a
// thousandth of a millimetre.
func endwise(p form.Prism, from, to, x Length) cross {
	f, w := p.Frame, p.Frame.W()
	square := math.Abs(w.X) > 1-1e-12
	var out form.Profile
	for _, s := range (Path{Run: p.Profile, Closed: true}).Segments() {
		places, bulge := s.Chords(0.0005), 0.0
		if square {
			places, bulge = []form.Point{s.A, s.B}, s.Bulge
		}
		for _, q := range places[:len(places)-1] {
			deep := (x - f.At(q.X, q.Y, 0).X) / Length(w.X)
			if deep < from || deep > to {
				if square {
					return nowhere()
				}
				return slanted(p, from, to, x)
			}
			at := inPlane(f.At(q.X, q.Y, deep))
			out = append(out, form.Vertex{Point: at, Bulge: bulge})
		}
	}
	if f.U.Y*f.V.Z-f.U.Z*f.V.Y < 0 { // seen from behind: arcs turn the other way
		for i := range out {
			out[i].Bulge = -out[i].Bulge
		}
		out = out.Reversed()
	}
	return enclosed(out)
}

// turnedCross cuts a turned piece along its axis.
func turnedCross(r form.Revolved, x Length) cross {
	f, w := r.Frame, r.Frame.W()
	if math.Abs(w.X) > 1e-9 || math.Abs(float64(f.Origin.X-x)) > 1e-6 {
		return nowhere()
	}
	var all []cross
	for _, sign := range []float64{1, -1} {
		out := form.Dir{Y: -sign * w.Z, Z: sign * w.Y}
		angle := math.Atan2(float64(f.V.Along(stepOf(out))), float64(f.U.Along(stepOf(out))))
		if angle < -1e-9 {
			angle += 2 * math.Pi
		}
		if angle > float64(r.Sweep)+1e-9 {
			continue
		}
		var p form.Profile
		for _, v := range r.Profile {
			at := f.Origin.Plus(out, v.X).Plus(w, v.Y)
			p = append(p, form.Vertex{Point: inPlane(at), Bulge: v.Bulge * -sign})
		}
		if p.Area() < 0 {
			p = p.Reversed()
		}
		all = append(all, enclosed(p))
	}
	return cross{edgesOf(all), func(q form.Point) bool { return anyHolds(all, q) }}
}

func stepOf(d form.Dir) form.Vec { return form.Vec{X: Length(d.X), Y: Length(d.Y), Z: Length(d.Z)} }
