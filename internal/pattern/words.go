package pattern

import (
	"fmt"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A teller puts the figures of one item into words.
type teller struct {
	v    *vehicle.Vehicle
	item *vehicle.Item
}

// size is a length in the vehicle's unit.
func (t teller) size(l Length) string { return firm(quantity.Format(l, t.v.Unit)) }

// both is a length in the vehicle's unit and, where that is not millimetres, in
// those too: a drill or a gauge set in either must come out alike.
func (t teller) both(l Length) string {
	if t.v.Unit == quantity.Millimetres {
		return t.size(l)
	}
	return t.size(l) + " (" + firm(quantity.Format(l, quantity.Millimetres)) + ")"
}

// doubtful reports whether nobody may take a size for known.
func doubtful(k quantity.Known) bool { return k >= quantity.Guess }

// standing is a size with its give or take and how it is known.
func (t teller) standing(s quantity.Size) string {
	words := t.size(s.Value) + giveOrTake(s, t.v.Unit)
	if doubtful(s.Known) {
		return words + ", " + strings.ToUpper(s.Known.String())
	}
	return words + ", " + s.Known.String()
}

// giveOrTake is the tail of a size's words, empty where there is none to tell.
func giveOrTake(s quantity.Size, u quantity.Unit) string {
	_, tail, ok := strings.Cut(s.Words(u), ", give or take ")
	if !ok {
		return ""
	}
	return ", give or take " + firm(tail)
}

// neighbour is the face along the lower edge of a face as it is drawn.
func neighbour(f parts.Face) parts.Face {
	switch f {
	case parts.FirstEnd, parts.SecondEnd:
		return parts.Under
	}
	long := parts.LongFaces()
	return long[(int(f)+1)%len(long)]
}

// gauged is how far a place stands from the truer of the two edges that run
// along its face, and which face meets the face there.
func (t teller) gauged(f parts.Face, at form.Point, high Length) (Length, parts.Face) {
	low := neighbour(f)
	up := low.Opposite()
	if s := t.item.Stick; up == s.FaceSide || up == s.FaceEdge {
		return high - at.Y, up
	}
	return at.Y, low
}

// operation is an operation in words: what is done, its sizes, and its note.
func (t teller) operation(op parts.Operation) string {
	var b strings.Builder
	switch what, work := t.item.WorkWords(op), op.Work.String(); {
	case strings.HasPrefix(op.Ref, what):
		b.WriteString(work) // its name says what it is
	case op.Work == parts.Boring || strings.HasPrefix(what, work[:4]):
		b.WriteString(what) // the word is in it already, or nobody needs it
	default:
		b.WriteString(work + ": " + what)
	}
	through := true
	for _, m := range op.Sizes {
		fmt.Fprintf(&b, ", %s %s", m.Name, t.both(m.Value))
		if m.Name == "deep" || m.Name == "depth" {
			through = false
		}
	}
	if through && (op.Work == parts.Boring || op.Work == parts.Mortising) {
		b.WriteString(", through")
	}
	if op.Note != "" {
		b.WriteString("; " + op.Note)
	}
	return b.String()
}

// brief is an operation as it stands beside the work on the drawing, under the
// name given.
func (t teller) brief(op parts.Operation, what string) string {
	first := what
	var rest []string
	through := op.Work == parts.Boring || op.Work == parts.Mortising
	for _, m := range op.Sizes {
		switch m.Name {
		case "diameter":
			first = strings.TrimSpace(first + " " + firm("Ø "+t.size(m.Value)))
		case "deep", "depth":
			through = false
			rest = append(rest, firm(t.size(m.Value)+" deep"))
		default:
			rest = append(rest, firm(m.Name+" "+t.size(m.Value)))
		}
	}
	if through {
		rest = append(rest, "through")
	}
	if first != "" {
		rest = append([]string{first}, rest...)
	}
	return strings.Join(rest, ", ")
}

// hand is NEAR or OFF, or nothing.
func (t teller) hand() string { return strings.ToUpper(t.item.Hand.String()) }

// number is the item's number and name.
func (t teller) number() string { return fmt.Sprintf("%d  %s", t.item.Number, t.item.Name) }

// stock is timber and number off, with the hand.
func (t teller) stock() string {
	s := t.item.Timber + " · " + fmt.Sprintf("%d off", t.item.NumberOff)
	if h := t.hand(); h != "" {
		s += " · " + h
	}
	return s
}

// issue is what tells this sheet from an older one.
func (t teller) issue() string {
	s := fmt.Sprintf("issue %s · %s · %s", t.v.Issue, t.v.Date.Format("2 January 2006"), t.item.Status)
	if hash := t.v.Hash; hash != "" {
		s += " · survey " + hash[:min(8, len(hash))]
	}
	return s
}

// feature finds what the vehicle knows of where a piece of work stands.
func (t teller) feature(ref string) *vehicle.Feature {
	for i := range t.item.Features {
		if t.item.Features[i].Ref == ref {
			return &t.item.Features[i]
		}
	}
	return nil
}

// runOut is the angle at which the grain, laid along the chord, runs out of a
// felloe at its ends; 0 for any other part.
func (t teller) runOut() quantity.Angle {
	f, ok := t.item.Shape.(parts.Felloe)
	if !ok || f.Felloes < 1 {
		return 0
	}
	return 180 * quantity.Degree / quantity.Angle(f.Felloes)
}

// capital makes a sentence begin with a capital.
func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
