package parts

import "lostwood/parts/form"

// ended is a body whose ends do not lie on its box's: a felloe's joints, the
// ends of a bent rail.
type ended interface {
	end(f Face) (form.Frame, form.Profile)
}

// endOf places the wood's own end: the frame has its plane, U across and V up
// the part, W out of the wood; the profile is the wood's section there.
func endOf(b Body, f Face) (form.Frame, form.Profile) {
	if e, ok := b.(ended); ok {
		return e.end(f)
	}
	s := shapeOf(b)
	long, wide, _ := s.Box()
	x := long
	if f == FirstEnd {
		x = 0
	}
	across, up := s.Plan.Span(x), s.Side.Span(x)
	if f == FirstEnd {
		across = form.Stretch{From: wide - across.To, To: wide - across.From}
	}
	section := form.Rectangle(form.Point{X: across.From, Y: up.From}, form.Point{X: across.To, Y: up.To})
	return f.Frame(b), section
}

// outlineAt is the outline that work entered on a face has to keep within.
func outlineAt(b Body, f Face) form.Profile {
	if _, own := b.(ended); f.isEnd() && !own {
		_, section := endOf(b, f)
		return section
	}
	return b.Outline(f)
}
