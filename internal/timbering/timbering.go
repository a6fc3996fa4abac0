// Package timbering takes what a survey says of timber to those who reckon
// with it: its own woods to the list of woods, and what it says of making, the
// yard, prices, rings, boards and splinters to the cutting list and the choice
// of woods. What cannot be is told with its place in the survey. Reading the
// file is package survey's, reckoning that of timber and cutlist.
package timbering

import (
	"cmp"
	"slices"
	"strings"

	"lostwood/internal/cutlist"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

// Woods returns the published woods with the survey's own laid over them. The
// error is a *[survey.Faults].
func Woods(s *survey.Survey, published timber.Catalogue) (timber.Catalogue, error) {
	f := faults{survey: s}
	woods := published
	for _, t := range s.Timbers {
		with, err := woods.With(t.Wood)
		if err != nil {
			f.add(t.At, quantity.Quote(t.Wood.Common)+", of which a figure cannot be: "+err.Error(), "mend it")
			continue
		}
		woods = with
	}
	for _, t := range s.Timbers { // once all are there: two of them can share a name
		w, err := woods.Find(t.Wood.Common)
		if err != nil {
			f.add(t.At, "a timber whose name is another's too: "+err.Error(), "or give it a name of its own")
			continue
		}
		if err := together(w); err != nil {
			f.add(t.At, quantity.Quote(t.Wood.Common)+", whose figures together no wood has: "+err.Error(), "see whether each is in the unit that the reference tells")
		}
	}
	if err := f.err(); err != nil {
		return timber.Catalogue{}, err
	}
	return woods, nil
}

// together reports figures that are sound one by one and not together:
// shrinkage that leaves no wood, or a density with no room for its moisture.
// What is missing is no fault.
func together(w timber.Species) error {
	for _, d := range []timber.Direction{timber.Radial, timber.Tangential, timber.Lengthwise} {
		stated := d == timber.Lengthwise || w.Shrink.Radial.Known() || w.Move.Radial.Known()
		if _, err := w.ShrinkBasis(d); stated && err != nil {
			return err
		}
	}
	if !w.Weight.Density12.Known() {
		return nil
	}
	_, _, err := w.Density(12)
	return err
}

// Settings returns what the cutting list of v is worked out with, as far as the
// survey says; what it leaves unsaid is the usual. The error is a
// *[survey.Faults].
//
// A price or a word on rings for a part that v has not, because nothing tells
// its size yet, waits until it has.
func Settings(s *survey.Survey, v *vehicle.Vehicle, woods timber.Catalogue) (cutlist.Settings, error) {
	if err := Check(s, woods); err != nil {
		return cutlist.Settings{}, err
	}
	stock, err := yardStock(s)
	if err != nil {
		return cutlist.Settings{}, err
	}
	out := cutlist.Settings{
		Allowances: allowances(s), Stock: stock, Boards: boards(s),
		Wanted: cutlist.Wanted{Grade: s.Yard.Grade, RunOut: s.Yard.RunOut, Note: s.Yard.Note},
	}
	if s.Yard.Sap == survey.SapRefused {
		out.Wanted.Sap = cutlist.SapRefused
	}
	if s.Wood.Rings != nil {
		out.Rings = append(out.Rings, cutlist.PartRings{Rings: *s.Wood.Rings})
	}
	for _, p := range s.Parts {
		if p.Rings != nil && slices.ContainsFunc(v.Items, func(it *vehicle.Item) bool { return it.ID == p.ID }) {
			out.Rings = append(out.Rings, cutlist.PartRings{Part: p.ID, Rings: *p.Rings})
		}
	}
	for _, p := range s.Prices {
		if p.Timber == "" || slices.ContainsFunc(v.Items, func(it *vehicle.Item) bool { return same(woods, it.Timber, p.Timber) }) {
			out.Prices = append(out.Prices, price(s, p, known(s, stock)))
		}
	}
	return out, nil
}

// allowances are the usual with what the survey says laid over them.
func allowances(s *survey.Survey) cutlist.Allowances {
	a := cutlist.Usual()
	for _, l := range lengths(s) {
		if l.said != nil {
			*l.place(&a) = l.said.Value
		}
	}
	w := s.Making.Waste
	for _, p := range []struct {
		said *float64
		to   *float64
	}{{w.Straight, &a.StraightWaste}, {w.Curve, &a.CurveWaste}, {w.Bend, &a.BendWaste}} {
		if p.said != nil {
			*p.to = *p.said / 100
		}
	}
	return a
}

// An allowance is a length that the survey may state, and where it goes.
type allowance struct {
	said  *survey.Reading
	place func(*cutlist.Allowances) *quantity.Length
}

func lengths(s *survey.Survey) []allowance {
	m := s.Making
	return []allowance{
		{m.Planing, func(a *cutlist.Allowances) *quantity.Length { return &a.Planing }},
		{m.Jointing, func(a *cutlist.Allowances) *quantity.Length { return &a.Jointing }},
		{m.Trimming, func(a *cutlist.Allowances) *quantity.Length { return &a.Trimming }},
		{m.BendTrimming, func(a *cutlist.Allowances) *quantity.Length { return &a.BendTrimming }},
		{m.Kerf, func(a *cutlist.Allowances) *quantity.Length { return &a.Kerf }},
		{m.WidestBoard, func(a *cutlist.Allowances) *quantity.Length { return &a.WidestBoard }},
	}
}

// boards are those whose moisture was measured: of the others nothing can be
// said for the day they are worked.
func boards(s *survey.Survey) []cutlist.Board {
	var out []cutlist.Board
	for _, b := range s.Boards {
		if b.Measured() {
			out = append(out, cutlist.Board{ID: b.ID, Timber: b.Timber, Thick: b.Thick, Moisture: b.Moisture, Number: b.Number})
		}
	}
	return out
}

// Splinter is what the survey says of a surviving piece of a part, by its id,
// and how the piece looks; nothing where it says nothing.
func Splinter(s *survey.Survey, id string) (timber.Splinter, string) {
	for _, p := range s.Splinters {
		if p.Part == id {
			return timber.Splinter{Density: p.Density, At: p.Moisture}, p.Look
		}
	}
	return timber.Splinter{}, ""
}

// same reports whether two names are one wood.
func same(woods timber.Catalogue, a, b string) bool {
	if strings.EqualFold(a, b) {
		return true
	}
	x, errX := woods.Find(a)
	y, errY := woods.Find(b)
	return errX == nil && errY == nil && x.Common == y.Common && x.Botanical == y.Botanical
}

// timberOf is the timber of a part.
func timberOf(s *survey.Survey, p *survey.Part) string { return cmp.Or(p.Timber, s.Wood.Timber) }
