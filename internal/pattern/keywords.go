package pattern

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// wideDoubt is the give or take from which wood is left long, or undrilled, until
// it is offered up (common practice, no source).
const wideDoubt = 1.5 * quantity.Millimetre

// left reports whether wood is left, or work undone, until the part is offered up.
func left(s quantity.Size) bool { return doubtful(s.Known) || s.Doubt >= wideDoubt }

// opening sets the name, the sizes and the map.
func (c *column) opening() {
	c.say(c.number(), title, outline.Bold, c.left, c.right)
	c.y -= 1.5
	c.say(c.stock(), large, outline.Plain, c.left, c.right)
	c.say(c.v.Name+" · "+c.issue(), normal, outline.Plain, c.left, c.right)
	if names := c.makes(); names != "" {
		c.say("Makes: "+names, normal, outline.Plain, c.left, c.right)
	}
	for _, n := range c.item.Notes {
		c.say(n, normal, outline.Plain, c.left, c.right)
	}
	c.head("Sizes")
	for _, s := range c.item.Sizes {
		words := c.both(s.Value) + giveOrTake(s.Size, c.v.Unit) + " · " + s.Known.String()
		if s.By != "" {
			words += ": " + s.By
		}
		if doubtful(s.Known) {
			words = "? " + strings.ToUpper(s.Known.String()) + ": " + words
		}
		c.enter(entry{s.Name, words, normal, doubtful(s.Known)})
	}
	if words := c.blankWords(); words != "" {
		c.enter(entry{name: "blank", words: words, height: normal})
	}
	c.enter(entry{name: "rings", words: c.rings() + " (common practice)", height: normal})
	for _, words := range c.slopes() {
		c.say(words, normal, outline.Plain, c.left, c.right)
	}
	c.say(fmt.Sprintf("Sizes are for wood at %.3g %% moisture.", float64(c.v.Moisture.Service)), normal, outline.Plain, c.left, c.right)
	c.head("Faces and sheets")
	c.faceWords()
	c.chart()
}

// blankWords says what a curved or bent part is got out of.
func (t teller) blankWords() string {
	b := t.item.Stick.Body.Blank()
	how := ""
	switch b.Making {
	case parts.Curved:
		how = "sawn to the curve out of "
	case parts.Steamed:
		how = "steamed and bent from straight stock "
	default:
		return ""
	}
	return how + t.both(b.Long) + " long, " + t.both(b.Wide) + " by " + t.both(b.Deep) + ", finished"
}

// makes names the timbers of the vehicle that the item makes.
func (c *column) makes() string {
	var names []string
	for _, p := range c.item.Parts {
		names = append(names, p.Name)
	}
	slices.Sort(names)
	return strings.Join(slices.Compact(names), ", ")
}

func (c *column) faceWords() {
	s := c.item.Stick
	words := fmt.Sprintf("Face side: %s. Face edge: %s. The faces are unfolded, each meeting the next; seen from outside the wood, the %s to the left.",
		c.item.FaceWords(s.FaceSide), c.item.FaceWords(s.FaceEdge), c.item.FaceWords(parts.FirstEnd))
	if len(c.faces.Plain) > 0 {
		var plain []string
		for _, f := range c.faces.Plain {
			plain = append(plain, c.item.FaceWords(f))
		}
		words += " Plain, so not drawn: " + strings.Join(plain, ", ") + "."
	}
	c.say(words, normal, outline.Plain, c.left, c.right)
	c.joining()
	if len(c.rods) > 0 {
		words := "R1 is the rod, with every place along the wood: paste it on a lath and carry it to the timber."
		if c.item.Stick.Body.Blank().Making == parts.Steamed {
			words = "R1 is the rod of the straight blank: its bends and its work as they stand before it is bent, along its middle line. Bore after bending; the stations tell where the bends come."
		}
		c.say(words, normal, outline.Plain, c.left, c.right)
	}
}

// joining says how the sheets are joined.
func (c *column) joining() {
	if c.strips() && c.grid.cols == 1 {
		c.say(c.rolled(), normal, outline.Plain, c.left, c.right)
	} else if skipped := c.grid.rows*c.grid.cols - c.printedCount(); c.grid.rows*c.grid.cols > 1 {
		words := "Trim each sheet along its right and upper joining lines. Lay it over the sheet to its right and the sheet above it, and shift it until every diamond is whole."
		if skipped > 0 {
			words += " Sheets struck through on the map have nothing to set out but straight edges, and are not printed: lay the next by the figure along its foot, with a rule, and a straight edge along the wood."
		}
		c.say(words, normal, outline.Plain, c.left, c.right)
	}
}

