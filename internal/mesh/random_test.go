package mesh_test

import (
	"math"
	"math/rand"

	"lostwood/internal/mesh/gauge"
	"lostwood/parts/form"
)

// Random solids of the kinds that timber parts are made of, for the acceptance
// tests. Sizes are drawn in half millimetres, so that faces often lie in one
// plane and corners on one line, as they do in drawings.

type chance struct{ *rand.Rand }

func (r chance) size(lo, hi float64) float64 {
	return math.Round((lo+r.Float64()*(hi-lo))*2) / 2
}

func (r chance) one(in int) bool { return r.Intn(in) == 0 }

// place is somewhere in space, turned about.
func (r chance) place() gauge.Place { return gauge.Anywhere(r.Rand) }

// stick is a tapered, chamfered timber with holes, mortises and housings.
func (r chance) stick() form.Volume {
	l, w, h := r.size(150, 400), r.size(30, 60), r.size(30, 60)
	rise := r.size(0, h/3)
	elevation := polygon(0, rise, r.size(40, l/3), 0, l-r.size(20, l/3), 0, l, r.size(0, h/3), l, h, 0, h)
	c := r.size(1, 6)
	end := polygon(-w/2+c, 0, w/2-c, 0, w/2, c, w/2, h-c, w/2-c, h, -w/2+c, h, -w/2, h-c, -w/2, c)
	if r.one(3) {
		end = rounded(-w/2, 0, w/2, h, c+1)
	}
	body := form.Volume(form.Intersection{
		form.Prism{Frame: side, Profile: elevation, From: form.Length(-w / 2), To: form.Length(w / 2)},
		form.Prism{Frame: front, Profile: end, From: -endless, To: endless},
	})
	d := form.Difference{From: body}
	for range 1 + r.Intn(5) {
		d.Cut = append(d.Cut, r.cut(l, w, h))
	}
	return d
}

// cut is one of the cuts that timbers get.
func (r chance) cut(l, w, h float64) form.Volume {
	x := r.size(20, l-20)
	switch r.Intn(8) {
	case 0: // a mortise, sometimes right through
		y := r.size(-w/4, w/4)
		return block(x-r.size(5, 20), y-r.size(3, 10), r.size(-10, h-5), x+r.size(5, 20), y+r.size(3, 10), h+r.size(0, 2))
	case 1: // a housing across
		return block(x-r.size(5, 20), -w/2-r.size(0, 3), h-r.size(2, 15), x+r.size(5, 20), w/2+r.size(0, 3), h+r.size(0, 4))
	case 2: // a hole across, which may meet the others
		rad := r.size(3, 9)
		return form.Prism{Frame: side, Profile: disc(x, r.size(rad, h-rad), rad), From: -endless, To: endless}
	case 3: // a hole aslant
		s, c := math.Sincos(r.Float64() - 0.5)
		f := form.Frame{Origin: vec(x, 0, h/2), U: form.Dir{X: c, Z: -s}, V: form.Dir{Y: 1}}
		return form.Prism{Frame: f, Profile: disc(0, 0, r.size(3, 9)), From: -endless, To: endless}
	case 4: // a counterbored hole
		rad, y := r.size(3, 6), r.size(-w/4, w/4)
		return form.Union{bore(x, y, rad), form.Prism{Frame: flat, Profile: disc(x, y, rad+r.size(1, 6)), From: form.Length(h - r.size(2, 12)), To: form.Length(h + 1)}}
	case 5: // a stopped chamfer that runs out on a flat slope
		leg := r.size(3, 12)
		f := form.Frame{Origin: vec(x, w/2, h), U: form.Dir{Y: 1}, V: form.Dir{Z: 1}}
		s := 0.05 + r.Float64()*0.4
		n := math.Sqrt(1 + 2*s*s)
		return form.Intersection{
			form.Prism{Frame: f, Profile: polygon(-leg, 1, 1, -leg, 1, 1), From: -endless, To: endless},
			half(x, w/2, h, 1/n, s/n, s/n), half(x-60, w/2, h, -1/n, s/n, s/n),
		}
	case 6: // a round-ended slot
		y, rad, run := r.size(-w/4, w/4), r.size(3, 8), r.size(5, 30)
		slot := form.Profile{corner(x, y-rad, 0), corner(x+run, y-rad, 1), corner(x+run, y+rad, 0), corner(x, y+rad, 1)}
		return form.Prism{Frame: flat, Profile: slot, From: form.Length(r.size(-5, h-3)), To: form.Length(h + 3)}
	}
	return bore(x, r.size(-w/2, w/2), r.size(3, 9)) // a hole, which may break out at the side
}

