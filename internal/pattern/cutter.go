package pattern

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"lostwood/internal/outline"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// A Cutter is the diameter of what a router cuts with; 0 where it is not told.
// It leaves every inside corner as round as it is itself.
type Cutter Length

// A CutterError says that nothing cuts with a cutter like that.
type CutterError struct{ Got Cutter }

func (e *CutterError) Error() string {
	return fmt.Sprintf("a cutter of %.4g mm: its diameter is wanted, from %g to %g mm", Length(e.Got).Millimetres(), leastCutter.Millimetres(), mostCutter.Millimetres())
}

const leastCutter, mostCutter Length = 1, 60

func (c Cutter) check() error {
	if l := Length(c); l != 0 && !(l >= leastCutter && l <= mostCutter) {
		return &CutterError{c}
	}
	return nil
}

// A handed piece of work is one that the router leaves to hand, in whole or in part.
type handed struct {
	ref, words string
}

// routed is a face as a router leaves it: the inside corners of what it cuts are
// round, and what its cutter cannot enter is on layers FOR_HAND.
func (l *layout) routed(d outline.Drawing, f parts.Face, c Cutter) (outline.Drawing, []handed) {
	wood := form.Profile(d.Paths[0].Run)
	var left []handed
	out := outline.Drawing{Circles: d.Circles, Texts: d.Texts}
	for _, p := range d.Paths {
		ref := l.refOf(p, f)
		switch {
		case p.Layer.Role == outline.Wood:
			run, n := rounded(p.Run, Length(c)/2, func(form.Point) bool { return true }, inward)
			p.Run = run
			left = cornered(left, "outline", n, c)
		case p.Layer.Role == outline.Cut && p.Closed && routable(p.Layer.Work):
			inside := func(q form.Point) bool { return wood.Distance(q) > 1e-3 }
			run, n := rounded(p.Run, Length(c)/2, inside, outward)
			if n < 0 {
				p.Layer.Role = outline.ForHand
				left = append(left, handed{ref, fmt.Sprintf("too narrow for a cutter of %s: all by hand", l.size(Length(c)))})
				break
			}
			p.Run = run
			left = cornered(left, ref, n, c)
		case p.Layer.Role == outline.Cut:
			p.Layer.Role = outline.ForHand
		}
		out.Paths = append(out.Paths, p)
	}
	return out, append(left, l.otherHandWork(f, c)...)
}

// routable work is flat-bottomed and square to its face.
func routable(w parts.Work) bool { return w < parts.Tenoning }

func cornered(left []handed, ref string, corners int, c Cutter) []handed {
	if corners <= 0 || c == 0 {
		return left
	}
	words := fmt.Sprintf("square %d inside corners, left round to %.4g mm", corners, (Length(c) / 2).Millimetres())
	if corners == 1 {
		words = strings.Replace(words, "corners", "corner", 1)
	}
	return append(left, handed{ref, words})
}

// refOf names the work that a line was drawn for.
func (l *layout) refOf(p outline.Path, f parts.Face) string {
	for _, m := range l.item.Stick.Marks(f) {
		if slices.Equal(m.Path, p.Run) {
			return m.Ref
		}
	}
	return ""
}

// otherHandWork is what is no router's work from this face, or wants a drill.
func (l *layout) otherHandWork(f parts.Face, c Cutter) []handed {
	var out []handed
	for _, op := range l.item.Stick.Operations() {
		switch d := sized(op, "diameter"); {
		case op.Face != f:
		case op.Work == parts.Tenoning:
			out = append(out, handed{op.Ref, "shoulders and cheeks by hand"})
		case op.Work == parts.Chamfering && op.Note != "from end to end":
			out = append(out, handed{op.Ref, "its stops by hand"})
		case op.Work == parts.Chamfering || op.Work == parts.Rounding:
			out = append(out, handed{op.Ref, "by hand, or with a cutter of its own shape"})
		case op.Work == parts.Boring && c > 0 && d < Length(c):
			out = append(out, handed{op.Ref, fmt.Sprintf("%s is smaller than the cutter: drill it", firm("Ø "+l.size(d)))})
		}
	}
	return out
}

// A corner's way is whether the wood stands outside of it or inside.
type way int