// printedCount is how many full-size sheets are printed.
func (l *layout) printedCount() int {
	n := 0
	for _, row := range l.needed {
		for _, needed := range row {
			if needed {
				n++
			}
		}
	}
	return n
}

// workList sets every operation, in the order a joiner does them.
func (c *column) workList() {
	ops := c.item.Stick.Operations()
	if len(ops) == 0 {
		return
	}
	slices.SortStableFunc(ops, func(a, b parts.Operation) int { return cmp.Compare(a.Work, b.Work) })
	c.head("Work, in order")
	for len(ops) > 0 {
		n := 1 // what is done at one place stands together
		for n < len(ops) && ops[n].Ref == ops[0].Ref && ops[n].Face == ops[0].Face && ops[n].At == ops[0].At {
			n++
		}
		c.workEntry(ops[:n])
		ops = ops[n:]
	}
}

func (c *column) workEntry(ops []parts.Operation) {
	var does []string
	for _, op := range ops {
		does = append(does, c.operation(op))
	}
	words := capital(c.item.FaceWords(ops[0].Face)) + ": " + strings.Join(does, ". Also ") + "."
	at, queried := c.placed(ops[0])
	if at != "" {
		words += " Centre " + at + "."
	}
	c.enter(entry{ops[0].Ref, words, small, queried})
}

// placed says where an operation stands, and whether that is a guess.
func (c *column) placed(op parts.Operation) (words string, queried bool) {
	var all []string
	for _, s := range c.stands(op) {
		all = append(all, s.words)
		queried = queried || s.queried
	}
	return strings.Join(all, "; "), queried
}

// heed sets what to leave until the part is offered up, what is doubtful, and the cautions.
func (c *column) heed() {
	c.head("Before you cut")
	for _, words := range c.leave() {
		c.say(words, normal, outline.Bold, c.left, c.right)
		c.y -= 0.8
	}
	// Short grain from about 15 degrees on is weak (own rule).
	if a := c.runOut().Degrees(); a > 15 {
		c.say(fmt.Sprintf("Short grain: laid along the chord, the grain runs out at %.0f° at both ends. Choose wood whose grain bends with the curve, and turn the pattern on the board only end for end.", a), normal, outline.Plain, c.left, c.right)
		c.y -= 0.8
	}
	for _, f := range c.findings() {
		c.say(capital(f.Concern.String())+": "+f.Says, normal, outline.Plain, c.left, c.right)
		c.y -= 0.8
	}
	for _, words := range cautions {
		c.room(Length(len(c.wrap(words, small, outline.Plain, c.right-c.left))) * lineStep * small)
		c.say(words, small, outline.Plain, c.left, c.right)
		c.y -= 0.8
	}
}

var cautions = [...]string{
	"Print at full size, never fitted to the page. Measure both bars on every sheet: 100 mm, out by no more than a quarter of a millimetre. Then measure the whole length to the check mark: paper grows with damp.",
	"The wood ends at the middle of the wide line. Full circles and lines: work is entered from this face. Dashed: it comes out here, or lies under the surface. Whatever stands in a frame of long dashes with a query is not known: prove it on the irons first.",
	"Square every centre round to the far face and bore from both, or back the wood. Offer the part up to its irons before the last cut.",
	"Guard machines, hold short and curved pieces in a jig, keep blades and bits away from hands, draw off dust and wear a mask; old paint may hold lead. Follow your local codes, and call on licensed people where they ask for it. This pattern gives shape, not strength.",
}

// leave lists what is to be left long or undrilled until the part is offered up.
func (c *column) leave() []string {
	var long, holes, out []string
	for _, s := range c.item.Sizes {
		if left(s.Size) {
			long = append(long, s.Name)
		}
	}
	for _, f := range c.item.Features {
		if left(f.Along) || left(f.Across) {
			holes = append(holes, f.Ref)
		}
	}
	if len(long) > 0 {
		out = append(out, "Leave full until offered up: "+strings.Join(long, ", ")+".")
	}
	if len(holes) > 0 {
		out = append(out, "Leave uncut until offered up to the irons: "+strings.Join(holes, ", ")+".")
	}
	return out
}

// findings are what the vehicle has to say about this item.
func (c *column) findings() []vehicle.Finding {
	about := map[string]bool{c.item.ID: true, c.item.Name: true}
	for _, p := range c.item.Parts {
		about[p.ID], about[p.Name] = true, true
	}
	var out []vehicle.Finding
	for _, f := range c.v.Findings {
		if about[f.Subject] {
			out = append(out, f)
		}
	}
	return out
}
