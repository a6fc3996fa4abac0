package derive

import (
	"fmt"
	"math"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// told puts a foresight into words.
func (st *Study) told(o foresight, ts []target, before []float64) vehicle.Reading {
	r := vehicle.Reading{Says: o.says, Where: o.where, Doubt: quantity.Length(o.doubt), Line: o.line, Write: o.write, Gain: quantity.Length(o.gain)}
	best, most, slight := 0, -1.0, 0
	for i, t := range ts {
		by := narrowed(before[i], o.doubts[i])
		clear := by >= worthTelling*before[i] || math.IsInf(before[i], 1) && by > 0
		switch {
		case clear && t.asks != o.asks:
			r.Others++
		case by >= worthCounting*before[i]:
			slight++
		}
		if clear {
			by *= 1e6 // before any that is only slightly narrowed
		}
		if t.asks == o.asks {
			by *= 1e6 // what is read itself, before what follows from it
		}
		if t.weight*by > most {
			best, most = i, t.weight*by
		}
	}
	r.Settles, r.From, r.To = ts[best].asks, quantity.Length(before[best]), quantity.Length(o.doubts[best])
	if r.Others > 0 && r.Settles != o.asks {
		r.Others--
	}
	r.Words = fmt.Sprintf("%s: %s.", capital(r.Says), st.does(r, o.asks, slight))
	return r
}

// does says what a reading would do: for the size it does most for, and for how many others.
func (st *Study) does(r vehicle.Reading, own string, slight int) string {
	u := st.Vehicle.Unit
	from, to := giveOrTake(r.From, u), giveOrTake(r.To, u)
	var says string
	switch {
	case math.IsInf(r.From.Millimetres(), 1):
		says = fmt.Sprintf("would settle %s, which nothing tells now, to %s", r.Settles, to)
		if r.Settles == own {
			says = fmt.Sprintf("would settle it, where nothing tells now, to %s", to)
		}
	case r.To > (1-worthTelling)*r.From && slight == 1:
		return fmt.Sprintf("would narrow %s a little", r.Settles)
	case r.To > (1-worthTelling)*r.From:
		return fmt.Sprintf("would narrow %d sizes and places by a little, most of all %s", slight, r.Settles)
	case from == to:
		says = fmt.Sprintf("would narrow %s, now give or take %s, by %s", r.Settles, from, partWords(1-float64(r.To/r.From)))
	case r.Settles == own:
		says = fmt.Sprintf("would settle it from %s to %s", from, to)
	default:
		says = fmt.Sprintf("would settle %s, from %s to %s", r.Settles, from, to)
	}
	if r.Others > 0 {
		says += fmt.Sprintf(", and narrow %d other size%s or place%s", r.Others, plural(r.Others), plural(r.Others))
	}
	return says
}

// giveOrTake is a doubt as people say it, with its unit.
func giveOrTake(l quantity.Length, u quantity.Unit) string {
	w := quantity.Size{Value: quantity.Foot, Doubt: l}.Words(u)
	_, w, ok := strings.Cut(w, "give or take ")
	switch {
	case !ok:
		return "nothing"
	case u == quantity.Inches || u == quantity.Millimetres:
		return w + " " + u.String()
	}
	return w
}

// partWords says a share of a tenth or more as people do.
func partWords(share float64) string {
	switch {
	case share >= 0.4:
		return "half"
	case share >= 0.28:
		return "a third"
	case share >= 0.22:
		return "a quarter"
	case share >= 0.15:
		return "a fifth"
	}
	return "a tenth"
}

func plural(n int) string {
	if n == 1 {
		return ""
	}
	return "s"
}
