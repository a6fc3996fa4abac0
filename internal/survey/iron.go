package survey

import (
	"strconv"
	"strings"

	"lostwood/internal/vehicle"
)

const ironMeans = "The irons: one line for each, beginning with a short id of your own (letters, figures and hyphens). " +
	"A pair is written once, with the near one's readings; what was read of the off one goes under off. " +
	"Irons alike in a row are written once too, with number."

// ironKinds are the kinds of iron and what each is.
func ironKinds() []IronKind {
	return []IronKind{Strap, Plate, Clip, Socket, Rail, Hinge, Stay, Tyre, Band, Ring, Axle, Spring}
}

// round reports whether irons of a kind go round something and have no length.
func (k IronKind) round() bool { return k == Tyre || k == Band || k == Ring }

// sizesOf are the sizes an iron of a kind has; of no kind, all.
func sizesOf(k IronKind) []string {
	switch {
	case k == "":
		return []string{"long", "wide", "thick", "mouth", "outside", "girth", "chord", "rise"}
	case k.round():
		return []string{"outside", "girth", "chord", "rise", "wide", "thick"}
	case k == Socket:
		return []string{"long", "wide", "thick", "mouth"}
	}
	return []string{"long", "wide", "thick"}
}

// sizeWords say what a size of an iron spans, what people also call it, and an example.
func sizeWords(name string) (means, also, example string) {
	switch name {
	case "long":
		return "end to end", "length", `"67 3/4"`
	case "wide":
		return "across it", "width breadth", `"2"`
	case "thick":
		return "through it, the way its bolts go", "thickness depth deep gauge", `"3/16"`
	case "mouth":
		return "of a socket: the size of the wood it takes, along its bolts' row", "opening", `"1 3/4"`
	case "outside":
		return "of a tyre, band or ring: its diameter over the iron", "diameter", `"40"`
	case "girth":
		return "of a tyre, band or ring: round it, over the iron", "circumference", `"125 5/8"`
	case "chord":
		return "of a piece of tyre: straight from end to end, over the iron", "", `"24"`
	}
	return "of a piece of tyre: from the middle of the chord to the iron, over the iron", "sagitta", `"3 7/8"`
}

// readings are what both an iron and its second set of readings have.
type readings struct {
	sizes []Size
	holes []Reading
}

func sizeKeys[T any](k IronKind, place func(*T) *readings) []key[T] {
	var keys []key[T]
	for _, name := range sizesOf(k) {
		means, also, example := sizeWords(name)
		keys = append(keys, key[T]{
			name: name, also: also, means: means, example: example,
			take: func(r *reader, v *node, to *T) {
				if s, ok := r.sized(v, name); ok {
					rd := place(to)
					rd.sizes = append(rd.sizes, s)
				}
			},
		})
	}
	return append(keys, key[T]{
		name: "holes", also: "hole boltholes", example: `["1 1/2", "15 1/2"]`,
		means: "the middle of each hole from its fore, near or lower end, all from the same end",
		take: func(r *reader, v *node, to *T) {
			place(to).holes = r.holes(v)
		},
	})
}

// An ironDraft is an iron while its line is read.
type ironDraft struct {
	Iron
	readings
	off, found otherDraft
}

type otherDraft struct {
	readings
	why  string
	node *node
}

func otherKeys(k IronKind) []key[otherDraft] {
	keys := sizeKeys(k, func(o *otherDraft) *readings { return &o.readings })
	return append(keys, key[otherDraft]{
		name: "why", also: "because", example: `"bent in the fall"`, means: "what happened to it",
		take: intoText(func(o *otherDraft) *string { return &o.why }),
	})
}

func ironKeys(k IronKind) []key[ironDraft] {
	keys := []key[ironDraft]{
		{
			name: "kind", also: "type", need: must, example: `"strap"`,
			means: "what it is: " + listed(plain(ironKinds()), "or"),
			take:  intoWord(ironKinds(), func(d *ironDraft) *IronKind { return &d.Kind }),
		},
		runsKey(func(d *ironDraft) *vehicle.Run { return &d.Runs },
			"which way it lies: along (fore and aft), across (near to off) or upright; a tyre, band or ring needs none"),
		pairKey(func(d *ironDraft) *Sides { return &d.Sides }),
		numberKey(func(d *ironDraft) *int { return &d.Number }),
	}
	keys = append(keys, sizeKeys(k, func(d *ironDraft) *readings { return &d.readings })...)
	keys = append(keys, shapeKeys(k)...)
	other := func(place func(*ironDraft) *otherDraft) func(*reader, *node, *ironDraft) {
		return func(r *reader, v *node, d *ironDraft) {
			o := place(d)
			if readGroup(r, v, "a second set of readings", otherKeys(d.Kind), o) {
				o.node = v
			}
		}
	}
	word := func(name, also, means, example string, place func(*ironDraft) *string) key[ironDraft] {
		return key[ironDraft]{name: name, also: also, means: means, example: example, take: intoText(place)}
	}
	return append(keys,
		key[ironDraft]{
			name: "off", also: "right", example: `{ holes = ["1 9/16", "15 1/2"] }`,
			means: "of a pair: what was read of the off one",
			take:  other(func(d *ironDraft) *otherDraft { return &d.off }),
		},
		key[ironDraft]{
			name: "found", also: "as-found", example: `{ long = "66", why = "bent in the fall" }`,
			means: "its readings as found, where they differ from as made",
			take:  other(func(d *ironDraft) *otherDraft { return &d.found }),
		},
		word("name", "title", "what people call it; its id with spaces where not given", `"Reach plate"`, func(d *ironDraft) *string { return &d.Name }),
		missingKey("Where all are, what is written of it is what it is to be, each a guess unless ± says how sure it is, and a hole written \"-\" is to be worked out",
			`"off"`, func(d *ironDraft) *Missing { return &d.Missing }),
		word("condition", "state", "what state it is in", `"rusted thin at the fore end"`, func(d *ironDraft) *string { return &d.Condition }),
		word("where", "place", "where it was found", `"under the hind axle"`, func(d *ironDraft) *string { return &d.Where }),
		word("marks", "mark stamp", "numbers or marks on it", `"two punch dots"`, func(d *ironDraft) *string { return &d.Marks }),
		key[ironDraft]{
			name: "photos", also: "photo photographs picture pictures", example: `["reach-plate.jpg"]`, means: "names of picture files",
			take: func(r *reader, v *node, d *ironDraft) {
				for _, p := range r.texts(v) {
					if s, ok := r.text(p); ok {
						d.Photos = append(d.Photos, s)
					}
				}
			},
		},
		word("note", "notes remark", "anything else", `"maker's side turned out"`, func(d *ironDraft) *string { return &d.Note }),
	)
}

