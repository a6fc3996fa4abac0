package survey

import (
	"slices"
	"strings"

	"lostwood/internal/quantity"
)

const moveMeans = "What moves on the vehicle, so that it can be offered up before anything is cut. Write [[move]] on a line before each. " +
	"A move is one of turns (about a bolt), swings (about a hinge) or travels (straight); that line names it."

// A Move is something that turns, swings or travels.
type Move struct {
	At           Position
	Kind         MoveKind
	Name         string
	With         []string    // ids of parts and irons that go along
	On           []string    // of a turn: the fastening it turns on; of a swing: its hinges
	Line         []Statement // of a swing: where its pin lies, on two axes; each is the sum of its terms and constant
	Way          Direction   // of a swing and a travel
	Asked        quantity.Angle
	Loaded, Stop quantity.Length
	Meets        []string
	Wheels       *MoveWheels // nil for none
}

// A MoveKind is how something moves.
type MoveKind string

// The kinds of move.
const (
	MoveTurns   MoveKind = "turns"
	MoveSwings  MoveKind = "swings"
	MoveTravels MoveKind = "travels"
)

// MoveWheels are a near and an off wheel on one axle.
type MoveWheels struct {
	Axle  string
	Tyre  string
	Gauge quantity.Length // between the middles of the tyres, at the height of the axle
}

// A moveDraft is a move while its lines are read.
type moveDraft struct {
	Move
	names []*node // of things, to be looked up
	on    []*node
	meets []*node
	axle  *node
	tyre  *node
}

func moveKinds() []MoveKind { return []MoveKind{MoveTurns, MoveSwings, MoveTravels} }

func moveKeys() []key[moveDraft] {
	sort := func(k MoveKind, means, example string) key[moveDraft] {
		return key[moveDraft]{
			name: string(k), means: means, example: example,
			take: func(r *reader, v *node, d *moveDraft) {
				d.Kind = k
				d.Name, _ = r.text(v)
			},
		}
	}
	keys := []key[moveDraft]{
		sort(MoveTurns, "what turns about a bolt, as people call it", `"fore carriage"`),
		sort(MoveSwings, "what swings about a hinge", `"tailboard"`),
		sort(MoveTravels, "what goes straight: a brake, a spring", `"brake"`),
		{
			name: "with", also: "moves", need: must, example: `["fore-bed", "fore-axle"]`, means: "the parts and irons that go along",
			take: func(r *reader, v *node, d *moveDraft) { d.names = r.texts(v) },
		},
		{
			name: "on", also: "about pivot hinge", example: `["king bolt"]`,
			means: "of a turn: the fastening it turns on, by its id or name; of a swing: the hinges, which bend there",
			take:  func(r *reader, v *node, d *moveDraft) { d.on = r.texts(v) },
		},
		{
			name: "at", also: "pin", example: `["hinge.hind + 1/4", "cross-bar-3.top"]`,
			means: "of a swing: where the hinge's pin lies, on the two of the vehicle's axes that it does not run along",
			take: func(r *reader, v *node, d *moveDraft) {
				for _, t := range r.texts(v) {
					s := Statement{At: r.at(t), Text: strings.TrimSpace(t.text)}
					if r.sum(t, clause{t.text, 0}, 1, &s) {
						d.Line = append(d.Line, s)
					}
				}
			},
		},
		{
			name: "way", also: "direction", example: `"hindward"`,
			means: "which way it goes first: down, up, inward, outward, hindward or forward",
			take: func(r *reader, v *node, d *moveDraft) {
				var words []string
				for _, h := range headings() {
					words = append(words, h.name)
				}
				if w, ok := r.word(v, words); ok {
					d.Way = Direction(slices.Index(words, w))
				}
			},
		},
		{
			name: "asked", also: "degrees", example: "30", means: "how far it must go, in degrees: a turn to either side, a swing in all; where not given it is told how far it goes",
			take: func(r *reader, v *node, d *moveDraft) {
				if f, ok := r.number(v, "degrees", 1, 270); ok {
					d.Asked = quantity.Angle(f) * quantity.Degree
				}
			},
		},
	}
	return append(keys, travelKeys()...)
}

