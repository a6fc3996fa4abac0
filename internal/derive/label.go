package derive

import (
	"fmt"
	"strings"

	"lostwood/internal/vehicle"
)

// label names an observation within a sentence: a reading by what it tells, a
// statement as it is written, an assumption by what it holds for true.
func (n *network) label(t note) string {
	if t.why != "" {
		why := t.why
		t.why = ""
		return fmt.Sprintf("%s (%s)", n.label(t), why)
	}
	switch t.sort {
	case sizeRead:
		if hole, ok := strings.CutSuffix(t.what, " across"); ok {
			return fmt.Sprintf("where %s of %s is across it", hole, the(t.member))
		}
		return asks(t.member, t.what)
	case holeRead:
		return fmt.Sprintf("%s of %s", t.what, the(t.member))
	case shearRead:
		return fmt.Sprintf("the bruise on the shank of fastening %s at the face of %s", t.subject, n.called(t.what))
	case pointRead:
		return fmt.Sprintf("point %s on the arc of %s", t.what, the(t.member))
	case gripRead:
		if t.what == "window" {
			return "what the bolt of fastening " + t.subject + " allows"
		}
		return "the grip of fastening " + t.subject
	case clipRead:
		return "the clip of fastening " + t.subject
	case stated:
		return fmt.Sprintf("%q", t.what)
	case touching:
		a, b, _ := strings.Cut(t.what, " and ")
		return fmt.Sprintf("%s and %s touch at fastening %s", n.called(a), n.called(b), t.subject)
	case inLine:
		iron, hole, _ := strings.Cut(t.what, " hole ")
		return fmt.Sprintf("hole %s of %s lies in line with fastening %s", hole, n.called(iron), t.subject)
	case central:
		return fmt.Sprintf("fastening %s is in the middle of %s", t.subject, n.called(t.what))
	case twin:
		return the(t.member) + likeness(t.what, "the near one")
	case ofWheel:
		figure, of, _ := strings.Cut(t.what, " of ")
		return fmt.Sprintf("%s has the %s of %s", the(t.member), strings.ReplaceAll(figure, "-", " "), n.called(of))
	case inRow:
		return the(t.member) + likeness(t.what, "the one before it")
	}
	return fmt.Sprintf("%s %s", n.called(t.subject), t.what)
}

// of tells of which of a pair or a row a statement speaks here, where it speaks
// of each by itself and does not say so.
func (t note) of() string {
	if t.sort != stated || t.member == nil || strings.Contains(t.what, t.member.id) {
		return ""
	}
	var which []string
	if t.member.hand != vehicle.Alike {
		which = append(which, t.member.hand.String())
	}
	if t.member.rows() > 1 {
		which = append(which, fmt.Sprint(t.member.row+1))
	}
	if len(which) == 0 {
		return ""
	}
	return " (" + strings.Join(which, " ") + ")"
}

// called names a member by its id.
func (n *network) called(id string) string {
	if m := n.byID[id]; m != nil {
		return the(m)
	}
	return id
}

// likeness says in what two of a family are taken to be alike.
func likeness(what, other string) string {
	if way, ok := strings.CutPrefix(what, "place "); ok {
		return fmt.Sprintf(" stands, %s, as %s does", way, other)
	}
	if strings.HasPrefix(what, "hole ") {
		return fmt.Sprintf(" has %s where %s has it", what, other)
	}
	switch what {
	case "long", "wide", "deep", "thick", "high":
		return fmt.Sprintf(" is as %s as %s", what, other)
	}
	return fmt.Sprintf(" has the %s of %s", strings.ReplaceAll(what, "-", " "), other)
}

// kindWords says in general what is taken for granted.
func (s sort) kindWords() string {
	switch s {
	case touching:
		return "faces taken to touch"
	case inLine:
		return "bolts taken to lie in line with their holes"
	case central:
		return "bolts taken to lie in the middle of their timbers"
	case twin:
		return "near and off taken to be alike"
	case inRow:
		return "those of a row taken to be alike"
	case midway:
		return "things taken to stand on the middle line of the vehicle"
	case ofWheel:
		return "wheels taken to have the sizes of their irons, felloes and twins"
	case frame:
		return "the survey's zero"
	}
	return ""
}
