package survey

import (
	"strings"
)

const fasteningMeans = "The bolts, clips, rivets and screws, each with what it goes through in order, head first. " +
	"Write [[fastening]] on a line before each. A thing in the run is the id of a part, or of an iron and its hole: \"reach-plate#2\"; " +
	"\"sill-plate#1,3,5\" gives each of a row its own hole, and \"reach-plate#2 worn 1/16\" says that a hole is worn. " +
	"Between two things can stand \"let 3/4 into reach\" (one lies that deep in the other) or \"gap 1/8\"."

// heading is a direction and the words for it.
type heading struct{ name, means, example string }

func headings() []heading {
	return []heading{
		Down:     {"down", "head above, nut below", `["hind-plate#2", "hind-bolster", "reach"]`},
		Up:       {"up", "head below, nut above", `["circle-top#1", "fore-bolster"]`},
		Inward:   {"inward", "head on the outer side; in a wheel, head at the tyre", `["side-rail", "standard#2"]`},
		Outward:  {"outward", "nut on the outer side", `["sill", "standard#1"]`},
		Hindward: {"hindward", "head before, nut behind", `["cross-bar-3", "tail-hinge#1"]`},
		Forward:  {"forward", "head behind, nut before", `["tail-hinge#2", "tailboard"]`},
	}
}

// A fasteningDraft is a fastening while its lines are read.
type fasteningDraft struct {
	Fastening
	runs  []*line // by direction
	bolt  *node
	clip  *node
	grip  *node
	what  *node
	shear *node
}

func fasteningKeys() []key[fasteningDraft] {
	keep := func(place func(*fasteningDraft) **node) func(*reader, *node, *fasteningDraft) {
		return func(_ *reader, v *node, d *fasteningDraft) { *place(d) = v }
	}
	keys := []key[fasteningDraft]{
		{
			name: "bolt", also: "diameter rivet screw", example: `"1/2"`,
			means: "its diameter, or the id of a bolt under [bolt]; for a row or pair a list of ids set out as grips are, \"-\" for one not found",
			take:  keep(func(d *fasteningDraft) **node { return &d.bolt }),
		},
		{
			name: "clip", example: `"2 1/4"`, means: "instead of bolt: a clip, and its width between its legs",
			take: keep(func(d *fasteningDraft) **node { return &d.clip }),
		},
	}
	for _, h := range headings() {
		keys = append(keys, key[fasteningDraft]{
			name: h.name, example: h.example, means: "what it goes through, in order: " + h.means,
			take: func(_ *reader, v *node, d *fasteningDraft) { d.runs = append(d.runs, &line{h.name, v.at, v}) },
		})
	}
	return append(keys,
		key[fasteningDraft]{
			name: "grip", example: `["7 1/16", "7"]`,
			means: "head to nut, by the bolt's mark: one; for a pair near and off; for a row one for each, or a near and off of each. \"-\" is one not taken",
			take:  keep(func(d *fasteningDraft) **node { return &d.grip }),
		},
		key[fasteningDraft]{
			name: "shear", also: "bruise", example: `"reach 2 7/16"`,
			means: "where its shank is bruised: the thing whose far face bore there, and how far that is from under the head; one or a list. Of a row or pair the first is meant, unless the thing says which",
			take:  keep(func(d *fasteningDraft) **node { return &d.shear }),
		},
		pairKey(func(d *fasteningDraft) *Sides { return &d.Sides }),
		key[fasteningDraft]{
			name: "id", example: `"king-bolt"`, means: "a name or number of your own; else its number in the order of the file",
			take: (*reader).fasteningID,
		},
		key[fasteningDraft]{
			name: "name", also: "title", example: `"King bolt"`, means: "what people call it",
			take: intoText(func(d *fasteningDraft) *string { return &d.Name }),
		},
		key[fasteningDraft]{
			name: "what", also: "kind type", example: `"rivet"`, means: "bolt (where not given), rivet or screw",
			take: func(r *reader, v *node, d *fasteningDraft) {
				d.what = v
				if w, ok := r.word(v, []string{"bolt", "rivet", "screw", "clip"}); ok {
					d.What = w
				}
			},
		},
		missingKey("A bolt that has neither a grip nor a line of its own is taken to be missing",
			`"near"`, func(d *fasteningDraft) *Missing { return &d.Missing }),
		key[fasteningDraft]{
			name: "head", example: `"square-neck"`, means: "plain (where not given); square-neck, which sinks into the wood; or flush, sunk level into what it bears on",
			take: intoWord([]Head{PlainHead, SquareNeck, FlushHead}, func(d *fasteningDraft) *Head { return &d.Head }),
		},
		key[fasteningDraft]{
			name: "sunk", also: "counterbore", example: `"1/4"`, means: "how deep its head is let into the wood",
			take: func(r *reader, v *node, d *fasteningDraft) {
				if l, ok := r.plainLength(v, zeroToo); ok {
					d.Sunk = l
				}
			},
		},
	)
}

func (r *reader) fastenings(n *node) {
	for i, v := range n.items {
		d := fasteningDraft{Fastening: Fastening{At: r.at(v), ID: numbered(i + 1), Number: 1, Head: PlainHead}}
		if !readGroup(r, v, "a fastening", fasteningKeys(), &d) {
			continue
		}
		whole := r.boltOrClip(v, &d)
		switch sound := r.run(v, &d) && whole; {
		case r.broken:
		case sound:
			r.extent(v, &d)
			r.missingSense(d.Missing, d.Fastening.Sides, d.Fastening.Number)
		default: // what it names and what was read of it can still be wrong too
			r.thingsOf(&d.Fastening)
			r.eachGrip(d.grip)
		}
		r.s.Fastenings = append(r.s.Fastenings, d.Fastening)
	}
}