const (
	outward way = iota // the run goes round what is cut away
	inward             // it goes round what is left
)

// rounded gives those corners of a closed run that a cutter cannot come into its
// radius, and counts them; the count is -1 where the run is too narrow for it.
func rounded(run []form.Vertex, radius Length, inside func(form.Point) bool, w way) ([]form.Vertex, int) {
	if radius <= 0 {
		return run, 0
	}
	if tight(run, radius, w) {
		return run, -1
	}
	p := form.Profile(run)
	if p.Area() < 0 {
		run = p.Reversed()
	}
	n, corners := len(run), 0
	short := make([]Length, n) // what each corner takes off its two edges
	for i, v := range run {
		before := run[(i+n-1)%n]
		turn := turnAt(before, v, run[(i+1)%n])
		if w == inward {
			turn = -turn
		}
		if before.Bulge != 0 || v.Bulge != 0 || turn <= 1e-6 || !inside(v.Point) {
			continue
		}
		short[i] = radius * Length(math.Tan(turn/2))
		corners++
	}
	var out []form.Vertex
	for i, v := range run {
		next := run[(i+1)%n]
		if v.Bulge == 0 && short[i]+short[(i+1)%n] > distance(v.Point, next.Point)+1e-9 {
			return run, -1
		}
		if short[i] == 0 {
			out = append(out, v)
			continue
		}
		before := run[(i+n-1)%n]
		turn := turnAt(before, v, next)
		out = append(
			out,
			form.Vertex{Point: toward(v.Point, before.Point, short[i]), Bulge: math.Tan(turn / 4)},
			form.Vertex{Point: toward(v.Point, next.Point, short[i])},
		)
	}
	return out, corners
}

// tight reports whether a pocket is narrower than the cutter.
func tight(run []form.Vertex, radius Length, w way) bool {
	lo, hi := form.Profile(run).Bounds()
	return w == outward && min(hi.X-lo.X, hi.Y-lo.Y) < 2*radius-1e-9
}

// turnAt is the angle by which a run turns to the left at a corner.
func turnAt(before, at, next form.Vertex) float64 {
	ax, ay := float64(at.X-before.X), float64(at.Y-before.Y)
	bx, by := float64(next.X-at.X), float64(next.Y-at.Y)
	return math.Atan2(ax*by-ay*bx, ax*bx+ay*by)
}

// toward is the place a distance from a on the way to b.
func toward(a, b form.Point, by Length) form.Point {
	share := by / distance(a, b)
	return form.Point{X: a.X + (b.X-a.X)*share, Y: a.Y + (b.Y-a.Y)*share}
}

// WriteHandWork writes what a router leaves to hand on an item, face by face, in
// plain words.
func WriteHandWork(w io.Writer, v *vehicle.Vehicle, item *vehicle.Item, c Cutter) error {
	if err := shaped(item); err != nil {
		return fmt.Errorf("hand work of %s: %w", item.Name, err)
	}
	if err := c.check(); err != nil {
		return err
	}
	in := *v // as in the router's files
	in.Unit = quantity.Millimetres
	l := &layout{teller: teller{&in, item}}
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n%s\n", l.number(), l.stock(), l.issue())
	fmt.Fprintf(&b, "Millimetres. One drawing for each face, as seen from that face.\n")
	if c > 0 {
		fmt.Fprintf(&b, "Drawn for a cutter of %.4g mm: inside corners have its radius.\n", Length(c).Millimetres())
	} else {
		fmt.Fprintf(&b, "No cutter was named: inside corners are drawn square.\n")
	}
	faces := WorkedFaces(item)
	if len(faces) == 0 {
		fmt.Fprintf(&b, "\nNothing is worked on any face.\n")
	}
	for _, f := range faces {
		fmt.Fprintf(&b, "\n%s\n", capital(item.FaceWords(f)))
		_, left := l.routed(outline.Face(item.Stick, f), f, c)
		for _, h := range left {
			fmt.Fprintf(&b, "  %s: %s\n", h.ref, h.words)
		}
		if len(left) == 0 {
			fmt.Fprintf(&b, "  nothing is left to hand\n")
		}
	}
	_, err := io.WriteString(w, strings.ReplaceAll(b.String(), "\u00a0", " "))
	return err
}
