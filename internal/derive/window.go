package derive

import (
	"math"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
)

// window works out what a bolt without a fastening's own grip says of it: a
// mark gives the grip; thread past the nut gives it by subtraction; length and
// thread alone give a window, whose middle is taken with the doubt of any place
// in it being as likely.
func window(b *survey.Bolt, what string) *survey.Reading {
	if b.Mark != nil {
		return b.Mark
	}
	if what != "bolt" || b.Length.Value <= 0 {
		return nil
	}
	g := bolt.Grip(bolt.Read{
		Diameter: b.Diameter, Length: measure(&b.Length), Thread: measure(b.Thread),
		Nut: measure(b.Nut), Washer: measure(b.Washer), Proud: measure(b.Proud),
	})
	if g.Kind == bolt.NoGrip {
		return nil
	}
	return &survey.Reading{At: b.At, Value: g.Value, Doubt: g.Doubt}
}

func measure(r *survey.Reading) *bolt.Measure {
	if r == nil {
		return nil
	}
	return &bolt.Measure{Value: r.Value, Doubt: r.Doubt}
}

func hypot(a, b quantity.Length) float64 { return math.Hypot(a.Millimetres(), b.Millimetres()) }
