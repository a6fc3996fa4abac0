package survey

import (
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/parts"
)

// peers are readings of one sort, by what they are: "thick of a strap".
type peers struct {
	names  []string // in the order of the file
	groups map[string][]Reading
}

func (p *peers) add(what string, rd Reading) {
	if p.groups == nil {
		p.groups = map[string][]Reading{}
	}
	if p.groups[what] == nil {
		p.names = append(p.names, what)
	}
	p.groups[what] = append(p.groups[what], rd)
}

// dimensionPeer puts a part's dimension beside those of its kind. Lengths along
// the grain are left out: an honest one can be a twenty-fifth of another.
func (r *reader) dimensionPeer(kind string, dim parts.Dimension, rd Reading) {
	if dim.Axis != parts.AlongX {
		r.peers.add(quote(dim.Name)+" of "+kind, rd)
	}
}

// Limits of what counts as a slip of the unit. They are set so wide that no
// honest survey trips: most of the readings must lie close round their middle
// one, the slip must stand far outside those, and in the other unit it must lie
// among them.
const (
	leastPeers = 3   // readings that lie close
	nearby     = 4.0 // times the middle one, or a part of it
	apart      = 4.0 // times beyond those that lie close
	among      = 1.5 // times beyond them, in the other unit
	inchInMM   = 25.4
)

// unitSlips tells readings that are 25.4 times their peers, or a 25.4th of them.
func (r *reader) unitSlips() {
	if r.unsure {
		return
	}
	for _, name := range r.peers.names {
		group := r.peers.groups[name]
		middle := median(group)
		lo, hi, n := middle, middle, 0
		for _, g := range group {
			if g.Value <= middle*nearby && g.Value >= middle/nearby {
				lo, hi, n = min(lo, g.Value), max(hi, g.Value), n+1
			}
		}
		if n < leastPeers || n*3 < len(group)*2 {
			continue
		}
		for _, g := range group {
			if slipped(g.Value, lo, hi) {
				r.unitSlip(g, name, middle)
			}
		}
	}
}

// slipped reports whether v must be in the wrong unit, where its peers lie from lo to hi.
func slipped(v, lo, hi quantity.Length) bool {
	within := func(l quantity.Length) bool { return l*among >= lo && l <= hi*among }
	return v > hi*apart && within(v/inchInMM) || v < lo/apart && within(v*inchInMM)
}

func median(group []Reading) quantity.Length {
	var values []quantity.Length
	for _, g := range group {
		values = append(values, g.Value)
	}
	slices.Sort(values)
	return values[len(values)/2]
}

func (r *reader) unitSlip(rd Reading, name string, middle quantity.Length) {
	what := "25 times"
	if rd.Value < middle {
		what = "a 25th of"
	}
	r.faultAt(rd.At, name+" is "+r.show(rd.Value)+", about "+what+" the others, which are near "+r.show(middle),
		"see whether it was read in inches or millimetres, and write the unit with it")
}

// sameUnit refuses two readings of one thing that differ as inches and millimetres do.
func (r *reader) sameUnit(a, b Reading, what string) {
	if r.unsure || a.Value <= 0 || b.Value <= 0 {
		return
	}
	const near = 1.2 // two readings of one thing never differ so much
	ratio := math.Abs(math.Log(float64(b.Value / a.Value)))
	if math.Abs(ratio-math.Log(inchInMM)) > math.Log(near) {
		return
	}
	r.faultAt(b.At, what+": "+r.show(b.Value)+" here and "+r.show(a.Value)+" on "+a.At.words()+", 25 times apart",
		"see which of them was read in inches or millimetres, and write the unit with it")
}