func (r *reader) irons(n *node) {
	r.each(n, "an iron", func(at int, id string, v *node) {
		d := ironDraft{Iron: Iron{At: r.src.position(at), ID: id, Name: spoken(id), Number: 1}}
		d.Kind = r.ironKind(v)
		r.middle, r.made = fromMiddle(v), allMissing(v)
		if readGroup(r, v, whatIron(d.Kind), ironKeys(d.Kind), &d) {
			r.ironRuns(v, &d)
		}
		d.Iron.Sizes, d.Iron.Holes = d.sizes, d.holes
		r.endHoles(d.sizes, d.holes, nil)
		if d.off.node != nil {
			r.offOne(&d)
		}
		if d.found.node != nil {
			d.Found = &Other{Sizes: d.found.sizes, Holes: d.found.holes, Why: d.found.why}
			r.endHoles(d.found.sizes, d.found.holes, d.sizes)
			r.alikeSizes(d.sizes, d.found.sizes, "as made and as found")
		}
		r.shapeSense(v, &d)
		r.missingSense(d.Missing, d.Sides, d.Iron.Number)
		r.made = false
		r.ironPeers(&d)
		r.s.Irons = append(r.s.Irons, d.Iron)
	})
}

func whatIron(k IronKind) string {
	switch k {
	case "":
		return "an iron"
	case Axle:
		return "an axle"
	}
	return "a " + string(k)
}

// ironKind looks ahead: the kind says which sizes an iron has. Faults of it are
// told when its line is read.
func (r *reader) ironKind(v *node) IronKind {
	if k := v.get("kind"); k != nil && k.shape == textShape {
		for _, known := range ironKinds() {
			if strings.EqualFold(strings.TrimSpace(k.text), string(known)) {
				return known
			}
		}
	}
	return ""
}

func (r *reader) ironRuns(v *node, d *ironDraft) {
	runs := v.get("runs")
	switch {
	case d.Kind.round() && runs == nil:
		d.Runs = vehicle.Round
	case d.Kind.round() && d.Runs != vehicle.Round:
		r.fault(runs.at, whatIron(d.Kind)+" that runs "+d.Runs.String(), "leave runs out: "+whatIron(d.Kind)+" goes round")
	case runs == nil && d.Kind != "":
		r.missing(v.at, whatIron(d.Kind)+" with no “runs”", "write runs = \"along\", \"across\" or \"upright\"")
	case runs != nil && d.Runs == vehicle.Round && d.Kind != "" && !d.Kind.round():
		r.fault(runs.at, whatIron(d.Kind)+" that runs round", "write along, across or upright; only a tyre, band or ring goes round")
	}
	r.chordAndRise(v)
}

// chordAndRise go together.
func (r *reader) chordAndRise(v *node) {
	c, h := v.named["chord"], v.named["rise"]
	switch {
	case c != nil && h == nil:
		r.fault(c.at, "a chord with no rise", "write the rise of the same piece too")
	case h != nil && c == nil:
		r.fault(h.at, "a rise with no chord", "write the chord of the same piece too")
	}
}

// offOne takes the readings of the off one of a pair.
func (r *reader) offOne(d *ironDraft) {
	at := d.off.node.at
	if d.Sides != Pair {
		r.fault(at, "readings of the off one of an iron that is no pair", "write pair = true, or write the other iron on a line of its own")
		return
	}
	if d.off.holes != nil && len(d.off.holes) != len(d.holes) {
		r.faultAt(d.off.holes[0].At, counted(len(d.off.holes), "hole")+" in the off one and "+counted(len(d.holes), "hole")+" in the near one",
			"write as many for both, or write two irons that are no pair")
	}
	d.Off = &Other{Sizes: d.off.sizes, Holes: d.off.holes, Why: d.off.why}
	r.endHoles(d.off.sizes, d.off.holes, d.sizes)
	r.alikeSizes(d.sizes, d.off.sizes, "the near one and the off one")
}

// ironPeers puts an iron's sizes beside those of its kind.
func (r *reader) ironPeers(d *ironDraft) {
	for _, s := range d.sizes {
		if s.Name != "long" && s.Name != "chord" && d.Kind != "" {
			r.peers.add(quote(s.Name)+" of "+whatIron(d.Kind), s.Reading)
		}
	}
}

// alikeSizes refuses two readings of one size that differ as inches and millimetres do.
func (r *reader) alikeSizes(a, b []Size, which string) {
	for _, s := range a {
		if t := sizeNamed(b, s.Name); t != nil {
			r.sameUnit(s.Reading, t.Reading, quote(s.Name)+" of "+which)
		}
	}
}

func numbered(n int) string { return strconv.Itoa(n) }
