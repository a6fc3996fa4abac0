package survey

import (
	"cmp"

	"lostwood/internal/vehicle"
	"lostwood/internal/wheel"
	"lostwood/parts"
)

const wheelMeans = "The wheels: one line for each, or for a near and off pair, beginning with its id. " +
	"Name the irons that are left of it, then whatever figure was read or is known, as with a part: " +
	"a length, its give or take if you like, and one of measured, iron, paired, like, rule or guess; a guess where nothing is said. " +
	"A figure that no line gives is worked out from the irons, from the other wheel of the pair, or by the trade's rules, " +
	"and told with how it is known."

// A Wheel is a wheel that is wanted, or a near and off pair of them.
type Wheel struct {
	At    Position
	ID    string
	Name  string
	Sides Sides
	// Of is the wheel of a pair that its single irons and its figures were read of.
	Of              vehicle.Hand
	Tyre, Axle      Named // ids of irons; empty where none is left
	Felloe          Named // id of the part
	Twin            Named // a wheel it is like
	Use             wheel.Use
	Condition       wheel.Condition
	Over            HeightOver
	Spokes, Felloes int
	Nave, Spoke     string      // their timbers, where they are not that of [wood]
	Stated          []Statement // its figures, one term each
	// Part stands for the whole wheel where things are named and told of.
	Part *Part
}

// A HeightOver says what a wheel's height was measured over, if that was said.
type HeightOver int

// What a height was measured over.
const (
	OverNotSaid HeightOver = iota
	OverTheTyre
	OverTheWood
)

// WheelFigures are the figures a wheel can be asked, all of them lengths.
func WheelFigures() []parts.Dimension {
	var out []parts.Dimension
	for _, f := range [][2]string{
		{"height", "its diameter, over the tyre or the wood: see over"},
		{"radius", "of the wooden rim's outside"},
		{"tyre-wide", "the tyre, across"},
		{"tyre-thick", "the tyre, through"},
		{"felloe-deep", "a felloe, from sole to belly"},
		{"gap", "left open at each joint before the tyre goes on"},
		{"bolt-pitch", "from one tyre bolt to the next, straight across, over the iron; there is one bolt a felloe"},
		{"dish", "from the front of the mortises to the rim's face, the tyre on"},
		{"dish-built", "the same before the tyre goes on"},
		{"offset", "along the arm from the nave's back end to the middle of the tyre"},
		{"stagger", "between the two mortise circles; one circle where left out"},
		{"nave", "the nave's diameter at the spokes"},
		{"nave-long", "the nave, end to end"},
		{"nave-front", "diameter at its front end, inside the band"},
		{"nave-back", "diameter at its back end, inside the band"},
		{"nave-forward", "from midway between the mortise circles to the front end"},
		{"seat-long", "what is turned for the spokes, along it"},
		{"box-long", "the box"},
		{"box-large", "its bore at the back"},
		{"box-small", "its bore at the front"},
		{"box-wall", "thickness of its iron"},
		{"box-in", "from the nave's back end to the box's"},
		{"arm-long", "the axle arm, from collar to point"},
		{"arm-collar", "its diameter at the collar"},
		{"arm-point", "its diameter at the point"},
		{"arm-fall", "how far its middle line falls from collar to point"},
		{"shoulders", "from collar to collar of the axle"},
		{"track", "from middle to middle of the tyres, on the ground"},
		{"spoke-long", "of a spoke that is left: from shoulder to shoulder"},
		{"foot-wide", "a spoke's foot, front to back"},
		{"foot-thick", "a spoke's foot, round the nave"},
		{"foot-long", "a spoke's foot, from its shoulder in"},
		{"spoke-wide", "a spoke's square, front to back"},
		{"spoke-thick", "a spoke's square, round the wheel"},
		{"square", "how far a spoke is left square"},
		{"tip-wide", "its oval at the tongue, front to back"},
		{"tip-thick", "its oval at the tongue, round the wheel"},
		{"tongue", "its tongue's diameter"},
		{"tongue-short", "how far the tongue stops below the tyre"},
	} {
		out = append(out, parts.Dimension{Name: f[0], Means: f[1], In: parts.InLength, Need: parts.Optional})
	}
	return out
}

func wheelKind() parts.Kind {
	return parts.Kind{Name: "wheel", Means: "a wheel, whole", Dimensions: WheelFigures()}
}

