package survey

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"lostwood/internal/quantity"
)

// furthest is more than any length of a vehicle.
const furthest = 12 * quantity.Metre

// A sense says which lengths are sensible in a place.
type sense int

// The senses.
const (
	positive sense = iota
	zeroToo
	anySign
)

// An instrument says what a reading is worth.
type instrument string

// The instruments.
const (
	byRule      instrument = "rule"
	byCallipers instrument = "callipers"
	byTape      instrument = "tape"
)

var instruments = [...]instrument{byRule, byCallipers, byTape}

// usual is the instrument that sizes of a name are read with.
func usual(size string) instrument {
	switch size {
	case "thick", "wide", "inside", "mouth", "deep", "nut", "washer", "proud", "diameter":
		return byCallipers
	case "girth", "outside":
		return byTape
	}
	return byRule
}

func (d *Doubts) of(i instrument) quantity.Length {
	switch i {
	case byCallipers:
		return d.Callipers.Value
	case byTape:
		return d.Tape.Value
	}
	return d.Rule.Value
}

// written is a reading as it stands: a length, its own give or take if any,
// and what it was read with.
type written struct {
	quantity.Reading
	instrument instrument  // empty where none is named
	own        *Instrument // one of the survey's own
	rusty      bool        // said to be on rust
}

// reading takes a length that was read; usually is what it is worth where it does not say.
func (r *reader) reading(v *node, usually quantity.Length, s sense) (Reading, bool) {
	w, ok := r.written(v, s)
	if !ok {
		return Reading{}, false
	}
	return Reading{At: r.at(v), Value: w.Value, Doubt: r.worth(w, usually), By: w.own}, true
}

// sized takes a reading of a size with that name.
func (r *reader) sized(v *node, name string) (Size, bool) {
	rd, ok := r.reading(v, r.s.Doubts.of(usual(name)), positive)
	return Size{Name: name, Reading: rd}, ok
}

// worth is the doubt of what was written: its own, its instrument's, or the usual one.
func (r *reader) worth(w written, usually quantity.Length) quantity.Length {
	if r.made {
		usually = r.s.Doubts.Known[quantity.Guess].Value
	}
	switch {
	case w.Stated == quantity.DoubtStated:
		usually = w.Doubt
	case w.own != nil:
		usually = w.own.Read
	case w.instrument != "":
		usually = r.s.Doubts.of(w.instrument)
	}
	if w.rusty {
		usually = quantity.Length(math.Hypot(float64(usually), float64(r.s.Doubts.Rust.Value)))
	}
	return usually
}

// plainLength takes a length with nothing after it.
func (r *reader) plainLength(v *node, s sense) (quantity.Length, bool) {
	if v.shape == textShape {
		l, err := quantity.ParseLength(v.text, r.unit())
		if err != nil {
			r.lengthFault(v, 0, err)
			return 0, false
		}
		return l, r.sensible(v, l, s)
	}
	w, ok := r.written(v, s)
	return w.Value, ok
}

// written takes LENGTH [± DOUBT] [by INSTRUMENT] [on rust].
func (r *reader) written(v *node, s sense) (written, bool) {
	var w written
	switch v.shape {
	case wholeShape, decimalShape:
		f, ok := figure(v)
		if !ok {
			r.fault(v.at, quote(v.text)+", which is no length", "write a length such as \"1 3/4\" or \"44.5 mm\"")
			return w, false
		}
		w.Value = quantity.Length(f) * r.unit().One()
		if exact, err := quantity.ParseLength(v.text, r.unit()); err == nil {
			w.Value = exact // rounded once, as the same figures between quotes
		}
		return w, r.sensible(v, w.Value, s)
	case textShape:
		return r.writtenText(v, s)
	}
	r.mistaken(v, "a length", "write a length such as \"1 3/4\" or \"44.5 mm\"")
	return w, false
}

func (r *reader) writtenText(v *node, s sense) (w written, ok bool) {
	text := v.text
	if bare, ok := strings.CutSuffix(strings.TrimRight(text, " "), " on rust"); ok {
		text, w.rusty = bare, true
	}
	if i := strings.LastIndex(text, " by "); i >= 0 {
		word := strings.TrimSpace(text[i+4:])
		w.own = r.instruments[word]
		for _, k := range instruments {
			if strings.EqualFold(word, string(k)) {
				w.instrument = k
			}
		}
		if w.instrument == "" && w.own == nil {
			at := i + 4 + len(text[i+4:]) - len(strings.TrimLeft(text[i+4:], " "))
			r.fault(v.place(at), quote(word)+", which is no instrument here", r.meant(word, append(plain(instruments[:]), r.instrumentIDs...), "write by"))
			return w, false
		}
		text = text[:i]
	}
	rd, err := quantity.ParseReading(text, r.unit())
	if err != nil {
		r.lengthFault(v, 0, err)
		return w, false
	}
	w.Reading = rd
	return w, r.sensible(v, rd.Value, s)
}

// lengthFault tells why a length, which begins at byte from of v's text, cannot be read.
func (r *reader) lengthFault(v *node, from int, err error) {
	var e *quantity.LengthError
	if !errors.As(err, &e) {
		r.fault(v.place(from), quote(v.text)+", which is no length", err.Error())
		return
	}
	what := e.Found
	if !strings.Contains(what, quote(v.text)) {
		what += " in " + quote(v.text)
	}
	r.fault(v.place(from+e.Offset), what, e.Want)
}

// sensible refuses lengths that nothing of a vehicle can have.
func (r *reader) sensible(v *node, l quantity.Length, s sense) bool {
	switch {
	case r.unsure:
		return true
	case l < 0 && s != anySign:
		r.fault(v.at, fmt.Sprintf("a length less than nothing, %s", quote(string(v.said()))), "write how long it is")
	case l == 0 && s == positive:
		r.fault(v.at, "a length of nothing", "write how long it is, or take it away")
	case l > furthest || l < -furthest:
		r.fault(v.at, "a length of "+r.show(quantity.Length(math.Abs(float64(l))))+", more than any vehicle's", "see whether its unit is right; a bare number is in "+unitWord(r.unit()))
	default:
		return true
	}
	return false
}

func unitWord(u quantity.Unit) string {
	if u == quantity.Millimetres {
		return "millimetres"
	}
	return "inches"
}

// said is a value as written, without its quotes.
func (n *node) said() []byte {
	if n.shape == textShape {
		return []byte(n.text)
	}
	return n.raw
}
