package load

import (
	"math"
	"slices"

	"lostwood/parts/form"
)

// A reach is part of a level line across a timber, from one y to another.
type reach struct{ from, to float64 }

// across gives the stretches of the line along y at x and z that lie in v, in order.
func across(v form.Volume, x, z float64) []reach {
	switch v := v.(type) {
	case form.Prism:
		return prismAcross(v, x, z)
	case form.Half:
		return halfAcross(v, x, z)
	case form.Union:
		var out []reach
		for _, m := range v {
			out = append(out, across(m, x, z)...)
		}
		return merged(out)
	case form.Intersection:
		out := []reach{{math.Inf(-1), math.Inf(1)}}
		for _, m := range v {
			out = common(out, across(m, x, z))
		}
		return out
	case form.Difference:
		out := across(v.From, x, z)
		for _, c := range v.Cut {
			out = without(out, across(c, x, z))
		}
		return out
	}
	return sought(v, x, z)
}

// askew is how far a frame may be off the part's axes and still count as square.
const askew = 1e-9

func prismAcross(p form.Prism, x, z float64) []reach {
	f, w := p.Frame, p.Frame.W()
	at := form.Vec{X: form.Length(x), Z: form.Length(z)}
	q, h := f.On(at), float64(w.Along(at.Minus(f.Origin)))
	along := func(d float64, stretches []form.Stretch, from form.Length) []reach {
		var out []reach
		for _, s := range stretches {
			a, b := float64(s.From-from)/d, float64(s.To-from)/d
			out = append(out, reach{min(a, b), max(a, b)})
		}
		return merged(out)
	}
	inSweep := h >= float64(p.From) && h <= float64(p.To)
	switch {
	case math.Abs(w.Y) > 1-askew:
		if !p.Profile.Contains(q) {
			return nil
		}
		a, b := (float64(p.From)-h)/w.Y, (float64(p.To)-h)/w.Y
		return []reach{{min(a, b), max(a, b)}}
	case math.Abs(f.V.Y) > 1-askew && inSweep:
		return along(f.V.Y, p.Profile.Chords(q.X), q.Y)
	case math.Abs(f.U.Y) > 1-askew && inSweep:
		return along(f.U.Y, p.Profile.Transposed().Chords(q.Y), q.X)
	case math.Abs(f.V.Y) > 1-askew || math.Abs(f.U.Y) > 1-askew:
		return nil
	}
	return sought(p, x, z)
}

func halfAcross(h form.Half, x, z float64) []reach {
	at := form.Vec{X: form.Length(x), Z: form.Length(z)}
	d := float64(h.Normal.Along(at.Minus(h.At))) // grows by Normal.Y a millimetre
	inf := math.Inf(1)
	switch {
	case math.Abs(h.Normal.Y) < askew && d > 0:
		return nil
	case math.Abs(h.Normal.Y) < askew:
		return []reach{{-inf, inf}}
	case h.Normal.Y > 0:
		return []reach{{-inf, -d / h.Normal.Y}}
	}
	return []reach{{-d / h.Normal.Y, inf}}
}

// sought finds the stretches of a shape that lies askew or is turned, by looking
// at places along the line and closing in on where it passes the surface.
func sought(v form.Volume, x, z float64) []reach {
	b := form.Bounds(v)
	lo, hi := float64(b.Min.Y), float64(b.Max.Y)
	const widest = 1e4 // no timber is wider
	lo, hi = max(lo, -widest)-1, min(hi, widest)+1
	const steps, halvings = 192, 40
	in := func(y float64) bool {
		return inside(v, form.Vec{X: form.Length(x), Y: form.Length(y), Z: form.Length(z)})
	}
	var out []reach
	start, was := lo, in(lo)
	for i := 1; i <= steps; i++ {
		y := lo + (hi-lo)*float64(i)/steps
		is := in(y)
		if is != was {
			a, c := lo+(hi-lo)*float64(i-1)/steps, y
			for range halvings {
				if m := (a + c) / 2; in(m) == was {
					a = m
				} else {
					c = m
				}
			}
			if was {
				out = append(out, reach{start, a})
			}
			start = a
		}
		was = is
	}
	return out
}

// inside reports whether a place is in a volume.
func inside(v form.Volume, p form.Vec) bool {
	switch v := v.(type) {
	case form.Prism:
		h := v.Frame.W().Along(p.Minus(v.Frame.Origin))
		return h >= v.From && h <= v.To && v.Profile.Contains(v.Frame.On(p))
	case form.Revolved:
		q := v.Frame.On(p)
		turned := math.Atan2(float64(q.Y), float64(q.X))
		if turned < 0 {
			turned += 2 * math.Pi
		}
		h := v.Frame.W().Along(p.Minus(v.Frame.Origin))
		return turned <= float64(v.Sweep) && v.Profile.Contains(form.Point{X: form.Length(math.Hypot(float64(q.X), float64(q.Y))), Y: h})
	case form.Half:
		return v.Normal.Along(p.Minus(v.At)) <= 0
	case form.Union:
		return slices.ContainsFunc(v, func(m form.Volume) bool { return inside(m, p) })
	case form.Intersection:
		return !slices.ContainsFunc(v, func(m form.Volume) bool { return !inside(m, p) })
	case form.Difference:
		return inside(v.From, p) && !slices.ContainsFunc(v.Cut, func(m form.Volume) bool { return inside(m, p) })
	}
	return false
}

// merged joins stretches that touch or overlap.
func merged(in []reach) []reach {
	slices.SortFunc(in, func(a, b reach) int {
		switch {
		case a.from < b.from:
			return -1
		case a.from > b.from:
			return 1
		}
		return 0
	})
	var out []reach
	for _, r := range in {
		if n := len(out); n > 0 && r.from <= out[n-1].to {
			out[n-1].to = max(out[n-1].to, r.to)
		} else if r.to > r.from {
			out = append(out, r)
		}
	}
	return out
}

func common(a, b []reach) []reach {
	var out []reach
	for _, p := range a {
		for _, q := range b {
			if r := (reach{max(p.from, q.from), min(p.to, q.to)}); r.to > r.from {
				out = append(out, r)
			}
		}
	}
	return out
}

func without(a, cut []reach) []reach {
	for _, c := range cut {
		var out []reach
		for _, r := range a {
			if left := (reach{r.from, min(r.to, c.from)}); left.to > left.from {
				out = append(out, left)
			}
			if right := (reach{max(r.from, c.to), r.to}); right.to > right.from {
				out = append(out, right)
			}
		}
		a = out
	}
	return a
}
