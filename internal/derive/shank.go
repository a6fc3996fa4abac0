package derive

import (
	"fmt"
	"math"

	"lostwood/internal/adjust"
	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
)

// forged is how far a nut of a known pattern is from its table: common practice, no source.
const forged = quantity.Inch / 64

// A saying is what a bolt says of what it went through: one grip, or a window.
type saying struct {
	survey.Reading
	why     string // why its doubt is what it is, where that is to be told
	sources []adjust.Source
	window  bool
	least   quantity.Length // of a window
	most    quantity.Length
}

// saysOf works out what a bolt says: a nut rusted in its place or a mark gives the
// grip; thread past the nut gives it by subtraction; length and thread alone give a
// window. Nothing where the bolt gives none.
func (n *network) saysOf(b *survey.Bolt, what string) *saying {
	var s *saying
	switch {
	case b.Rusted != nil:
		s = &saying{Reading: *b.Rusted}
	case b.Mark != nil:
		s = &saying{Reading: *b.Mark}
	case what != "bolt" || b.Length.Value <= 0:
		return nil
	default:
		if s = n.subtracted(b); s == nil {
			return nil
		}
	}
	if by := slack(b); by > 0 && (b.Rusted != nil || b.Mark != nil) {
		s.Doubt = quantity.Length(hypot(s.Doubt, by))
	}
	s.why = n.whyWide(b)
	if b.Crushed != nil { // the head has drawn in by so much
		s.Value += b.Crushed.Value
		s.least, s.most = s.least+b.Crushed.Value, s.most+b.Crushed.Value
		s.Doubt = quantity.Length(hypot(s.Doubt, b.Crushed.Doubt))
	}
	return s
}

// slack is how much longer a bent bolt is along its middle than straight across: for
// a bow of so much over its length, 8/3 of its square over that (the flat arc).
func slack(b *survey.Bolt) quantity.Length {
	long := b.Length.Value
	for _, r := range []*survey.Reading{b.Mark, b.Rusted} {
		if r != nil {
			long = r.Value
		}
	}
	if b.Bent <= 0 || long <= 0 {
		return 0
	}
	return 8 * b.Bent * b.Bent / (3 * long)
}

func (n *network) whyWide(b *survey.Bolt) string {
	show := func(l quantity.Length) string { return quantity.Format(l, n.survey.Unit) }
	switch {
	case b.Bent > 0 && b.Worn > 0:
		return fmt.Sprintf("its bolt is %s off the straight and up to %s of its end is gone", show(b.Bent), show(b.Worn))
	case b.Bent > 0:
		return fmt.Sprintf("its bolt is %s off the straight", show(b.Bent))
	case b.Worn > 0 && b.Mark == nil && b.Rusted == nil:
		return fmt.Sprintf("up to %s of its bolt's end is gone", show(b.Worn))
	}
	return ""
}

// subtracted is the grip of a bolt without a mark, from its length and what stood on it.
func (n *network) subtracted(b *survey.Bolt) *saying {
	s := &saying{}
	length := measure(&b.Length)
	length.Doubt = quantity.Length(math.Hypot(hypot(length.Doubt, slack(b)), b.Worn.Millimetres()))
	r := bolt.Read{Diameter: b.Diameter, Length: length, Thread: measure(b.Thread), Washer: n.washerOf(b), Proud: measure(b.Proud)}
	habit := n.survey.Smith.Proud
	if r.Proud == nil && habit != nil {
		// each of his bolts differs from the habit by half a thread: common practice, no source
		thread, _ := bolt.OneThread(b.Diameter, bolt.American)
		r.Proud = &bolt.Measure{Value: habit.Value, Doubt: thread / 2}
		s.sources = append(s.sources, adjust.Source{Common: n.habitOf("the smith left as much thread past every nut", habit.At.Line), Slope: habit.Doubt.Millimetres()})
	}
	r.Nut = n.nutOf(b, r.Proud != nil, s)
	g := bolt.Grip(r)
	if g.Kind == bolt.NoGrip {
		return nil
	}
	s.Reading = survey.Reading{At: b.At, Value: g.Value, Doubt: g.Doubt}
	if g.Kind == bolt.Anywhere {
		s.window, s.least, s.most = true, g.Least, g.Most
	}
	return s
}