func half(x, y, z, nx, ny, nz float64) form.Half {
	return form.Half{At: vec(x, y, z), Normal: form.Dir{X: nx, Y: ny, Z: nz}}
}

// rounded is a rectangle with its corners rounded.
func rounded(x0, y0, x1, y1, r float64) form.Profile {
	k := math.Tan(math.Pi / 8)
	return form.Profile{
		corner(x0+r, y0, 0), corner(x1-r, y0, k), corner(x1, y0+r, 0), corner(x1, y1-r, k),
		corner(x1-r, y1, 0), corner(x0+r, y1, k), corner(x0, y1-r, 0), corner(x0, y0+r, k),
	}
}

// arc is part of a rim with holes for spokes and dowels.
func (r chance) arc() form.Volume {
	out, deep, thick := r.size(200, 600), r.size(30, 60), r.size(30, 60)
	in, h := out-deep, (20+20*r.Float64())*math.Pi/360
	s, c := math.Sincos(h)
	b := math.Tan(h / 2)
	d := form.Difference{From: form.Prism{Frame: flat, From: form.Length(-thick / 2), To: form.Length(thick / 2), Profile: form.Profile{
		corner(in*c, in*s, -b), corner(in*c, -in*s, 0), corner(out*c, -out*s, b), corner(out*c, out*s, 0),
	}}}
	for range 1 + r.Intn(3) {
		s, c := math.Sincos((r.Float64()*2 - 1) * h)
		d.Cut = append(d.Cut, form.Prism{
			Frame: form.Frame{U: form.Dir{X: -s, Y: c}, V: form.Dir{Z: 1}}, Profile: disc(0, 0, r.size(4, 11)),
			From: form.Length(in - r.size(-20, 20)), To: endless,
		})
	}
	for _, way := range []float64{1, -1} {
		s, c := math.Sincos(way * h)
		at := vec((out-deep/2)*c, (out-deep/2)*s, 0)
		d.Cut = append(d.Cut, form.Prism{
			Frame:   form.Frame{Origin: at, U: form.Dir{X: c, Y: s}, V: form.Dir{Z: way}},
			Profile: disc(0, 0, r.size(3, 7)), From: -1, To: form.Length(r.size(20, 50)),
		})
	}
	return d
}

// rail is a bent rail: straight pieces and bends of one section, end to end.
func (r chance) rail() form.Volume {
	w, h := r.size(15, 30), r.size(15, 30)
	section := rounded(-w/2, -h/2, w/2, h/2, r.size(2, 6))
	switch r.Intn(4) {
	case 0:
		section = disc(0, 0, w/2)
	case 1:
		section = rectangle(-w/2, -h/2, w/2, h/2)
	}
	var u form.Union
	at, way := [2]float64{0, 0}, r.Float64()
	for i := range 1 + r.Intn(3) {
		l := r.size(20, 120)
		s, c := math.Sincos(way)
		// the section's x is to the right of the way, its y up
		f := form.Frame{Origin: vec(at[0], at[1], 0), U: form.Dir{X: s, Y: -c}, V: form.Dir{Z: 1}}
		u = append(u, form.Prism{Frame: f, Profile: section, From: 0, To: form.Length(l)})
		at[0], at[1] = at[0]+l*c, at[1]+l*s
		if i == 2 {
			break
		}
		radius, sweep := r.size(w/2+5, 100), 0.3+r.Float64()*1.5
		// turning left about a centre to the left: x is the distance from it
		centre := vec(at[0]-s*radius, at[1]+c*radius, 0)
		u = append(u, form.Revolved{
			Frame:   form.Frame{Origin: centre, U: form.Dir{X: s, Y: -c}, V: form.Dir{X: c, Y: s}},
			Profile: shifted(section, radius), Sweep: form.Angle(sweep),
		})
		way += sweep
		s2, c2 := math.Sincos(way)
		at[0], at[1] = float64(centre.X)+s2*radius, float64(centre.Y)-c2*radius
	}
	if r.one(2) {
		return u
	}
	return form.Difference{From: u, Cut: []form.Volume{bore(r.size(5, 15), r.size(-5, 15), r.size(2, 4))}}
}

