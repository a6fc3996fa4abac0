package survey

import "lostwood/internal/quantity"

const doubtsMean = "What one reading of each sort is worth: how far off it may well be (two in three are nearer). " +
	"All have the values shown unless you write others, and any one reading can have its own: \"1 3/4 ± 1/16\", or \"1 3/4 by tape\"."

// A doubt is one line of [doubts] and where it goes.
type doubt struct {
	name, value, means string
	place              func(*Doubts) *Reading
}

// doubtLines are all the doubts, with what holds where a survey is silent.
// The values are common practice, no source.
func doubtLines() []doubt {
	known := func(k quantity.Known) func(*Doubts) *Reading {
		return func(d *Doubts) *Reading { return &d.Known[k] }
	}
	return []doubt{
		{"rule", "1/32", "a length or a hole's place, by rule", func(d *Doubts) *Reading { return &d.Rule }},
		{"callipers", "1/64", "a thickness or a width, by callipers", func(d *Doubts) *Reading { return &d.Callipers }},
		{"tape", "1/16", "a girth or an outside, by tape", func(d *Doubts) *Reading { return &d.Tape }},
		{"grip", "1/32", "a grip read from a bolt's mark", func(d *Doubts) *Reading { return &d.Grip }},
		{"contact", "1/32", "two faces that are said to touch", func(d *Doubts) *Reading { return &d.Contact }},
		{"play", "1/32", "a bolt in its hole", func(d *Doubts) *Reading { return &d.Play }},
		{"centre", "1/16", "a bolt on the middle line of its timber", func(d *Doubts) *Reading { return &d.Centre }},
		{"twin", "1/16", "near against off", func(d *Doubts) *Reading { return &d.Twin }},
		{"row", "1/32", "one of a row against the next", func(d *Doubts) *Reading { return &d.Row }},
		{"rust", "1/64", "what rust adds to a reading that says on rust", func(d *Doubts) *Reading { return &d.Rust }},
		{"shear", "1/16", "a bruise on a bolt's shank", func(d *Doubts) *Reading { return &d.Shear }},
		{"measured", "1/32", "a statement that was measured on old wood", known(quantity.Measured)},
		{"iron", "1/16", "a statement read from iron", known(quantity.FromIron)},
		{"paired", "1/16", "a statement from the other side or the same row", known(quantity.Paired)},
		{"like", "1/4", "a statement from a like vehicle or an old drawing", known(quantity.LikeVehicle)},
		{"rule-of-trade", "1/4", "a statement by a rule of the trade", known(quantity.TradeRule)},
		{"guess", "1/2", "a guess", known(quantity.Guess)},
	}
}

// usualDoubts are what holds where a survey says nothing.
func usualDoubts() Doubts {
	var d Doubts
	for _, l := range doubtLines() {
		v, err := quantity.ParseLength(l.value, quantity.Inches)
		if err == nil {
			*l.place(&d) = Reading{Value: v, Doubt: v}
		}
	}
	return d
}

func doubtKeys() []key[Doubts] {
	var keys []key[Doubts]
	for _, l := range doubtLines() {
		keys = append(keys, key[Doubts]{
			name: l.name, means: l.means, example: `"` + l.value + ` in"`,
			take: func(r *reader, v *node, d *Doubts) {
				if value, ok := r.plainLength(v, positive); ok {
					*l.place(d) = Reading{At: r.at(v), Value: value, Doubt: value}
				}
			},
		})
	}
	return keys
}

func (r *reader) doubts(n *node) { readGroup(r, n, "[doubts]", doubtKeys(), &r.s.Doubts) }