func travelKeys() []key[moveDraft] {
	long := func(name, also, example, means string, place func(*moveDraft) *quantity.Length) key[moveDraft] {
		return key[moveDraft]{
			name: name, also: also, example: example, means: means,
			take: func(r *reader, v *node, d *moveDraft) {
				if l, ok := r.plainLength(v, positive); ok {
					*place(d) = l
				}
			},
		}
	}
	return []key[moveDraft]{
		long("loaded", "", `"1 1/2"`, "of a travel: how far it goes under the load the vehicle is to carry", func(d *moveDraft) *quantity.Length { return &d.Loaded }),
		long("stop", "travel", `"3"`, "of a travel: how far it goes in all", func(d *moveDraft) *quantity.Length { return &d.Stop }),
		{
			name: "meets", also: "touches", example: `["hind-axle"]`, means: "of a travel: what it is to touch before its stop",
			take: func(r *reader, v *node, d *moveDraft) { d.meets = r.texts(v) },
		},
		{
			name: "wheels", example: `{ axle = "fore-axle", tyre = "fore-tyre", gauge = "52" }`,
			means: "a near and an off wheel: that go along in a turn; that a travel is to touch. gauge is from the middle of one tyre to that of the other",
			take: func(r *reader, v *node, d *moveDraft) {
				w := &MoveWheels{}
				if readGroup(r, v, "a pair of wheels", moveWheelKeys(d), w) {
					d.Wheels = w
				}
			},
		},
	}
}

func moveWheelKeys(d *moveDraft) []key[MoveWheels] {
	return []key[MoveWheels]{
		{
			name: "axle", need: must, example: `"fore-axle"`, means: "the iron they run on",
			take: func(r *reader, v *node, w *MoveWheels) { w.Axle, _ = r.reference(v); d.axle = v },
		},
		{
			name: "tyre", need: must, example: `"fore-tyre"`, means: "their tyre",
			take: func(r *reader, v *node, w *MoveWheels) { w.Tyre, _ = r.reference(v); d.tyre = v },
		},
		{
			name: "gauge", also: "track", need: must, example: `"52"`, means: "from the middle of one tyre to that of the other",
			take: func(r *reader, v *node, w *MoveWheels) {
				if l, ok := r.plainLength(v, positive); ok {
					w.Gauge = l
				}
			},
		},
	}
}

func (r *reader) moves(n *node) {
	for _, v := range n.items {
		d := moveDraft{Move: Move{At: r.at(v)}}
		if !r.oneMove(v) || !readGroup(r, v, "a move", moveKeys(), &d) {
			continue
		}
		r.moveWants(v, &d)
		r.moveDrafts = append(r.moveDrafts, d)
	}
}

// oneMove wants a move to say what it is, once.
func (r *reader) oneMove(v *node) bool {
	if v.shape != groupShape {
		r.mistaken(v, "a move", "write [[move]] on a line of its own, and its lines below")
		return false
	}
	var said []string
	for _, k := range moveKinds() {
		if v.named[string(k)] != nil {
			said = append(said, string(k))
		}
	}
	switch {
	case len(said) == 0:
		r.missing(v.at, "a move that does not say what it is", "write turns, swings or travels and what people call it: turns = \"fore carriage\"")
	case len(said) > 1:
		r.fault(v.named[said[1]].at, "a move that "+said[0]+" and "+said[1], "write two moves")
	}
	return len(said) == 1
}

