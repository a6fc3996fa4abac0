package mesh_test

import (
	"math"

	"lostwood/internal/mesh/gauge"
	"lostwood/parts/form"
)

// More sorts of random solids: spokes and other ovals, naves, turnings with
// fillets, and pieces put together in no way that a timber is.

// spoke is an oval between a foot and a tongue, with a hole or a flat at times.
func (r chance) spoke() form.Volume {
	first := ellipse(0, 0, r.size(15, 35), r.size(10, 30))
	last := ellipse(0, 0, r.size(8, 25), r.size(8, 25))
	if r.one(3) {
		last.Centre.Y = form.Length(r.size(-6, 6))
	}
	l := r.size(80, 400)
	w, h := r.size(10, 40), r.size(10, 40)
	u := form.Union{
		form.Oval{Frame: flat, From: 0, To: form.Length(l), First: first, Last: last},
		block(-w/2, -h/2, -r.size(20, 60), w/2, h/2, r.size(0, 10)),
		form.Prism{Frame: flat, Profile: disc(float64(last.Centre.X), float64(last.Centre.Y), r.size(5, 25)), From: form.Length(l - r.size(0, 10)), To: form.Length(l + r.size(20, 60))},
	}
	d := form.Difference{From: u}
	for range r.Intn(3) {
		z := r.size(10, l-10)
		switch r.Intn(4) {
		case 0:
			d.Cut = append(d.Cut, across(r.size(-20, 20), z, r.size(2, 7)))
		case 1:
			d.Cut = append(d.Cut, half(0, r.size(8, 20), 0, 0, -1, 0))
		case 2:
			d.Cut = append(d.Cut, bore(r.size(-10, 10), r.size(-10, 10), r.size(2, 6)))
		default:
			d.Cut = append(d.Cut, block(-r.size(2, 8), -50, z-r.size(5, 30), r.size(2, 8), r.size(0, 50), z+r.size(5, 30)))
		}
	}
	return d
}

// nave is a turned one with mortises and a bore.
func (r chance) nave() form.Volume {
	a, b, l := r.size(60, 120), r.size(50, 100), r.size(120, 260)
	d := form.Difference{From: turned(form.Profile{
		corner(0, 0, 0), corner(b, 0, 0.15*r.Float64()), corner(a, l*0.3, 0), corner(a, l*0.7, -0.1*r.Float64()), corner(b-5, l, 0), corner(0, l, 0),
	})}
	in, out := r.size(15, 40), r.size(15, 40)
	d.Cut = append(d.Cut, turned(polygon(0, -1, in, -1, out, l+1, 0, l+1)))
	if r.one(2) {
		d.Cut = append(d.Cut, turned(rectangle(0, -1, in+r.size(2, 10), r.size(5, 25))))
	}
	n, dish, stagger := 8+2*r.Intn(5), 0.12*r.Float64(), r.size(0, 8)
	w, h := r.size(10, 30), r.size(15, 45)
	for i := range n {
		d.Cut = append(d.Cut, form.Prism{
			Frame:   radially(2*math.Pi*float64(i)/float64(n), l/2+stagger*float64(1-2*(i%2)), dish),
			Profile: rectangle(-w/2, -h/2, w/2, h/2), From: form.Length(r.size(10, 50)), To: 300,
		})
	}
	return d
}

// bevelledFelloe is one with conical faces.
func (r chance) bevelledFelloe() form.Volume {
	out, deep, wide := r.size(300, 700), r.size(40, 80), r.size(30, 80)
	in, bevel := out-deep, r.size(0, 8)
	sweep := 0.3 + r.Float64()
	d := form.Difference{From: form.Revolved{
		Frame: flat, Sweep: form.Angle(sweep), Profile: polygon(in+r.size(0, 5), 0, out, 0, out-bevel, wide, in, wide),
	}}
	dish := 0.12 * r.Float64()
	for range 1 + r.Intn(3) {
		f := radially(sweep*(0.1+0.8*r.Float64()), r.size(0.3*wide, 0.7*wide)-(out-deep/2)*math.Tan(dish), dish)
		d.Cut = append(d.Cut, form.Prism{Frame: f, Profile: disc(0, 0, r.size(4, 14)), From: form.Length(in - 20), To: form.Length(out + r.size(-30, 30))})
	}
	return d
}

