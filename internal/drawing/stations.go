package drawing

import (
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// stations are the figures along a view; from is up from the view's foot.
func (p *partSheet) stations(s Scale, on seat) []station {
	var out []station
	for _, w := range p.works {
		if w.seat != on {
			continue
		}
		up := w.at.Z
		if on == onPlan {
			up = w.at.Y
		}
		from := s.of(up) + s.of(diameter(w.ops[0])/2)
		switch {
		case w.radial:
			from = s.of(radialFoot(p.item, w))
		case w.ops[0].Work != parts.Boring:
			from = s.of(map[seat]Length{onPlan: p.plan.high, onFront: p.front.high}[on])
		}
		out = append(out, station{s.of(w.at.X), from, w.brief(p.v, p.item)})
	}
	if on == onFront {
		out = append(out, p.stops(s)...)
	}
	return out
}

// radialFoot is how high the mouth of a hole towards a wheel's centre stands on
// the front view.
func radialFoot(i *vehicle.Item, w work) Length {
	for _, m := range i.Stick.Marks(parts.FirstSide) {
		if m.Ref == w.ops[0].Ref && m.Stroke == parts.Middle && len(m.Path) > 1 {
			if w.ops[0].Face == parts.Upper {
				return m.Path[len(m.Path)-1].Y
			}
			return m.Path[0].Y
		}
	}
	return 0
}

// stops are the stations where chamfers stop and shoulders stand.
func (p *partSheet) stops(s Scale) []station {
	var out []station
	top := s.of(p.front.high)
	put := func(x Length, dimension, words string) {
		words = marked(p.v, x, sureOf(p.item, dimension)) + "  " + words
		if !slices.ContainsFunc(out, func(o station) bool { return o.words == words }) {
			out = append(out, station{s.of(x), top, words})
		}
	}
	long, _, _ := p.item.Stick.Body.Box()
	for _, f := range p.item.Stick.Features {
		switch f := f.(type) {
		case parts.Chamfer:
			for _, x := range []Length{f.From, f.To} {
				if x > 0 {
					put(x, "chamfer-stop", "chamfer stops")
				}
			}
		case parts.Tenon:
			put(shoulder(f.End, f.Long, long), "tenon-long", "shoulder")
		case parts.RoundTenon:
			if _, straight := p.item.Stick.Body.(parts.Sawn); straight {
				put(shoulder(f.End, f.Long, long), "tenon-long", "shoulder")
			}
		}
	}
	return out
}

// sureOf is how the dimension of that name is known.
func sureOf(i *vehicle.Item, dimension string) quantity.Known {
	for _, d := range i.Sizes {
		if d.Name == dimension {
			return d.Known
		}
	}
	return quantity.Measured
}

func shoulder(end parts.Face, tenon, long Length) Length {
	if end == parts.FirstEnd {
		return tenon
	}
	return long - tenon
}

// acrossOf are the heights at which work stands on a view, from its foot.
func (p *partSheet) acrossOf(s Scale, on seat) []station {
	const alike = 0.3
	type level struct {
		at    Length
		words string
	}
	var all []level
	for _, w := range p.works {
		across, ok := w.acrossFrom()
		if !ok || w.seat != on || w.radial {
			continue
		}
		words := marked(p.v, across, w.across())
		if !slices.ContainsFunc(all, func(l level) bool { return math.Abs(float64(l.at-across)) < alike || l.words == words }) {
			all = append(all, level{across, words})
		}
	}
	var out []station
	for _, l := range all {
		out = append(out, station{place: s.of(l.at), words: l.words})
	}
	return out
}
