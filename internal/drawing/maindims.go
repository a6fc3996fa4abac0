package drawing

import (
	"math"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// An extent is from where to where something reaches along one of the vehicle's
// axes, and how that is known.
type extent struct {
	what     string
	from, to Length
	known    quantity.Known
}

// reach is how far the things that are chosen reach along an axis.
func reach(things []*thing, axis int, chosen func(kind string, s sort) bool) (extent, bool) {
	e := extent{from: Length(math.Inf(1)), to: Length(math.Inf(-1))}
	for _, t := range things {
		kind, known := t.kind(axis)
		if t.sort == fastening || !chosen(kind, t.sort) {
			continue
		}
		for _, b := range t.bodies {
			box := b.Bounds()
			lo, hi := [3]Length{box.Min.X, box.Min.Y, box.Min.Z}[axis], [3]Length{box.Max.X, box.Max.Y, box.Max.Z}[axis]
			if lo < e.from {
				e.from, e.known = lo, max(e.known, known)
			}
			if hi > e.to {
				e.to, e.known = hi, max(e.known, known)
			}
		}
	}
	return e, e.to > e.from
}

// kind is what sort of part or iron a thing is, and how surely it stands on an axis.
func (t *thing) kind(axis int) (string, quantity.Known) {
	var place *vehicle.Place
	var sizes []vehicle.Dimension
	kind := ""
	switch t.sort {
	case newTimber:
		kind, sizes = t.item.Kind, t.item.Sizes
		if len(t.parts) > 0 {
			place = t.parts[0].Place
		}
	case iron:
		kind, sizes, place = t.irons[0].Kind, t.irons[0].Sizes, t.irons[0].Place
	}
	if place == nil {
		return kind, quantity.Unknown
	}
	known := place.At[axis].Known
	for k, a := range place.Axes {
		for _, d := range sizes {
			if math.Abs(a[axis]) > 0.5 && int(d.Axis) == k+1 {
				known = max(known, d.Known)
			}
		}
	}
	return kind, known
}

func ofKind(kinds ...string) func(string, sort) bool {
	return func(k string, s sort) bool { return s == newTimber && slices.Contains(kinds, k) }
}

func anything(string, sort) bool { return true }

func axles(k string, s sort) bool { return s == iron && k == "axle" }

// lengths are the main dimensions along the vehicle, the shortest first.
func lengths(things []*thing) []extent {
	var out []extent
	add := func(what string, e extent, ok bool) {
		if ok {
			e.what = what
			out = append(out, e)
		}
	}
	if e, ok := betweenAxles(things); ok {
		add("from axle to axle", e, true)
	}
	e, ok := reach(things, 0, ofKind("sill"))
	add("sills", e, ok)
	e, ok = reach(things, 0, anything)
	add("over all", e, ok)
	return byLength(out)
}

// betweenAxles is from the middle of the hindmost iron axle to that of the foremost.
func betweenAxles(things []*thing) (extent, bool) {
	e := extent{from: Length(math.Inf(1)), to: Length(math.Inf(-1))}
	for _, t := range things {
		kind, known := t.kind(0)
		if !axles(kind, t.sort) {
			continue
		}
		for _, b := range t.bodies {
			box := b.Bounds()
			middle := (box.Min.X + box.Max.X) / 2
			e.from, e.to, e.known = min(e.from, middle), max(e.to, middle), max(e.known, known)
		}
	}
	return e, e.to-e.from > 1
}

// widths are those across the vehicle.
func widths(things []*thing) []extent {
	var out []extent
	for _, w := range []struct {
		what   string
		chosen func(string, sort) bool
	}{
		{"axles", axles},
		{"bolsters", ofKind("bolster")},
		{"over the sills", ofKind("sill")},
		{"over the side rails", ofKind("side rail")},
		{"over all", anything},
	} {
		if e, ok := reach(things, 1, w.chosen); ok {
			e.what = w.what
			out = append(out, e)
		}
	}
	return byLength(out)
}

// byLength puts extents in order, the longest last, without two that are the same.
func byLength(all []extent) []extent {
	slices.SortStableFunc(all, func(a, b extent) int {
		d := (a.to - a.from) - (b.to - b.from)
		switch {
		case d < 0:
			return -1
		case d > 0:
			return 1
		}
		return 0
	})
	return all
}

// heights are those above the ground.
func heights(things []*thing) []extent {
	var out []extent
	for _, h := range []struct {
		what   string
		chosen func(string, sort) bool
	}{
		{"underside of reaches", ofKind("reach")},
		{"top of sills", ofKind("sill")},
		{"floor", ofKind("slat")},
		{"top of side rails", ofKind("side rail")},
		{"seat", ofKind("seat board")},
		{"over all", anything},
	} {
		e, ok := reach(things, 2, h.chosen)
		if !ok {
			continue
		}
		up := e.to
		if h.what == "underside of reaches" {
			up = e.from
		}
		out = append(out, extent{h.what, 0, up, e.known})
	}
	for _, t := range things {
		kind, known := t.kind(2)
		if !axles(kind, t.sort) || len(t.bodies) == 0 {
			continue
		}
		box := t.bodies[0].Bounds()
		out = append(out, extent{"middle of " + strings.ToLower(t.name()), 0, (box.Min.Z + box.Max.Z) / 2, known})
	}
	return byLength(out)
}

func (e extent) words(v *vehicle.Vehicle) string {
	return e.what + "  " + marked(v, e.to-e.from, e.known)
}

// alongView is where a place along an axis is seen in a view.
func (e *elevation) alongView(axis int, l Length) Length {
	p := form.Vec{}
	switch axis {
	case 0:
		p.X = l
	case 1:
		p.Y = l
	default:
		p.Z = l
	}
	q := e.view.On(p)
	return q.X + q.Y
}