// moveWants tells of the lines that a move of its kind has to have.
func (r *reader) moveWants(v *node, d *moveDraft) {
	want := func(name, example string) {
		if v.named[name] == nil {
			r.missing(v.at, "what "+string(d.Kind)+", with no "+quote(name), "write "+name+" = "+example)
		}
	}
	switch d.Kind {
	case MoveTurns:
		want("on", `["king bolt"], the fastening it turns on`)
	case MoveSwings:
		want("at", `["hinge.hind", "cross-bar.top"], where the pin lies`)
		want("way", `"hindward", the way it goes first`)
	case MoveTravels:
		want("way", `"up", the way it goes`)
		want("stop", `"2", how far it goes in all`)
	}
}

// moveThings looks up what the moves name.
func (r *reader) moveThings() {
	for i := range r.moveDrafts {
		d := &r.moveDrafts[i]
		d.With = r.moveNames(d.names)
		d.Meets = r.moveNames(d.meets)
		if d.Kind == MoveTurns {
			d.On = r.moveBolts(d.on)
		} else {
			d.On = r.moveNames(d.on)
		}
		r.moveLine(d)
		if w := d.Wheels; w != nil {
			r.moveWheelIrons(d, w)
		}
		r.s.Moves = append(r.s.Moves, d.Move)
	}
}

func (r *reader) moveNames(nodes []*node) []string {
	var out []string
	for _, v := range nodes {
		if id, ok := r.reference(v); ok {
			if _, known := r.find(id, r.at(v)); known {
				out = append(out, id)
			}
		}
	}
	return out
}

// moveBolts finds fastenings by id or name.
func (r *reader) moveBolts(nodes []*node) []string {
	var out []string
	for _, v := range nodes {
		name, ok := r.text(v)
		if !ok {
			continue
		}
		at := slices.IndexFunc(r.s.Fastenings, func(f Fastening) bool {
			return f.ID == name || f.Name != "" && strings.EqualFold(f.Name, name)
		})
		if at < 0 {
			r.fault(v.at, quote(name)+", which is no fastening here", "write the id or the name of a fastening")
			continue
		}
		if f := r.s.Fastenings[at]; f.Number > 1 || f.Sides == Pair {
			r.fault(v.at, quote(name)+", which is more than one fastening", "write the one that it turns on")
			continue
		}
		out = append(out, r.s.Fastenings[at].ID)
	}
	return out
}

// moveLine wants a hinge's pin to be placed on two axes.
func (r *reader) moveLine(d *moveDraft) {
	axes := map[byte]bool{}
	for i := range d.Line {
		s := &d.Line[i]
		if len(s.Terms) == 0 {
			r.faultAt(s.At, quote(s.Text)+", which names no iron and no part", "write where the pin lies, such as \"hinge.hind + 1/4\"")
			return
		}
		var axis byte
		for k := range s.Terms {
			t := &s.Terms[k]
			thing, ok := r.find(t.Thing, t.At)
			if !ok || !r.featureOf(t, thing) {
				return
			}
			if a := axisOf(t.Feature); a != 0 {
				axis = a
			}
		}
		axes[axis] = true
	}
	if len(d.Line) > 0 && (len(d.Line) != 2 || len(axes) != 2 || axes[0]) {
		r.faultAt(d.Line[0].At, "a pin that is not placed on two axes", "write two places, one on each of the axes that the pin does not run along: [\"hinge.hind\", \"hinge.under + 2\"]")
	}
}

func (r *reader) moveWheelIrons(d *moveDraft, w *MoveWheels) {
	for _, c := range []struct {
		at   *node
		name string
		kind IronKind
	}{{d.axle, w.Axle, Axle}, {d.tyre, w.Tyre, Tyre}} {
		if c.at == nil || c.name == "" {
			continue
		}
		t, ok := r.find(c.name, r.at(c.at))
		if ok && (t.Iron == nil || t.Iron.Kind != c.kind) {
			r.fault(c.at.at, quote(c.name)+", which is no "+string(c.kind), "write the id of an iron of that kind")
		}
	}
}
