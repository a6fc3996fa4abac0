package pattern

import (
	"slices"
	"strings"

	"lostwood/internal/outline"
	"lostwood/parts"
	"lostwood/parts/form"
)

// sized is an operation's size of one of the names; 0 where it has none.
func sized(op parts.Operation, names ...string) Length {
	for _, m := range op.Sizes {
		if slices.Contains(names, m.Name) {
			return m.Value
		}
	}
	return 0
}

// gauges are what a gauge and a square are set to for square work: the distances
// of its cheeks from a true face, and the places of its ends along the wood.
func (t teller) gauges(op parts.Operation) []string {
	end := op.Face == parts.FirstEnd || op.Face == parts.SecondEnd
	switch {
	case op.Work == parts.Tenoning && sized(op, "thick") > 0:
		return t.tenonGauges(op)
	case end || op.Work == parts.Boring:
		return nil
	case op.What == roundTheNave: // no gauge runs along what is turned
		return []string{t.along(op, sized(op, "long"))}
	case op.Work == parts.Mortising && sized(op, "wide") > 0:
		return []string{t.across(op, sized(op, "wide")), t.along(op, sized(op, "long"))}
	case op.Work == parts.LettingIn && op.Note == "from end to end":
		return []string{t.across(op, sized(op, "wide"))}
	case op.Work == parts.LettingIn:
		return []string{t.along(op, sized(op, "wide"))}
	case op.Work == parts.Notching:
		long, _, _ := t.item.Stick.Body.Box()
		return []string{t.along(op, notched(op, long))}
	}
	return nil
}

// roundTheNave is what one of the mortises round a nave is called.
const roundTheNave = "spoke mortise"

// like is the first piece of work on the wood that is as op is, but for its place
// round a nave: op itself where it is the first, or of any other work.
func (t teller) like(op parts.Operation) parts.Operation {
	const touch Length = 1e-6
	for _, o := range t.item.Stick.Operations() {
		if op.What != roundTheNave || o.Ref == op.Ref {
			break
		}
		off := o.At.X - op.At.X
		if o.What == op.What && max(off, -off) < touch && slices.Equal(o.Sizes, op.Sizes) {
			return o
		}
	}
	return op
}

// notched is how far a notch reaches along the wood: one in an end reaches as far
// as it goes in.
func notched(op parts.Operation, long Length) Length {
	const touch Length = 1e-6
	runs, in := sized(op, "long"), sized(op, "in")
	endwise := min(op.At.X, long-op.At.X) - in/2
	if max(endwise, -endwise) < touch && max(op.At.X-runs/2, runs/2-op.At.X) > touch && max(long-op.At.X-runs/2, runs/2-long+op.At.X) > touch {
		return in
	}
	return runs
}

// along is where work begins and ends along the wood.
func (t teller) along(op parts.Operation, long Length) string {
	return "runs from " + t.size(op.At.X-long/2) + " to " + t.size(op.At.X+long/2)
}

// across is what the gauge is set to for both cheeks.
func (t teller) across(op parts.Operation, wide Length) string {
	_, high := outline.Extent(t.item.Stick.Body, op.Face)
	off, from := t.gauged(op.Face, op.At, high)
	return t.gauge(off, wide, from)
}

func (t teller) gauge(off, wide Length, from parts.Face) string {
	return firm("gauge "+t.size(off-wide/2)) + firm(" and "+t.size(off+wide/2)) + " from the " + t.item.FaceWords(from)
}

// tenonGauges are what the gauge is set to for a tenon's cheeks, both ways.
func (t teller) tenonGauges(op parts.Operation) []string {
	s := t.item.Stick
	wide, high := outline.Extent(s.Body, op.Face)
	up, deep := parts.Under, op.At.Y
	if s.FaceSide == parts.Upper || s.FaceEdge == parts.Upper {
		up, deep = parts.Upper, high-op.At.Y
	}
	side, in := parts.FirstSide, op.At.X // the second end's x runs from the first side
	if op.Face == parts.FirstEnd {
		in = wide - op.At.X
	}
	if s.FaceSide == parts.SecondSide || s.FaceEdge == parts.SecondSide {
		side, in = parts.SecondSide, wide-in
	}
	return []string{t.gauge(deep, sized(op, "thick"), up), t.gauge(in, sized(op, "wide"), side)}
}

// leaves is what to leave undone at a piece of work until the part is offered up.
func (t teller) leaves(op parts.Operation) []string {
	if f := t.feature(op.Ref); f != nil && (left(f.Along) || left(f.Across)) {
		return []string{"leave uncut until offered up"}
	}
	return nil
}

// guesses are the sizes of the work itself that nobody may take for known. A size
// belongs to work that is called by its name: chamfer-stop to chamfer 1.
func (t teller) guesses(op parts.Operation) []stand {
	var out []stand
	for _, s := range t.item.Sizes {
		word, _, _ := strings.Cut(s.Name, "-")
		if s.Axis == parts.NoAxis && doubtful(s.Known) && strings.HasPrefix(op.Ref, word) {
			out = append(out, stand{"? " + s.Name + " " + t.standing(s.Size), true})
		}
	}
	return out
}

// unsure frames, in long dashes, the ground within which a guessed place may lie.
func (t teller) unsure(f outline.Laid) outline.Drawing {
	var d outline.Drawing
	const clear = 4
	for _, op := range t.item.Stick.Operations() {
		known := t.feature(op.Ref)
		if op.Face != f.Face || known == nil || !doubtful(known.Along.Known) && !doubtful(known.Across.Known) {
			continue
		}
		x := max(sized(op, "diameter", "long", "square"), sized(op, "wide"))/2 + clear + known.Along.Doubt
		y := max(sized(op, "diameter", "wide", "square"))/2 + clear + known.Across.Doubt
		box := outline.Box{Min: form.Point{X: op.At.X - x, Y: op.At.Y - y}, Max: form.Point{X: op.At.X + x, Y: op.At.Y + y}}
		d.Rect(guide(), outline.Query, box.Shifted(f.At))
	}
	return onceEach(d)
}

// onceEach leaves out frames that stand already, as round a hole and its seat.
func onceEach(d outline.Drawing) outline.Drawing {
	var out outline.Drawing
	for _, p := range d.Paths {
		if !slices.ContainsFunc(out.Paths, func(q outline.Path) bool { return slices.Equal(p.Run, q.Run) }) {
			out.Paths = append(out.Paths, p)
		}
	}
	return out
}
