package survey

import (
	"math"

	"lostwood/internal/quantity"
)

const instrumentsMean = "Rules, tapes and callipers of your own: one line for each, beginning with a short id. A reading then says \"67 3/4 by long-tape\". " +
	"What such an instrument is off by it is off by in everything it read, and that is reckoned with."

// An Instrument is a rule, tape or pair of callipers that readings name.
type Instrument struct {
	At    Position
	ID    string
	Kind  string          // rule, tape or callipers
	Class int             // accuracy class of a tape or rule, 1 to 3; 0 for none
	Read  quantity.Length // what one reading is worth
	Zero  quantity.Length // how far off its zero may be, the same in every reading
	Off   quantity.Length // how far its whole length may be off
	Long  quantity.Length // its whole length
}

// Tolerance is the most that a tape or rule of a class may be off over a length:
// a + b L, with L in metres rounded up (Measuring Instruments Directive 2014/32/EU,
// annex X, before that 2004/22/EC, as in UK S.I. 2016/1153, schedule 1I); nothing
// where it has no class.
func (i *Instrument) Tolerance(over quantity.Length) quantity.Length {
	rates := [...][2]float64{{0, 0}, {0.1, 0.1}, {0.3, 0.2}, {0.6, 0.4}}
	r := rates[min(max(i.Class, 0), len(rates)-1)]
	return quantity.Length(r[0] + r[1]*math.Ceil(math.Abs(over.Millimetres())/1000))
}

// An instrumentDraft is an instrument while its line is read.
type instrumentDraft struct {
	Instrument
	class, off, long, read *node
}

func instrumentKeys() []key[instrumentDraft] {
	length := func(name, also, means, example string, place func(*instrumentDraft) *quantity.Length, keep func(*instrumentDraft) **node) key[instrumentDraft] {
		return key[instrumentDraft]{
			name: name, also: also, means: means, example: example,
			take: func(r *reader, v *node, d *instrumentDraft) {
				if keep != nil {
					*keep(d) = v
				}
				if l, ok := r.plainLength(v, positive); ok {
					*place(d) = l
				}
			},
		}
	}
	return []key[instrumentDraft]{
		{
			name: "kind", also: "type what", need: must, example: `"tape"`, means: "rule, callipers or tape",
			take: func(r *reader, v *node, d *instrumentDraft) {
				if w, ok := r.word(v, plain(instruments[:])); ok {
					d.Kind = w
				}
			},
		},
		{
			name: "class", example: `"II"`, means: "of a tape or rule: the accuracy class printed on it, I, II or III; it sets how far off it may be over any length",
			take: func(r *reader, v *node, d *instrumentDraft) {
				d.class = v
				if w, ok := r.word(v, []string{"I", "II", "III"}); ok {
					d.Class = len(w)
				}
			},
		},
		length("read", "reads", "what one reading with it is worth; as of any of its kind where not given", `"1/32"`,
			func(d *instrumentDraft) *quantity.Length { return &d.Read }, func(d *instrumentDraft) **node { return &d.read }),
		length("zero", "worn", "how far off its zero may be, as of a worn end", `"1/32"`,
			func(d *instrumentDraft) *quantity.Length { return &d.Zero }, nil),
		length("off", "stretched", "how far off its whole length may be, as of a stretched tape; with long", `"1/8"`,
			func(d *instrumentDraft) *quantity.Length { return &d.Off }, func(d *instrumentDraft) **node { return &d.off }),
		length("long", "length", "its whole length", `"10 ft"`,
			func(d *instrumentDraft) *quantity.Length { return &d.Long }, func(d *instrumentDraft) **node { return &d.long }),
	}
}

func (r *reader) readInstruments(n *node) {
	r.instruments = map[string]*Instrument{}
	r.each(n, "an instrument", func(at int, id string, v *node) {
		d := instrumentDraft{Instrument: Instrument{At: r.src.position(at), ID: id}}
		if !readGroup(r, v, "an instrument", instrumentKeys(), &d) {
			return
		}
		switch {
		case d.class != nil && d.Kind == string(byCallipers):
			r.fault(d.class.at, "a class of callipers", "write what they may be off by: zero = \"1/64\"")
		case d.off != nil && d.long == nil:
			r.fault(d.off.at, "how far off its whole length may be, with no length", "write long = \"10 ft\" too")
		}
		if d.read == nil {
			d.Read = r.s.Doubts.of(instrument(d.Kind))
		}
		for _, k := range instruments {
			if id == string(k) {
				r.fault(at, quote(id)+" as the id of an instrument, which any "+id+" is called", "give it an id of its own, such as my-"+id)
			}
		}
		i := d.Instrument
		r.instruments[id] = &i
		r.instrumentIDs = append(r.instrumentIDs, id)
	})
}
