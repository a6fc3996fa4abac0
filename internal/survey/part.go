package survey

import (
	"cmp"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

const partMeans = "The timbers that are wanted: one line for each, beginning with its id. " +
	"Besides the lines below a part can have any dimension of its kind, where you know or guess it: " +
	"a length, its give or take if you like, and one of measured, iron, paired, like, rule or guess: deep = \"2 3/4 ± 1/16 like\". " +
	"With no such word it counts as a guess."

// A partDraft is a part while its line is read.
type partDraft struct {
	Part
	handedSaid bool
}

func partKeys() []key[partDraft] {
	word := func(name, also, means, example string, place func(*partDraft) *string) key[partDraft] {
		return key[partDraft]{name: name, also: also, means: means, example: example, take: intoText(place)}
	}
	return []key[partDraft]{
		{
			name: "kind", also: "type", need: must, example: `"reach"`, means: "what it is; the kinds are listed below",
			take: (*reader).partKind,
		},
		must1(runsKey(func(d *partDraft) *vehicle.Run { return &d.Runs },
			"which way it lies: along (fore and aft), across (near to off), upright, or round (a felloe in a wheel's rim)")),
		pairKey(func(d *partDraft) *Sides { return &d.Sides }),
		{
			name: "handed", also: "mirrored", example: "false",
			means: "of a pair: false where one pattern serves both sides; else the two are mirror images",
			take: func(r *reader, v *node, d *partDraft) {
				if yes, ok := r.yesNo(v); ok {
					d.handedSaid = true
					d.Handed = Same
					if yes {
						d.Handed = Handed
					}
				}
			},
		},
		numberKey(func(d *partDraft) *int { return &d.Number }),
		{
			name: "centred", also: "centered central", example: "false",
			means: "false where its bolts are not on its middle line",
			take:  intoChoice(Central, Anywhere, func(d *partDraft) *Centring { return &d.Centred }),
		},
		word("timber", "species wood", "its timber, where it is not that of [wood]", `"white ash"`, func(d *partDraft) *string { return &d.Timber }),
		ringsKey("how the growth rings are to lie: flat (along its broad face), quarter (square to it), the degrees between them, such as 30, or unknown",
			func(d *partDraft) **timber.Rings { return &d.Rings }),
		{
			name: "status", also: "state", example: `"approved"`, means: "how far it has come: proposed, approved, made or fitted",
			take: (*reader).status,
		},
		word("kept", "original", "what is left of the old one, and where", `"the gnawed end, kept in the store"`, func(d *partDraft) *string { return &d.Kept }),
		word("decided", "reason because", "why it is made new, grafted to what is left, or left open", `"graft: the fore half is sound"`, func(d *partDraft) *string { return &d.Decided }),
		{
			name: "as-made", also: "made fitted", example: `{ deep = "2 3/4" }`, means: "its sizes as it was made in the end",
			take: (*reader).asMade,
		},
		word("name", "title", "what people call it; its id with spaces where not given", `"Hind bolster"`, func(d *partDraft) *string { return &d.Name }),
		word("note", "notes remark", "anything else", `"knots in the old one"`, func(d *partDraft) *string { return &d.Note }),
	}
}

func must1[T any](k key[T]) key[T] {
	k.need = must
	return k
}

// dimensionKeys are the lines that a kind of part adds.
func dimensionKeys(k parts.Kind) []key[partDraft] {
	var keys []key[partDraft]
	for _, d := range k.Dimensions {
		keys = append(keys, key[partDraft]{
			name: d.Name, also: alsoDimension(d.Name), means: d.Means,
			take: func(r *reader, v *node, to *partDraft) { r.dimension(v, d, to) },
		})
	}
	return keys
}

// alsoDimension are words people write for a dimension's name.
func alsoDimension(name string) string {
	switch name {
	case "deep":
		return "depth thick thickness height high"
	case "wide":
		return "width breadth broad"
	case "long":
		return "length"
	case "thick":
		return "thickness deep depth"
	case "high":
		return "height deep depth wide"
	}
	return ""
}

func (r *reader) parts(n *node) {
	r.each(n, "a part", func(at int, id string, v *node) {
		d := partDraft{Part: Part{At: r.src.position(at), ID: id, Name: spoken(id), Number: 1}}
		keys := partKeys()
		kind, known := r.kindOf(v)
		if known {
			d.Kind = kind
			keys = append(keys, dimensionKeys(kind)...)
		} else if v.shape == groupShape && v.get("kind") != nil {
			v = onlyKnown(v, keys) // what else it has depends on its kind
		}
		if readGroup(r, v, aPart(kind), keys, &d) {
			r.handsOf(v, &d)
			if d.Timber == "" && r.s.Wood.Timber == "" && v.named["timber"] == nil {
				r.missing(v.at, "a part with no “timber”", "write timber = \"white oak\" here, or once for all parts under [wood]")
			}
		}
		r.s.Parts = append(r.s.Parts, d.Part)
	})
}

func aPart(k parts.Kind) string {
	if k.Name == "" {
		return "a part"
	}
	if strings.ContainsRune("aeiou", rune(k.Name[0])) {
		return "an " + k.Name
	}
	return "a " + k.Name
}

// onlyKnown is a group without the lines that are not among keys.
func onlyKnown[T any](n *node, keys []key[T]) *node {
	g := newGroup(n.at)
	for _, l := range n.lines {
		if find(keys, l.name) != nil {
			g.add(l.name, l.at, l.value)
		}
	}
	return g
}

// kindOf looks ahead for the kind, which says what dimensions a part has.
func (r *reader) kindOf(v *node) (parts.Kind, bool) {
	k := v.get("kind")
	if k == nil || k.shape != textShape {
		return parts.Kind{}, false
	}
	said := plainKind(k.text)
	for _, known := range r.kinds {
		if plainKind(known.Name) == said {
			return known, true
		}
	}
	return parts.Kind{}, false
}

// plainKind forgives capitals, and hyphens for spaces.
func plainKind(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(s), "-", " ")), " ")
}

