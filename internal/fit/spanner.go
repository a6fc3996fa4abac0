package fit

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/parts/form"
)

// Room for a spanner; common practice, no source. An open one is offset, so that
// turned over it takes a square nut round by an eighth of a turn at a time.
const (
	turns     = 24                // places a spanner is tried in, round the nut
	swing     = 3                 // steps of these it must go on from the first
	spanLong  = 5 * quantity.Inch // from the nut's middle
	sleeveFar = 2 * quantity.Inch // that a box spanner reaches from the nut's end
	driverFar = 6 * quantity.Inch // that a screwdriver wants before a screw's head
)

// An access says what stands where a spanner goes, by thing.
type access struct {
	near  []int    // things
	turns []uint32 // places they block, bit by bit
	end   []bool   // whether they block the end
}

func (s *strip) newAccess(f int) *access {
	t := s.things[f]
	r := s.runs[t]
	a := &access{}
	arms, end := r.spannerPoints()
	for j, b := range s.things {
		if j == f || s.told(f, j) || !s.within(r, b) {
			continue
		}
		var bits uint32
		for k, ps := range arms {
			if anyIn(b, ps) {
				bits |= 1 << k
			}
		}
		shut := anyIn(b, end)
		if bits != 0 || shut {
			a.near, a.turns, a.end = append(a.near, j), append(a.turns, bits), append(a.end, shut)
		}
	}
	return a
}

// within reports whether a thing comes as near to a nut as a spanner reaches.
func (s *strip) within(r *run, b *thing) bool {
	_, to := r.stack()
	at := spot(r.along(to))
	if r.f.What == "screw" {
		at = spot(r.head)
	}
	for axis := range 3 {
		lo, hi := reach(b.box, axis)
		if at[axis] < lo-float64(driverFar) || at[axis] > hi+float64(driverFar) {
			return false
		}
	}
	return true
}

func anyIn(b *thing, ps []form.Vec) bool {
	lo, hi := spot(b.box.Min), spot(b.box.Max)
	for _, p := range ps {
		q := spot(p)
		if q[0] > lo[0] && q[0] < hi[0] && q[1] > lo[1] && q[1] < hi[1] && q[2] > lo[2] && q[2] < hi[2] && b.body.Contains(p) {
			return true
		}
	}
	return false
}

// spannerPoints are places that a spanner fills: for each turn of an open one, and
// for a box spanner or a screwdriver from the end.
func (r *run) spannerPoints() (arms [turns][]form.Vec, end []form.Vec) {
	from, to := r.stack()
	h := r.size
	u, v := square(r.way)
	if r.f.What == "screw" {
		for i := range 6 {
			end = append(end, r.along(from-driverFar*quantity.Length(i+1)/6))
		}
		return arms, end
	}
	legs := []form.Vec{r.head}
	if r.f.What == "clip" {
		legs = nil
		if t := r.clipped(); t != nil {
			across := form.Frame{U: r.way, V: t.place.U}.W()
			half := r.f.Hardware.Inside/2 + h.shank/2
			legs = []form.Vec{r.head.Plus(across, half), r.head.Plus(across, -half)}
		}
	}
	for _, at := range legs {
		mid := at.Plus(r.way, to+h.washer+h.nutDeep/2)
		for k := range turns {
			s, c := math.Sincos(2 * math.Pi * float64(k) / turns)
			for i := range 7 {
				out := h.nutWide*0.8 + (spanLong-h.nutWide*0.8)*quantity.Length(i)/6
				for _, w := range [...]quantity.Length{-0.5, 0, 0.5} {
					x := quantity.Length(c)*out - quantity.Length(s)*w*h.nutWide
					y := quantity.Length(s)*out + quantity.Length(c)*w*h.nutWide
					arms[k] = append(arms[k], mid.Plus(u, x).Plus(v, y))
				}
			}
		}
		for k := range 8 {
			s, c := math.Sincos(2 * math.Pi * float64(k) / 8)
			for i := range 5 {
				up := h.nutDeep*0.5 + sleeveFar*quantity.Length(i)/4
				end = append(end, mid.Plus(u, h.nutWide*0.85*quantity.Length(c)).Plus(v, h.nutWide*0.85*quantity.Length(s)).Plus(r.way, up-h.nutDeep*0.5))
			}
		}
	}
	return arms, end
}

// clipped is the first timber that a clip goes round.
func (r *run) clipped() *thing {
	for _, t := range r.stops {
		if t != nil && t.wood() {
			return t
		}
	}
	return nil
}

// open reports whether a spanner finds room, and if not something that is in its way.
func (a *access) open(there []bool) (by int, ok bool) {
	var bits uint32
	shut := false
	by = -1
	for i, j := range a.near {
		if !there[j] {
			continue
		}
		if by < 0 || a.end[i] {
			by = j
		}
		bits |= a.turns[i]
		shut = shut || a.end[i]
	}
	if !shut {
		return -1, true
	}
	for k := range turns {
		room := true
		for n := range swing + 1 {
			room = room && bits&(1<<((k+n)%turns)) == 0
		}
		if room && bits != 1<<turns-1 {
			return -1, true
		}
	}
	return by, false
}
