package survey

import "slices"

const jointMeans = "Wood joined to wood, or cut for an iron. Write [[joint]] on a line before each. " +
	"A joint is one of tenon, housing, notch or mortise; that line names the part that is cut."

// A jointSort is a kind of joint and the lines it has.
type jointSort struct {
	kind        JointKind
	means, with string // and the line that names what it meets
	must, may   []string
}

func jointSorts() []jointSort {
	return []jointSort{
		{TenonJoint, "a tenon: the part that has it", "into", []string{"long", "wide", "thick"}, []string{"clear"}},
		{HousingJoint, "a housing: the part that is cut", "for", []string{"deep"}, []string{"clear"}},
		{NotchJoint, "a notch: the part that is cut", "for", nil, []string{"deep", "clear"}},
		{MortiseJoint, "a mortise: the part that is cut; through it, where deep is not given", "for", nil, []string{"deep", "clear"}},
	}
}

// jointEnds are the words for a tenon's end, by the way its part runs.
var jointEnds = [...]string{"near", "off", "fore", "hind", "lower", "upper", "both"}

// A jointDraft is a joint while its lines are read.
type jointDraft struct {
	Joint
	ofAt, withAt, endAt Position
}

// jointKeys are the lines of a joint of one kind; of no kind, all.
func jointKeys(kind JointKind) []key[jointDraft] {
	var keys []key[jointDraft]
	for _, s := range jointSorts() {
		keys = append(keys, key[jointDraft]{
			name: string(s.kind), example: `"cross-bar"`, means: s.means,
			take: func(r *reader, v *node, d *jointDraft) {
				d.Kind, d.ofAt = s.kind, r.at(v)
				d.Of, _ = r.reference(v)
			},
		})
	}
	with := func(name, means, example string) key[jointDraft] {
		return key[jointDraft]{
			name: name, example: example, means: means,
			take: func(r *reader, v *node, d *jointDraft) {
				d.withAt = r.at(v)
				d.With, _ = r.reference(v)
			},
		}
	}
	if kind == "" || kind == TenonJoint {
		keys = append(keys, with("into", "of a tenon: the part with the mortise", `"sill"`), endKey())
	}
	if kind != TenonJoint {
		keys = append(keys, with("for", "of the others: the part or iron that it is cut for", `"standard"`))
	}
	for _, name := range []string{"long", "wide", "thick", "deep", "clear"} {
		if kind == "" || slices.Contains(sizesOfJoint(kind), name) {
			keys = append(keys, jointSizeKey(name))
		}
	}
	return keys
}

func sizesOfJoint(kind JointKind) []string {
	for _, s := range jointSorts() {
		if s.kind == kind {
			return append(slices.Clone(s.must), s.may...)
		}
	}
	return nil
}

func endKey() key[jointDraft] {
	return key[jointDraft]{
		name: "end", example: `"both"`, means: "of a tenon: on which end it is: " + listed(jointEnds[:], "or"),
		take: func(r *reader, v *node, d *jointDraft) {
			if w, ok := r.word(v, jointEnds[:]); ok {
				d.End, d.endAt = w, r.at(v)
			}
		},
	}
}

func jointSizeKey(name string) key[jointDraft] {
	means, also, example := "", "", `"1 1/2"`
	switch name {
	case "long":
		means, also = "of a tenon: how far it stands out", "length"
	case "wide":
		means, also = "of a tenon: across its wider side", "width"
	case "thick":
		means, also, example = "of a tenon: across its narrower side", "thickness", `"1/2"`
	case "deep":
		means, also, example = "how deep the cut goes", "depth", `"1/2"`
	case "clear":
		means, also, example = "how much wider the cut is than what goes in it", "clearance gap", `"1/16"`
	}
	return key[jointDraft]{
		name: name, also: also, means: means, example: example,
		take: func(r *reader, v *node, d *jointDraft) {
			s := positive
			if name == "clear" {
				s = zeroToo
			}
			if rd, ok := r.reading(v, r.s.Doubts.of(usual(name)), s); ok {
				d.Sizes = append(d.Sizes, Size{Name: name, Reading: rd})
			}
		},
	}
}

func (r *reader) joints(n *node) {
	for _, v := range n.items {
		d := jointDraft{Joint: Joint{At: r.at(v)}}
		sort, ok := r.jointSort(v)
		if !ok || !readGroup(r, v, "a "+string(sort.kind), jointKeys(sort.kind), &d) {
			continue
		}
		if v.named[sort.with] == nil {
			r.missing(v.at, "a "+string(sort.kind)+" with no "+quote(sort.with), "write "+sort.with+" = \"sill\", or whatever it meets")
		}
		if sort.kind == TenonJoint && v.named["end"] == nil {
			r.missing(v.at, "a tenon with no “end”", "write end = \"both\", or which end has it")
		}
		for _, s := range sort.must {
			if v.named[s] == nil {
				r.missing(v.at, "a "+string(sort.kind)+" with no "+quote(s), "write "+s+" = \"1/2\", or whatever it is")
			}
		}
		if d.Of != "" && d.Of == d.With {
			r.fault(v.named[sort.with].value.at, quote(d.With)+" joined to itself", "write what it meets")
		}
		r.jointDrafts = append(r.jointDrafts, d)
		r.s.Joints = append(r.s.Joints, d.Joint)
	}
}

// jointSort looks ahead for the kind of joint, which says what lines it has.
func (r *reader) jointSort(v *node) (jointSort, bool) {
	if v.shape != groupShape {
		r.mistaken(v, "a joint", "write [[joint]] on a line of its own, and its lines below")
		return jointSort{}, false
	}
	var names []string
	var said []jointSort
	for _, s := range jointSorts() {
		names = append(names, string(s.kind))
	}
	for _, l := range v.lines {
		if i := slices.Index(names, l.name); i >= 0 {
			said = append(said, jointSorts()[i])
		}
	}
	switch {
	case len(said) == 1:
		return said[0], true
	case len(said) == 0:
		r.missing(v.at, "a joint that does not say what it is", "write "+listed(names, "or")+" and the part that is cut: tenon = \"cross-bar\"")
	default:
		r.fault(v.named[string(said[1].kind)].at, "a joint that is a "+string(said[0].kind)+" and a "+string(said[1].kind), "write two joints")
	}
	return jointSort{}, false
}

// reference takes the id of a thing; whether there is such a thing is seen later.
func (r *reader) reference(v *node) (string, bool) {
	s, ok := r.text(v)
	if !ok {
		return "", false
	}
	if !isID(s) {
		r.fault(v.at, quote(s)+", which is no id", "write the id of an iron or a part")
		return "", false
	}
	return s, true
}