func wheelKeys() []key[Wheel] {
	named := func(name, also, means, example string, place func(*Wheel) *Named) key[Wheel] {
		return key[Wheel]{name: name, also: also, means: means, example: example, take: func(r *reader, v *node, w *Wheel) {
			if id, ok := r.text(v); ok {
				*place(w) = Named{r.at(v), id}
			}
		}}
	}
	keys := []key[Wheel]{
		pairKey(func(w *Wheel) *Sides { return &w.Sides }),
		{
			name: "of", also: "side hand", example: `"near"`,
			means: "of a pair: the wheel whose irons were found, and which was read; the near one where not given",
			take: func(r *reader, v *node, w *Wheel) {
				if s, ok := r.word(v, []string{"near", "off"}); ok && s == "off" {
					w.Of = vehicle.Off
				}
			},
		},
		named("tyre", "tire", "the id of its tyre, or of what is left of it", `"fore-tyre"`, func(w *Wheel) *Named { return &w.Tyre }),
		named("axle", "axletree", "the id of the axle iron it runs on; its ends are the collars", `"fore-axle"`, func(w *Wheel) *Named { return &w.Axle }),
		named("felloe", "felly rim", "the id of the part that its felloes are", `"fore-felloe"`, func(w *Wheel) *Named { return &w.Felloe }),
		named("twin", "like same", "the id of a wheel of another line that it is the like of", `"hind-wheel"`, func(w *Wheel) *Named { return &w.Twin }),
		{
			name: "felloes", also: "fellies", need: must, example: "6", means: "how many felloes its rim has",
			take: intoWhole(3, 24, func(w *Wheel) *int { return &w.Felloes }),
		},
		{
			name: "spokes", example: "12", means: "how many spokes it has; two to a felloe where not given",
			take: intoWhole(6, 48, func(w *Wheel) *int { return &w.Spokes }),
		},
		{
			name: "use", also: "kind type", example: `"wagon"`, means: "what it is for, as the trade's rules go: " + listed(useWords(), "or") + "; wagon where not given",
			take: func(r *reader, v *node, w *Wheel) { w.Use = wheel.Use(r.wordNumber(v, useWords())) },
		},
		{
			name: "condition", also: "state", example: `"sound"`, means: "how its wood is to stand before the tyre goes on: " + listed(stateWords(), "or") + "; sound where not given",
			take: func(r *reader, v *node, w *Wheel) { w.Condition = wheel.Condition(r.wordNumber(v, stateWords())) },
		},
		{
			name: "over", also: "height-over", example: `"tyre"`, means: "what height was measured over: tyre or wood. Published heights often do not say: leave it out, and that it is open will be told",
			take: func(r *reader, v *node, w *Wheel) { w.Over = HeightOver(1 + r.wordNumber(v, []string{"tyre", "wood"})) },
		},
		{name: "name", also: "title", example: `"Fore wheel"`, means: "what people call it; its id with spaces where not given", take: intoText(func(w *Wheel) *string { return &w.Name })},
		{name: "nave-timber", also: "hub-timber", example: `"rock elm"`, means: "the nave's timber, where it is not that of [wood]", take: intoText(func(w *Wheel) *string { return &w.Nave })},
		{name: "spoke-timber", example: `"white oak"`, means: "the spokes' timber, where it is not that of [wood]", take: intoText(func(w *Wheel) *string { return &w.Spoke })},
	}
	kind := wheelKind()
	for _, d := range kind.Dimensions {
		keys = append(keys, key[Wheel]{
			name: d.Name, also: alsoWheel(d.Name), means: d.Means, example: `"1 1/2 ± 1/16 measured"`,
			take: func(r *reader, v *node, w *Wheel) {
				s, ok := r.statedSize(v, d, kind, w.ID)
				if !ok {
					return
				}
				if s.Constant == 0 && !mayBeNothing(d.Name) {
					r.fault(v.at, "a length of nothing", "write how long it is, or take it away")
					return
				}
				w.Stated = append(w.Stated, s)
			},
		})
	}
	return keys
}

// mayBeNothing reports whether a figure of a wheel can be 0.
func mayBeNothing(figure string) bool {
	switch figure {
	case "gap", "dish", "dish-built", "box-in", "arm-fall", "tongue-short", "stagger":
		return true
	}
	return false
}

func alsoWheel(name string) string {
	switch name {
	case "height":
		return "high diameter"
	case "nave":
		return "hub nave-diameter hub-diameter"
	case "nave-long":
		return "hub-long nave-length"
	case "arm-fall":
		return "cant"
	case "bolt-pitch":
		return "bolt-spacing"
	}
	return ""
}

func useWords() []string {
	var out []string
	for u := wheel.Wagon; u <= wheel.HeavyCart; u++ {
		out = append(out, u.String())
	}
	return out
}

func stateWords() []string {
	return []string{wheel.Sound.String(), wheel.Poor.String(), wheel.MuchDished.String()}
}

