// Package fit offers a vehicle up before anything is cut: every timber, iron and
// bolt as a solid in its place. It says whether bolts are long enough and their
// holes in line, what is in the way of what, what the seasons do, what to leave
// long until it is held to its place, in what order it all goes together, and how
// far what moves can move.
//
// Lengths are millimetres in the vehicle's frame: x forward, y to the near side, z
// up. Irons are plain bars with their holes; bends, welds and the arms of axles are
// not known. Nothing here judges whether a vehicle is safe: it reports figures, and
// a competent person judges them. Strength and loads are not here.
package fit

import (
	"fmt"
	"strings"

	"lostwood/internal/movement"
	"lostwood/internal/quantity"
	"lostwood/internal/solid"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts/form"
)

// Doubts tell how well the distance of two marks is known.
type Doubts interface {
	// Apart is how far b lies beyond a, with its give or take.
	Apart(a, b vehicle.Mark) quantity.Size
}

// A Report is what offering up comes to.
type Report struct {
	Remarks []vehicle.Remark // worst first
	Steps   []Step           // an order in which it goes together
	Bolts   []Bolt           // what each bolt wants
	Leave   []Leave          // what to leave on, or unbored, until offered up

	Counts Counts
}

// Counts are how much was looked at.
type Counts struct {
	Timbers, Irons, Fastenings int
	Pairs                      int // of solids near enough to each other to be looked at
	Moves                      int
	Unplaced                   []string // timbers and irons left out, because nothing says where they stand or how large they are
}

// A check is one offering up, while it is done.
type check struct {
	vehicle     *vehicle.Vehicle
	doubts      Doubts // may be nil
	seasons     *movement.Report
	things      []*thing
	byID        map[string]*thing
	runs        []*run
	near        []pair
	inEachOther map[pair]bool // told as an overlap already
	fields      map[*thing]*solid.Solid
	report      Report
}

// Of offers the vehicle up. Doubts may be nil: then nothing is said of what to
// leave long. The error is a moisture that no wood has.
func Of(v *vehicle.Vehicle, woods timber.Catalogue, doubts Doubts) (*Report, error) {
	seasons, err := movement.Of(v, woods)
	if err != nil {
		return nil, err
	}
	c := &check{vehicle: v, doubts: doubts, seasons: seasons, byID: map[string]*thing{}, inEachOther: map[pair]bool{}, fields: map[*thing]*solid.Solid{}}
	c.assemble()
	c.count()
	c.near = c.neighbours()
	c.clashes()
	c.holes()
	c.contacts()
	c.lengths()
	c.distances()
	c.woodLeft()
	c.season()
	c.leaveEnds()
	c.leaveHoles()
	c.goTogether()
	c.moves()
	c.settle()
	return &c.report, nil
}

func (c *check) count() {
	n := &c.report.Counts
	for _, t := range c.things {
		switch {
		case t.wood():
			n.Timbers++
		case t.iron != nil:
			n.Irons++
		default:
			n.Fastenings++
		}
	}
	for _, p := range c.vehicle.Parts {
		if p.Run != vehicle.Round && p.Status != vehicle.LeftOpen && c.byID[p.ID] == nil {
			n.Unplaced = append(n.Unplaced, lower(p.Name))
		}
	}
	for _, i := range c.vehicle.Irons {
		if i.Run != vehicle.Round && c.byID[i.ID] == nil {
			n.Unplaced = append(n.Unplaced, lower(i.Name))
		}
	}
}

func (c *check) say(r vehicle.Remark) { c.report.Remarks = append(c.report.Remarks, r) }

// show is a length in the survey's unit.
func (c *check) show(l quantity.Length) string { return quantity.Format(l, c.vehicle.Unit) }

func placeOf(p form.Vec) *vehicle.Spot { return &vehicle.Spot{p.X, p.Y, p.Z} }

// the names something within a sentence: the near reach, cross bar 2.
func the(name string) string {
	if name == "" || strings.HasPrefix(name, "fastening ") || name[len(name)-1] >= '0' && name[len(name)-1] <= '9' {
		return name
	}
	return fmt.Sprintf("the %s", name)
}

func (t *thing) the() string { return the(t.name) }

// listed joins names as people say them.
func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