// nutOf is a bolt's nut: as measured, by its pattern, or, where the grip hangs on it
// and nothing is known, halfway between the old and the modern, with what it may be
// off by shared with all other such nuts.
func (n *network) nutOf(b *survey.Bolt, hangs bool, s *saying) *bolt.Measure {
	if b.Nut != nil {
		return measure(b.Nut)
	}
	kind := b.NutKind
	if kind == "" {
		kind = n.survey.Smith.Nut
	}
	if standard, ok := map[survey.NutKind]bolt.NutStandard{
		survey.ModernNut: bolt.SquareNut, survey.OldNut: bolt.RoughNut, survey.FinishedNut: bolt.FinishedNut,
		survey.WhitworthNut: bolt.WhitworthNut, survey.ReducedNut: bolt.ReducedNut,
	}[kind]; ok {
		if size, by := bolt.Nut(b.Diameter, standard); by != bolt.Unlisted {
			return &bolt.Measure{Value: size.Thickness, Doubt: forged}
		}
	}
	if !hangs {
		return nil
	}
	between := bolt.Nuts(b.Diameter)
	s.sources = append(s.sources, adjust.Source{
		Common: n.habitOf("nuts that were not measured are of one pattern, between the old and the modern", b.At.Line), Slope: between.Doubt().Millimetres(),
	})
	return &bolt.Measure{Value: between.Middle()}
}

// washerOf is what lay under a bolt's nut: as measured, or by the table with a doubt
// that covers its limits evenly.
func (n *network) washerOf(b *survey.Bolt) *bolt.Measure {
	if b.Washer != nil {
		return measure(b.Washer)
	}
	kind := b.WasherKind
	if kind == "" {
		kind = n.survey.Smith.Washer
	}
	series, ok := map[survey.WasherKind]bolt.WasherSeries{survey.NarrowWasher: bolt.Narrow, survey.WideWasher: bolt.Wide}[kind]
	if !ok {
		return nil
	}
	w, by := bolt.Washer(b.Diameter, series)
	if by == bolt.Unlisted {
		return nil
	}
	return &bolt.Measure{Value: w.Limits.Middle(), Doubt: w.Limits.Doubt()}
}

// habitOf is the common error of something alike on all bolts, entered once.
func (n *network) habitOf(says string, line int) int {
	for c, k := range n.commons {
		if k.kind == ofSmith && k.says == says {
			return c
		}
	}
	return n.common(common{kind: ofSmith, says: says, known: quantity.TradeRule, line: line}, 1)
}

func measure(r *survey.Reading) *bolt.Measure {
	if r == nil {
		return nil
	}
	return &bolt.Measure{Value: r.Value, Doubt: r.Doubt}
}

func hypot(a, b quantity.Length) float64 { return math.Hypot(a.Millimetres(), b.Millimetres()) }

// shearsOf enters bruises on a span's shank: from under its head to the far face of
// one of the things it goes through.
func (n *network) shearsOf(s *span) {
	if !s.stops[0].placed() {
		return
	}
	for _, b := range s.fastening.Shears {
		row, hand := s.row, s.hand
		m := n.member(b.Thing, row, hand)
		k := s.stopOf(m)
		if k == none || !n.meant(b.Thing, s) {
			continue
		}
		n.observe(note{sort: shearRead, subject: s.id, what: m.id, line: b.At.Line, known: quantity.FromIron, span: s}, b.Value, b.Doubt,
			func(x []float64) adjust.Term {
				return n.leaves(x, s, &s.stops[k]).Minus(n.enters(x, s, &s.stops[0])).Scaled(s.sign)
			})
	}
}

// meant reports whether a name in a fastening's line means this one of its row and
// pair: the one it says, else the first.
func (n *network) meant(name string, s *span) bool {
	t, ok := n.index.Find(name)
	if !ok {
		return false
	}
	if t.Row > 0 || t.Side != vehicle.Alike {
		return true // only the span through that one has it among its stops
	}
	return s.row == 0 && s.hand != vehicle.Off
}