// wordNumber is the place of a word in a list; 0 where it is not there, which is told.
func (r *reader) wordNumber(v *node, words []string) int {
	said, _ := r.word(v, words)
	for i, w := range words {
		if w == said {
			return i
		}
	}
	return 0
}

func (r *reader) wheels(n *node) {
	r.each(n, "a wheel", func(at int, id string, v *node) {
		w := Wheel{At: r.src.position(at), ID: id, Name: spoken(id)}
		if readGroup(r, v, "a wheel", wheelKeys(), &w) {
			r.wheelSense(v, &w)
		}
		w.Part = &Part{
			At: w.At, ID: w.ID, Name: w.Name, Kind: wheelKind(), Runs: vehicle.Round, Sides: w.Sides,
			Number: 1, Timber: w.Spoke, Stated: w.Stated,
		}
		r.s.Wheels = append(r.s.Wheels, w)
	})
}

// wheelSense refuses a wheel that says two things at once.
func (r *reader) wheelSense(v *node, w *Wheel) {
	if w.Spokes == 0 {
		w.Spokes = 2 * w.Felloes
	} else if w.Felloes != 0 && w.Spokes != 2*w.Felloes {
		r.fault(v.named["spokes"].value.at, numbered(w.Spokes)+" spokes in "+counted(w.Felloes, "felloe"),
			"two spokes go to a felloe: write spokes = "+numbered(2*w.Felloes)+", or felloes = "+numbered((w.Spokes+1)/2))
	}
	if of := v.named["of"]; of != nil && w.Sides != Pair {
		r.fault(of.at, "“of” for a wheel that is no pair", "write pair = true, or take it away")
	}
	if over := v.named["over"]; over != nil && v.named["height"] == nil {
		r.fault(over.at, "what a height is over, and no height", `write height = "40" too, or take it away`)
	}
	if w.Sides != Pair {
		w.Of = vehicle.Alike
	} else if w.Of == vehicle.Alike {
		w.Of = vehicle.Near
	}
}

// wheelThings checks what the wheels name.
func (r *reader) wheelThings() {
	own := map[string]*Wheel{}
	for i := range r.s.Wheels {
		own[r.s.Wheels[i].ID] = &r.s.Wheels[i]
	}
	for i := range r.s.Wheels {
		w := &r.s.Wheels[i]
		r.wheelIron(w, w.Tyre, Tyre)
		r.wheelIron(w, w.Axle, Axle)
		if w.Felloe.ID != "" {
			if t, ok := r.find(w.Felloe.ID, w.Felloe.At); ok && (t.Part == nil || t.Part.Kind.Name != "felloe") {
				r.faultAt(w.Felloe.At, quote(w.Felloe.ID)+", which is no felloe", `write the id of a part of kind = "felloe"`)
			} else if n := t.felloes(); ok && n != 0 && w.Felloes != 0 && n != w.Felloes {
				r.faultAt(w.Felloe.At, counted(n, "felloe")+" under "+quote(w.Felloe.ID)+" and "+numbered(w.Felloes)+" in the wheel", "write the same in both")
			}
		}
		if w.Twin.ID == "" {
			continue
		}
		if t := own[w.Twin.ID]; t == nil || t == w {
			var ids []string
			for _, o := range r.s.Wheels {
				if o.ID != w.ID {
					ids = append(ids, o.ID)
				}
			}
			r.faultAt(w.Twin.At, quote(w.Twin.ID)+" as a twin, which is no other wheel here", cmp.Or(r.meant(w.Twin.ID, ids, "write"), "write the id of another line under [wheel]"))
		}
	}
}

// felloes is how many a felloe's line says its rim has; 0 where it does not say.
func (t Thing) felloes() int {
	if t.Part == nil {
		return 0
	}
	return t.Part.Counts["felloes"]
}

func (r *reader) wheelIron(w *Wheel, n Named, kind IronKind) {
	if n.ID == "" {
		return
	}
	t, ok := r.find(n.ID, n.At)
	if !ok {
		return
	}
	if t.Iron == nil || t.Iron.Kind != kind {
		r.faultAt(n.At, quote(n.ID)+" as the "+string(kind)+" of "+quote(w.ID)+", which it is not", "write the id of an iron of kind = \""+string(kind)+"\"")
		return
	}
	if t.bothSides() && w.Sides != Pair || t.rows() > 1 {
		r.faultAt(n.At, quote(n.ID)+", which is more than one "+string(kind), "name one of them, such as "+oneOf(t))
	}
	if kind == Axle && t.Runs() != vehicle.Across {
		r.faultAt(n.At, quote(n.ID)+", an axle that runs "+t.Runs().String(), "write the axle that runs across")
	}
}