func shifted(p form.Profile, x float64) form.Profile {
	out := make(form.Profile, len(p))
	for i, v := range p {
		v.X += form.Length(x)
		out[i] = v
	}
	return out
}

// stack is blocks with faces in common planes, with coplanar and flush cuts.
func (r chance) stack() form.Volume {
	var u form.Union
	step := func(n int) float64 { return float64(10 * r.Intn(n)) }
	for range 2 + r.Intn(3) {
		x, y, z := step(6), step(3), step(3)
		u = append(u, block(x, y, z, x+20+step(5), y+20+step(3), z+20+step(3)))
	}
	d := form.Difference{From: u}
	for range r.Intn(4) {
		x, y, z := step(6), step(4), step(4)
		switch r.Intn(3) {
		case 0:
			d.Cut = append(d.Cut, bore(x+10, y+10, 5+step(2)/2))
		case 1:
			d.Cut = append(d.Cut, form.Prism{Frame: front, Profile: disc(y+10, z+10, 4), From: form.Length(x), To: form.Length(x + 30)})
		default:
			d.Cut = append(d.Cut, block(x, y, z, x+10+step(4), y+10+step(3), z+10+step(3)))
		}
	}
	return d
}

// turnery is a turned piece with a tenon and a bore.
func (r chance) turnery() form.Volume {
	a, b, l := r.size(10, 25), r.size(10, 25), r.size(40, 120)
	p := form.Profile{corner(0, 0, 0), corner(a, 0, 0), corner(a, 10, 0.2*r.Float64()), corner(b, l, 0), corner(b-5, l+4, 0), corner(b-5, l+20, 0), corner(0, l+20, 0)}
	d := form.Difference{From: form.Revolved{Frame: flat, Profile: p, Sweep: 2 * math.Pi}}
	if r.one(2) {
		d.Cut = append(d.Cut, bore(0, 0, r.size(2, 4)))
	}
	if r.one(2) {
		d.Cut = append(d.Cut, form.Prism{Frame: side, Profile: disc(0, r.size(15, l-5), r.size(2, 5)), From: -endless, To: endless})
	}
	if r.one(2) {
		d.Cut = append(d.Cut, form.Prism{Frame: side, Profile: rectangle(-3, -1, 3, 6), From: -endless, To: endless})
	}
	return d
}

func (r chance) any() form.Volume {
	switch r.Intn(6) {
	case 0:
		return r.arc()
	case 1:
		return r.rail()
	case 2:
		return r.stack()
	case 3:
		return r.turnery()
	}
	return r.stick()
}

// unsettled shifts every piece of a volume by anything from a thousand-millionth
// to a thousandth of a millimetre: what was drawn flush is then nearly so.
func (r chance) unsettled(v form.Volume) form.Volume {
	shift := func(p form.Vec) form.Vec {
		by := func(x form.Length) form.Length {
			return x + form.Length(math.Pow(10, -9+6*r.Float64())*(2*r.Float64()-1))
		}
		return form.Vec{X: by(p.X), Y: by(p.Y), Z: by(p.Z)}
	}
	each := func(vs []form.Volume) []form.Volume {
		out := make([]form.Volume, len(vs))
		for i := range vs {
			out[i] = r.unsettled(vs[i])
		}
		return out
	}
	switch v := v.(type) {
	case form.Prism:
		v.Frame.Origin = shift(v.Frame.Origin)
		return v
	case form.Revolved:
		v.Frame.Origin = shift(v.Frame.Origin)
		return v
	case form.Oval:
		v.Frame.Origin = shift(v.Frame.Origin)
		return v
	case form.Half:
		v.At = shift(v.At)
		return v
	case form.Union:
		return form.Union(each(v))
	case form.Intersection:
		return form.Intersection(each(v))
	case form.Difference:
		return form.Difference{From: r.unsettled(v.From), Cut: each(v.Cut)}
	}
	return v
}
