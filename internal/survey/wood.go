package survey

import (
	"strings"
	"time"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
)

func woodKeys() []key[Wood] {
	percent := func(lo, hi float64, place func(*Wood) *quantity.Moisture) func(*reader, *node, *Wood) {
		return func(r *reader, v *node, w *Wood) {
			if f, ok := r.number(v, "moisture in percent", lo, hi); ok {
				*place(w) = quantity.Moisture(f)
			}
		}
	}
	return []key[Wood]{
		{
			name: "timber", also: "species wood", example: `"white oak"`, means: "the timber of every part that names none",
			take: intoText(func(w *Wood) *string { return &w.Timber }),
		},
		{
			name: "bought", need: must, example: "15", means: "its moisture as bought, in percent of dry weight",
			take: percent(0, 100, func(w *Wood) *quantity.Moisture { return &w.Bought }),
		},
		{
			name: "worked", example: "12", means: "its moisture on the day it is worked; as bought where not given",
			take: percent(0, 100, func(w *Wood) *quantity.Moisture { return &w.Worked }),
		},
		{
			name: "service", example: `"9 .. 14"`,
			means: "the moisture it will live at: one number, or the driest and the wettest; or give place or climate instead",
			take:  (*reader).service,
		},
		{
			name: "place", example: `"Denver CO"`, means: "instead of service: where it will stand, from the table of places",
			take: intoText(func(w *Wood) *string { return &w.Service.Place }),
		},
		{
			name: "climate", example: "[[2, 80], [5, 75], ...]",
			means: "instead of service: for each of twelve months, degrees Celsius and percent humidity",
			take:  (*reader).climate,
		},
		{
			name: "tightened", also: "grip", example: `"16 ± 2"`,
			means: "how damp the wood was when the nuts were last run down, in percent, and how sure that is; grips then speak of it as it was that day, and sizes are worked out for the moisture it will live at",
			take:  (*reader).tightened,
		},
		ringsKey("how the rings are to lie in every part that says nothing of its own; the words are those of a part",
			func(w *Wood) **timber.Rings { return &w.Rings }),
	}
}

func (r *reader) wood(n *node) {
	w := &r.s.Wood
	if !readGroup(r, n, "[wood]", woodKeys(), w) {
		return
	}
	if n.get("worked") == nil {
		w.Worked = w.Bought
	}
	var given []string
	for _, name := range []string{"service", "place", "climate"} {
		if v := n.get(name); v != nil {
			given = append(given, name)
			w.Service.At = r.at(v)
		}
	}
	switch {
	case len(given) == 0:
		r.missing(n.at, "[wood] with no word of the moisture it will live at", "write service = 12, or place, or climate")
	case len(given) > 1:
		r.fault(n.named[given[1]].at, listed(given, "and")+" together", "write one of them")
	}
}

// Moisture the wood of a vehicle can live at, in percent.
const driest, wettest = 3, 28

// service takes 12 or "9 .. 14".
func (r *reader) service(v *node, w *Wood) {
	const what = "moisture in percent"
	if v.shape != textShape {
		if f, ok := r.number(v, what, driest, wettest); ok {
			w.Service.Driest, w.Service.Wettest = quantity.Moisture(f), quantity.Moisture(f)
		}
		return
	}
	lo, hi, two := strings.Cut(v.text, "..")
	if !two {
		r.fault(v.at, quote(v.text)+" where moisture was expected", "write one number without quotes, such as 12, or \"9 .. 14\"")
		return
	}
	a, okA := r.number(numberIn(v, lo, 0), what, driest, wettest)
	b, okB := r.number(numberIn(v, hi, len(lo)+2), what, driest, wettest)
	switch {
	case !okA || !okB:
	case a > b:
		r.fault(v.at, quote(v.text)+", with the wettest first", "write the driest first")
	default:
		w.Service.Driest, w.Service.Wettest = quantity.Moisture(a), quantity.Moisture(b)
	}
}

// numberIn is the number that part, at byte from of v's text, holds.
func numberIn(v *node, part string, from int) *node {
	lead := len(part) - len(strings.TrimLeft(part, " "))
	text := strings.TrimSpace(part)
	return &node{shape: decimalShape, at: v.place(from + lead), text: text, raw: []byte(text)}
}

// climate takes twelve pairs of temperature and humidity.
func (r *reader) climate(v *node, w *Wood) {
	const want = "write twelve pairs, from January on, such as [[2, 80], [5, 75] and so on]"
	if v.shape != listShape {
		r.mistaken(v, "a list of months", want)
		return
	}
	if len(v.items) != int(time.December) {
		r.fault(v.at, "a climate of "+counted(len(v.items), "month"), want)
		return
	}
	for _, m := range v.items {
		if m.shape != listShape || len(m.items) != 2 {
			r.fault(m.at, "a month that is no pair", "write degrees Celsius and percent humidity, such as [2, 80]")
			continue
		}
		t, okT := r.number(m.items[0], "degrees Celsius", -60, 60)
		h, okH := r.number(m.items[1], "percent humidity", 1, 100)
		if okT && okH {
			w.Service.Months = append(w.Service.Months, [2]float64{t, h})
		}
	}
}

// tightened takes 16 or "16 ± 2".
func (r *reader) tightened(v *node, w *Wood) {
	const what = "moisture in percent"
	w.TightenedAt, w.TightenedDoubt = r.at(v), 3 // common practice, no source
	n := v
	if v.shape == textShape {
		value, doubt, given := strings.Cut(v.text, "±")
		n = numberIn(v, value, 0)
		if given {
			f, ok := r.number(numberIn(v, doubt, len(value)+len("±")), what, 0.1, 15)
			if !ok {
				return
			}
			w.TightenedDoubt = quantity.Moisture(f)
		}
	}
	if f, ok := r.number(n, what, driest, 40); ok {
		w.Tightened = quantity.Moisture(f)
	}
}
