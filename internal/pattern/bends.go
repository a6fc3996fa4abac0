package pattern

import (
	"math"

	"lostwood/internal/outline"
	"lostwood/parts"
	"lostwood/parts/form"
)

// developed is where a place on a bent rail, seen from above, comes to stand on
// the straight blank: along the middle line, which keeps its length in bending
// (common practice, no source).
func developed(middle form.Path, at form.Point) Length {
	best, nearest, run := Length(0), math.Inf(1), Length(0)
	for i := range len(middle) - 1 {
		piece := middle[i : i+2]
		long := piece.Long()
		along, off := alongPiece(outline.Segment{A: piece[0].Point, B: piece[1].Point, Bulge: piece[0].Bulge}, at, long)
		if off < nearest {
			best, nearest = run+along, off
		}
		run += long
	}
	return best
}

// alongPiece is the foot of a place on a line or an arc, as a way along it, and
// how far off the place is.
func alongPiece(s outline.Segment, at form.Point, long Length) (along Length, off float64) {
	share := 0.0
	if a, bent := s.Arc(); bent {
		turn := math.Atan2(float64(at.Y-a.Centre.Y), float64(at.X-a.Centre.X)) - a.From
		turn -= 2 * math.Pi * math.Round((turn-a.Turn/2)/(2*math.Pi)) // the nearest to the arc's middle
		share = turn / a.Turn
	} else {
		dx, dy := float64(s.B.X-s.A.X), float64(s.B.Y-s.A.Y)
		share = (float64(at.X-s.A.X)*dx + float64(at.Y-s.A.Y)*dy) / (dx*dx + dy*dy)
	}
	share = min(max(share, 0), 1)
	foot := form.Point{X: s.A.X + Length(share)*(s.B.X-s.A.X), Y: s.A.Y + Length(share)*(s.B.Y-s.A.Y)}
	if a, bent := s.Arc(); bent {
		foot = a.At(share)
	}
	return Length(share) * long, float64(distance(at, foot))
}

// bentStations are what a rod shows of a rail that is bent from straight stock: its
// bends and its work, where they stand on the straight blank.
func (l *layout) bentStations(b parts.Bent) []station {
	var all []station
	run := Length(0)
	for i := range len(b.Middle) - 1 {
		long := b.Middle[i : i+2].Long()
		if b.Middle[i].Bulge != 0 {
			all = append(
				all,
				station{run, l.size(run) + " bend begins"},
				station{run + long, l.size(run+long) + " bend ends"},
			)
		}
		run += long
	}
	for _, op := range l.item.Stick.Operations() {
		if x, ok := l.onBlank(b, op, run); ok {
			all = append(all, station{x, l.size(x) + " " + op.Ref + l.queried(op.Ref)})
		}
	}
	return all
}

// onBlank is where an operation stands on the straight blank; a round end by its shoulder.
func (l *layout) onBlank(b parts.Bent, op parts.Operation, long Length) (Length, bool) {
	switch {
	case op.Work == parts.Tenoning && op.Face == parts.FirstEnd:
		return sized(op, "long"), true
	case op.Work == parts.Tenoning && op.Face == parts.SecondEnd:
		return long - sized(op, "long"), true
	case op.Work > parts.Notching || op.Face == parts.FirstEnd || op.Face == parts.SecondEnd:
		return 0, false
	}
	at := op.Face.Frame(b).At(op.At.X, op.At.Y, 0)
	return developed(b.Middle, form.Point{X: at.X, Y: at.Y}), true
}