// filleted is a block with a rounded plan, less a half round swept along an
// edge, and with a ball or a ring taken out of it or put on.
func (r chance) filleted() form.Volume {
	w, h, l := r.size(20, 80), r.size(20, 80), r.size(20, 120)
	rad := r.size(2, min(w, h)/2-1)
	u := form.Union{form.Prism{Frame: flat, Profile: rounded(0, 0, w, h, rad), From: 0, To: form.Length(l)}}
	x, y, z := r.size(0, w), r.size(0, h), r.size(0, l)
	ring := form.Revolved{Frame: form.Frame{Origin: vec(x, y, z), U: form.Dir{X: 1}, V: form.Dir{Y: 1}}, Profile: disc(r.size(12, 30), 0, r.size(2, 11)), Sweep: form.Angle(1 + 5*r.Float64())}
	b := r.size(4, 20)
	ball := form.Revolved{Frame: form.Frame{Origin: vec(r.size(0, w), r.size(0, h), r.size(0, l)), U: form.Dir{X: 1}, V: form.Dir{Y: 1}}, Profile: form.Profile{corner(0, -b, 1), corner(0, b, 0)}, Sweep: 2 * math.Pi}
	d := form.Difference{}
	for _, v := range []form.Volume{ring, ball} {
		switch r.Intn(3) {
		case 0:
			u = append(u, v)
		case 1:
			d.Cut = append(d.Cut, v)
		}
	}
	if r.one(2) {
		d.Cut = append(d.Cut, form.Prism{Frame: front, Profile: disc(r.size(0, h), r.size(0, l), r.size(2, 12)), From: -endless, To: endless})
	}
	// a fillet: a square bead less its round
	f := r.size(3, 12)
	u = append(u, form.Difference{
		From: form.Prism{Frame: side, Profile: rectangle(w-1, 0, w+f, f), From: form.Length(-h + rad), To: form.Length(-rad)},
		Cut:  []form.Volume{form.Prism{Frame: side, Profile: disc(w+f, f, f), From: -endless, To: endless}},
	})
	d.From = u
	return d
}

// piece is any one piece, anywhere.
func (r chance) piece() form.Volume {
	var v form.Volume
	a, b, l := r.size(5, 40), r.size(5, 40), r.size(10, 80)
	switch r.Intn(7) {
	case 0:
		v = block(-a, -b, -l, a, b, l)
	case 1:
		v = form.Prism{Frame: flat, Profile: disc(0, 0, a), From: form.Length(-l), To: form.Length(l)}
	case 2:
		v = form.Oval{Frame: flat, From: form.Length(-l), To: form.Length(l), First: ellipse(0, 0, a, b), Last: ellipse(r.size(-9, 9), 0, r.size(5, 40), r.size(5, 40))}
	case 3:
		v = turned(polygon(0, -l, a, -l, b, l, 0, l))
	case 4:
		v = form.Revolved{Frame: flat, Profile: disc(a+10, 0, a/2+4), Sweep: form.Angle(0.5 + 5.5*r.Float64())}
	case 5:
		v = form.Prism{Frame: flat, Profile: rounded(-a, -b, a, b, min(a, b)/2), From: form.Length(-l), To: form.Length(l)}
	default:
		v = turned(form.Profile{corner(0, -a, 1), corner(0, a, 0)})
	}
	at := vec(r.size(-40, 40), r.size(-40, 40), r.size(-40, 40))
	switch r.Intn(3) {
	case 0:
		return gauge.At(at).Put(v)
	case 1:
		return gauge.Tipped(at).Put(v)
	}
	return r.place().To(at).Put(v)
}

// heap is pieces combined at random.
func (r chance) heap() form.Volume {
	v := r.piece()
	for range 1 + r.Intn(4) {
		switch r.Intn(4) {
		case 0, 1:
			v = form.Union{v, r.piece()}
		case 2:
			v = form.Difference{From: v, Cut: []form.Volume{r.piece()}}
		default:
			v = form.Intersection{v, r.piece()}
		}
	}
	return v
}

func (r chance) more() form.Volume {
	switch r.Intn(6) {
	case 0:
		return r.spoke()
	case 1:
		return r.nave()
	case 2:
		return r.bevelledFelloe()
	case 3:
		return r.filleted()
	}
	return r.heap()
}
