package survey

const makeMeans = "What is left on the timber for its making, and what is bought over it, where your shop's way is not the usual. " +
	"All of it can also be set for one list at the command line, which overrules what stands here."

// A Making is what the survey says of allowances; nil where it says nothing.
type Making struct {
	Planing, Jointing, Trimming, BendTrimming, Kerf, WidestBoard *Reading
	Waste                                                        Waste
}

// A Waste is what is bought over the sawn pieces, in percent of them; nil
// where the survey says nothing.
type Waste struct{ Straight, Curve, Bend *float64 }

func makeKeys() []key[Making] {
	length := func(name, also, means, example string, s sense, place func(*Making) **Reading) key[Making] {
		return key[Making]{
			name: name, also: also, means: means, example: example,
			take: func(r *reader, v *node, m *Making) {
				if l, ok := r.plainLength(v, s); ok {
					*place(m) = &Reading{At: r.at(v), Value: l}
				}
			},
		}
	}
	return []key[Making]{
		length("planing", "planed plane", "left on each of the two faces", `"1/8"`, zeroToo, func(m *Making) **Reading { return &m.Planing }),
		length("jointing", "joint edges", "left on each edge, and on each edge of a joint between boards", `"1/4"`, zeroToo, func(m *Making) **Reading { return &m.Jointing }),
		length("trimming", "trim ends", "left on each end", `"1 1/2"`, zeroToo, func(m *Making) **Reading { return &m.Trimming }),
		length("bend-trimming", "bend", "left on each end of what is steam-bent", `"4"`, zeroToo, func(m *Making) **Reading { return &m.BendTrimming }),
		length("kerf", "saw cut", "what the saw takes beside every board; nothing where it is to lie within the waste", `"1/8"`, zeroToo, func(m *Making) **Reading { return &m.Kerf }),
		length("widest-board", "widest board", "the widest that boards come; what is wider is jointed up", `"12"`, positive, func(m *Making) **Reading { return &m.WidestBoard }),
		{
			name: "waste", also: "wastage", example: "{ straight = 25, curve = 40, bend = 40 }",
			means: "bought over the pieces themselves, in percent: of straight ones (straight), of curves that are sawn (curve), of what is steam-bent (bend); each may be left out",
			take: func(r *reader, v *node, m *Making) {
				readGroup(r, v, "waste", wasteKeys(), &m.Waste)
			},
		},
	}
}

func wasteKeys() []key[Waste] {
	percent := func(name, also, example string, place func(*Waste) **float64) key[Waste] {
		const most = 500
		return key[Waste]{
			name: name, also: also, example: example,
			take: func(r *reader, v *node, w *Waste) {
				if f, ok := r.number(v, "percent", 0, most); ok {
					*place(w) = &f
				}
			},
		}
	}
	return []key[Waste]{
		percent("straight", "", "25", func(w *Waste) **float64 { return &w.Straight }),
		percent("curve", "curved curves sawn", "40", func(w *Waste) **float64 { return &w.Curve }),
		percent("bend", "bent bends steamed", "40", func(w *Waste) **float64 { return &w.Bend }),
	}
}

func (r *reader) making(n *node) { readGroup(r, n, "[make]", makeKeys(), &r.s.Making) }