// partKind tells of a kind that is not known.
func (r *reader) partKind(v *node, d *partDraft) {
	if d.Kind.Name != "" {
		return
	}
	if v.shape != textShape {
		r.mistaken(v, "the kind of a part", "write it between quotes, such as kind = \"reach\"")
		return
	}
	var names []string
	for _, k := range r.kinds {
		names = append(names, k.Name)
	}
	r.fault(v.at, quote(v.text)+", which is no kind of part here", cmp.Or(r.meant(plainKind(v.text), names, "write"), "see the reference for the kinds"))
}

func (r *reader) status(v *node, d *partDraft) {
	words := []string{vehicle.Proposed.String(), vehicle.Approved.String(), vehicle.Made.String(), vehicle.Fitted.String()}
	w, ok := r.word(v, words)
	for i := range words {
		if ok && words[i] == w {
			d.Status = vehicle.Status(i)
		}
	}
}

// handsOf refuses hands where there are no two sides: two of one hand is the
// costliest mistake there is.
func (r *reader) handsOf(v *node, d *partDraft) {
	if !d.handedSaid || d.Sides == Pair {
		return
	}
	at := v.named["handed"].at
	switch {
	case d.Handed == Handed && d.Number > 1:
		r.fault(at, counted(d.Number, "handed part")+" with no near and off", "write pair = true for a near and an off one (and number for how many such pairs), or take handed away")
	default:
		r.fault(at, "handed on a part that is no pair", "write pair = true, or take handed away")
	}
}

// asMade takes the sizes of a part as it was made.
func (r *reader) asMade(v *node, d *partDraft) {
	type sizes struct{ list []Size }
	var keys []key[sizes]
	for _, dim := range d.Kind.Dimensions {
		if dim.In != parts.InLength {
			continue
		}
		keys = append(keys, key[sizes]{
			name: dim.Name, also: alsoDimension(dim.Name), example: `"2 3/4"`,
			take: func(r *reader, v *node, to *sizes) {
				if s, ok := r.sized(v, dim.Name); ok {
					to.list = append(to.list, s)
				}
			},
		})
	}
	if keys == nil { // of an unknown kind, which is told elsewhere
		return
	}
	var s sizes
	readGroup(r, v, aPart(d.Kind)+" as made", keys, &s)
	d.AsMade = s.list
}

// dimension takes one dimension of a part as its line states it.
func (r *reader) dimension(v *node, dim parts.Dimension, d *partDraft) {
	switch dim.In {
	case parts.InCount:
		if n, ok := r.whole(v, 1, mostAlike); ok {
			if d.Counts == nil {
				d.Counts = map[string]int{}
			}
			d.Counts[dim.Name] = n
		}
	case parts.InDegrees:
		if a, ok := r.angle(v); ok {
			if d.Angles == nil {
				d.Angles = map[string]quantity.Angle{}
			}
			d.Angles[dim.Name] = a
		}
	default:
		if s, ok := r.statedSize(v, dim, d.Kind, d.ID); ok {
			d.Stated = append(d.Stated, s)
		}
	}
}

// Speaks reports whether the part's own line says anything of a dimension.
func (p *Part) Speaks(dimension string) bool {
	for i := range p.Stated {
		if p.Stated[i].Terms[0].Feature == dimension {
			return true
		}
	}
	_, count := p.Counts[dimension]
	_, angle := p.Angles[dimension]
	return count || angle
}
