package drawing

import (
	"math"

	"lostwood/internal/outline"
	"lostwood/internal/sheet"
	"lostwood/internal/sight"
	"lostwood/parts/form"
)

// An elevation is the whole vehicle seen from one side, or from above.
type elevation struct {
	name    string
	view    sight.View
	scene   *sight.Scene
	lines   []sight.Line
	shows   []sight.Showing // by body
	box     outline.Box     // of all that is seen, and the ground where it is drawn
	grounds bool
	owners  []*thing // by body
}

// towards is a direction in the vehicle: forward, to the near side, up.
func towards(x, y, z float64) form.Dir { return form.Dir{X: x, Y: y, Z: z} }

// elevations are the four views: from above, of the near side, of the fore and of
// the hind end. The fore end of the vehicle is to the left in the first two.
func elevations(things []*thing) []elevation {
	all := []elevation{
		{name: "plan, from above", view: sight.View{Right: towards(-1, 0, 0), Up: towards(0, -1, 0)}},
		{name: "near side", view: sight.View{Right: towards(-1, 0, 0), Up: towards(0, 0, 1)}, grounds: true},
		{name: "fore end", view: sight.View{Right: towards(0, 1, 0), Up: towards(0, 0, 1)}, grounds: true},
		{name: "hind end", view: sight.View{Right: towards(0, -1, 0), Up: towards(0, 0, 1)}, grounds: true},
	}
	var bodies []*sight.Body
	var owners []*thing
	for _, t := range things {
		for _, b := range t.bodies {
			bodies, owners = append(bodies, b), append(owners, t)
		}
	}
	for i := range all {
		e := &all[i]
		e.owners = owners
		e.scene = sight.Look(e.view, bodies)
		for _, l := range e.scene.Lines() {
			if l.Sight == sight.Seen {
				e.lines = append(e.lines, l)
			}
		}
		const tried = 8 // millimetres from one place to the next
		e.shows = e.scene.Showings(tried)
		e.measure()
	}
	return all
}

func (e *elevation) measure() {
	for i, l := range e.lines {
		b := sheet.Line{Run: l.Path}.Bounds()
		if i == 0 {
			e.box = b
		}
		e.box = e.box.With(b)
	}
	// The ground is at 0; a vehicle told from elsewhere may reach below it.
	if e.grounds = e.grounds && e.box.Min.Y > -1; e.grounds {
		e.box.Min.Y = 0
	}
}

// on is where a place of the view is on paper, with the lower left of the
// elevation's box at a place.
func (e *elevation) on(p form.Point, s Scale, from form.Point) form.Point {
	return at(from.X+s.of(p.X-e.box.Min.X), from.Y+s.of(p.Y-e.box.Min.Y))
}

func (e *elevation) origin(s Scale, from form.Point) form.Point { return e.on(form.Point{}, s, from) }

// hatchApart is from one line of the irons' hatching to the next, on paper.
const hatchApart = 0.8

// paint draws the elevation; the irons and bolts are hatched.
func (b board) elevation(e *elevation, s Scale, from form.Point, inked inking) {
	origin := e.origin(s, from)
	if inked == full {
		chosen := func(body int) bool { return e.owners[body].sort != newTimber }
		for _, l := range e.scene.Hatching(hatchApart*Length(s), math.Pi/4, chosen) {
			b.Lines = append(b.Lines, sheet.Line{Pen: sheet.Iron, Run: placed(l.Path, s, origin)})
		}
	}
	for _, l := range e.lines {
		b.Lines = append(b.Lines, sheet.Line{Pen: sheet.Wide, Run: placed(l.Path, s, origin)})
	}
	if e.grounds {
		b.Straight(sheet.Narrow, at(from.X-6, from.Y), at(from.X+s.of(e.box.Width())+6, from.Y))
	}
}

// inking says how much of a drawing is drawn.
type inking int

const (
	rough inking = iota // enough to see whether it fits
	full
)

// best is where a thing shows itself best in the elevation: on a face, or where
// none of its faces shows enough, on the longest of its edges in sight.
func (e *elevation) best(t *thing) sight.Showing {
	var out sight.Showing
	for i, o := range e.owners {
		if o == t && e.shows[i].Room > out.Room {
			out = e.shows[i]
		}
	}
	if out.Room > 0 {
		return out
	}
	const barely = 0.5
	longest := Length(0)
	for _, l := range e.lines {
		if long := l.Path.Long(); e.owners[l.Body] == t && long > longest {
			a, b := l.Path[0], l.Path[1]
			longest, out = long, sight.Showing{At: at((a.X+b.X)/2, (a.Y+b.Y)/2), Room: barely}
		}
	}
	return out
}