func (r *reader) fasteningID(v *node, d *fasteningDraft) {
	s, ok := r.text(v)
	if !ok {
		return
	}
	if !allID(s) || len(s) > longestID {
		r.fault(v.at, quote(s)+" as the id of a fastening", "write a short one of letters, figures and hyphens")
		return
	}
	d.ID = s
}

// boltOrClip settles what a fastening is.
func (r *reader) boltOrClip(v *node, d *fasteningDraft) bool {
	switch {
	case d.bolt == nil && d.clip == nil:
		r.missing(v.at, "a fastening with neither bolt nor clip", "write bolt = \"1/2\", its diameter, or clip = \"2 1/4\", the width between its legs")
		return false
	case d.bolt != nil && d.clip != nil:
		r.fault(d.clip.at, "a bolt and a clip in one fastening", "write two fastenings")
		return false
	case d.clip != nil:
		return r.clip(v, d)
	}
	if d.What == "clip" {
		r.fault(d.what.at, "a clip with a bolt's diameter", "write clip = and its width between its legs, instead of bolt")
		return false
	}
	if d.What == "" {
		d.What = "bolt"
	}
	return r.boltOf(d)
}

func (r *reader) clip(v *node, d *fasteningDraft) bool {
	if d.What != "" && d.What != "clip" {
		r.fault(d.what.at, "a "+d.What+" with a clip's width", "write bolt = and its diameter, instead of clip")
		return false
	}
	d.What = "clip"
	for _, name := range []string{"head", "sunk"} {
		if l := v.named[name]; l != nil {
			r.fault(l.at, name+" of a clip, which has no head", "take it away")
		}
	}
	rd, ok := r.reading(d.clip, r.s.Doubts.of(byCallipers), positive)
	if ok {
		d.Inside = &rd
		r.peers.add("width between a clip's legs", rd)
	}
	return ok
}

// boltOf takes a diameter, or the id of a bolt.
func (r *reader) boltOf(d *fasteningDraft) bool {
	if d.bolt.shape == listShape {
		return r.listOfBolts(d)
	}
	if id := strings.TrimSpace(d.bolt.text); d.bolt.shape == textShape && isID(id) {
		b := r.bolts[id]
		if b == nil && !r.broken {
			r.fault(d.bolt.at, quote(id)+", which is no bolt under [bolt]", r.boltWanted(id))
		}
		if b == nil {
			return false
		}
		d.Bolt, d.Diameter = b, b.Diameter
		return true
	}
	rd, ok := r.reading(d.bolt, 0, positive)
	if ok {
		d.Diameter = rd.Value
		r.peers.add("diameter of a "+d.What, rd)
	}
	return ok
}

func (r *reader) boltWanted(id string) string {
	if w := r.meant(id, r.boltIDs, "write"); w != "" {
		return w
	}
	return "write its diameter, such as \"1/2\", or describe it under [bolt]"
}

// run takes what a fastening goes through.
func (r *reader) run(v *node, d *fasteningDraft) bool {
	if len(d.runs) == 0 {
		r.missing(v.at, "a fastening that goes through nothing", "write the way from head to nut and what it goes through: down = [\"reach\", \"reach-plate#2\"]")
		return false
	}
	if len(d.runs) > 1 {
		second := v.named[d.runs[1].name]
		r.fault(second.at, d.runs[0].name+" and "+d.runs[1].name+" in one fastening", "write the one way from its head to its nut")
	}
	for i, h := range headings() {
		if h.name == d.runs[0].name {
			d.Direction = Direction(i)
		}
	}
	list := d.runs[0].value
	steps := r.texts(list)
	ok := steps != nil
	for _, s := range steps {
		st, fine := r.step(s)
		ok = ok && fine
		d.Through = append(d.Through, st)
	}
	if len(d.runs) == 1 && (ok || list.shape == listShape && len(list.items) == 0) {
		return r.throughTwo(list, d.Through)
	}
	return false
}

// throughTwo wants two things at least, and every let and gap between two.
func (r *reader) throughTwo(list *node, steps []Step) bool {
	things, last := 0, "" // what stood last: a thing, or a let or gap
	seen := map[string]bool{}
	for _, s := range steps {
		if s.Thing == "" {
			if things == 0 || last == "" {
				r.faultAt(s.At, "a depth or gap that is not between two things", "write it between the two things it is about, one at most")
				return false
			}
			last = ""
			continue
		}
		if seen[s.Thing] {
			r.faultAt(s.At, quote(s.Thing)+" twice in one fastening", "write each thing once, in order from the head to the nut")
			return false
		}
		seen[s.Thing] = true
		things++
		last = s.Thing
	}
	switch {
	case things > 0 && last == "":
		r.faultAt(steps[len(steps)-1].At, "a depth or gap that is not between two things", "write it between the two things it is about")
		return false
	case things == 0:
		r.fault(list.at, "a fastening through nothing", "write all it goes through, head first")
		return false
	case things == 1:
		r.fault(list.at, "a fastening through 1 thing only", "write all it goes through, two things at least, head first")
		return false
	}
	return r.letsSit(steps)
}

// letsSit wants the part that a let cuts to be the thing before it or after it.
func (r *reader) letsSit(steps []Step) bool {
	for i, s := range steps {
		if s.Let == nil || s.Into == steps[i-1].Thing || s.Into == steps[i+1].Thing {
			continue
		}
		r.faultAt(s.At, "let into "+quote(s.Into)+", which is neither the thing before nor the one after",
			"write "+steps[i-1].Thing+" or "+steps[i+1].Thing+", whichever is cut")
		return false
	}
	return true
}
