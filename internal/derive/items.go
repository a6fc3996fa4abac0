package derive

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
	"lostwood/internal/vehicle"
	"lostwood/parts"
	"lostwood/parts/form"
)

// items sorts every family of timbers into the distinct things to make. Those
// of a family with the same work and no real difference are made alike, to
// their common size.
func (a *assembly) items() {
	number := 0
	for i := range a.network.survey.Parts {
		p := &a.network.survey.Parts[i]
		if p.Status == vehicle.LeftOpen {
			continue
		}
		for _, g := range a.groups(a.network.families[p.ID]) {
			number++
			a.enter(number, p, g)
		}
	}
}

// A group is timbers of one family that are made alike.
type group struct {
	members []*member
	works   [][]work // by member, in one order
}

// groups splits a family by the work on each, then by size.
func (a *assembly) groups(family []*member) []group {
	var gs []group
	bySign := map[string]int{}
	for _, m := range family {
		ws := a.work(m)
		slices.SortStableFunc(ws, func(x, y work) int { return strings.Compare(x.key, y.key) })
		var sign []string
		for _, w := range ws {
			sign = append(sign, w.key)
		}
		k := strings.Join(sign, "; ")
		at, ok := bySign[k]
		if !ok {
			at = len(gs)
			bySign[k] = at
			gs = append(gs, group{})
		}
		gs[at].members = append(gs[at].members, m)
		gs[at].works = append(gs[at].works, ws)
	}
	var out []group
	for _, g := range gs {
		out = append(out, a.split(g)...)
	}
	return out
}

// Differences smaller than these are not worth a second pattern, whatever the readings say.
const (
	unlikely   = 3.0                      // standard deviations
	negligible = quantity.Inch * 1.5 / 32 // in any dimension
)

// split takes a group apart where its timbers really differ, and says so.
func (a *assembly) split(g group) []group {
	first := a.terms(g, 0)
	for i := 1; i < len(g.members); i++ {
		for k, t := range a.terms(g, i) {
			d := t.term.Minus(first[k].term)
			by, doubt := math.Abs(d.Value), a.fit.DoubtOf(d)
			if by <= negligible.Millimetres() || by <= unlikely*doubt || math.IsInf(doubt, 1) {
				continue
			}
			a.find(vehicle.Unlike, g.members[i].base, a.network.line(g.members[i]), fmt.Sprintf(
				"The %s and the %s are not alike: %s differs by %s. Each is made to its own irons.",
				words(g.members[0]), words(g.members[i]), t.what, quantity.Format(quantity.Length(by), a.vehicle.Unit)))
			var out []group
			for j := range g.members {
				out = append(out, group{members: g.members[j : j+1], works: g.works[j : j+1]})
			}
			return out
		}
	}
	return []group{g}
}

// A trait is one estimate that timbers made alike share.
type trait struct {
	what string
	term adjust.Term
}

// terms are the traits of one member of a group, in a fixed order.
func (a *assembly) terms(g group, i int) []trait {
	x := a.fit.X
	var out []trait
	for _, d := range g.members[i].sizes {
		out = append(out, trait{d.name, adjust.At(x, d.unknown)})
	}
	for _, w := range g.works[i] {
		out = append(out, trait{"the place of " + w.ref + " lengthwise", w.along(x)}, trait{"the place of " + w.ref + " across", w.across(x)})
	}
	return out
}

// pooled is the common size of a trait: the mean over the group. Its give or
// take covers what its members differ by.
func (a *assembly) pooled(g group, term func(i int) adjust.Term) quantity.Size {
	n := len(g.members)
	sum := adjust.Constant(0)
	for i := range n {
		sum = sum.Plus(term(i).Scaled(1 / float64(n)))
	}
	s := a.fit.size(sum)
	spread := 0.0
	for i := range n {
		spread = math.Max(spread, math.Abs(term(i).Value-sum.Value))
	}
	s.Doubt = quantity.Length(math.Hypot(s.Doubt.Millimetres(), spread))
	return s
}

// enter makes the items of a group: one, or one of each hand.
func (a *assembly) enter(number int, p *survey.Part, g group) {
	sizes := a.sizes(g.members[0])
	for k := range sizes {
		by, axis := sizes[k].By, sizes[k].Axis
		sizes[k] = vehicle.Dimension{Name: sizes[k].Name, Axis: axis, By: by, Size: a.pooled(g, func(i int) adjust.Term {
			return adjust.At(a.fit.X, g.members[i].sizes[k].unknown)
		})}
	}
	features, places := a.features(g)
	if known, placed := a.sizesKnown(p, sizes), a.placedWork(p, places); !known || !placed {
		return
	}
	shape := a.shape(p, g.members[0], sizes, features)
	if shape == nil {
		return
	}
	for _, hand := range handsOf(g, p) {
		it := &vehicle.Item{
			Number: number, ID: p.ID, Name: groupName(p, g), Kind: p.Kind.Name, Run: p.Runs, Hand: hand,
			Timber: a.network.timberOf(p), Shape: shape, Stick: shape.Stick(), Sizes: a.ownEvidence(sizes, g, hand), Features: places,
			Status: p.Status,
		}
		if hand == vehicle.Off {
			it.Stick = it.Stick.Mirrored()
		}
		for _, m := range g.members {
			if hand == vehicle.Alike || m.hand == hand {
				part := a.made[m]
				part.Item = it
				it.Parts = append(it.Parts, part)
				it.NumberOff++
			}
		}
		if p.Runs == vehicle.Round {
			it.NumberOff = max(p.Number, 1) * len(hands(p.Sides))
		}
		a.vehicle.Items = append(a.vehicle.Items, it)
	}
}

// ownEvidence tells how the sizes are known on one hand: the near one of a pair
// may be known from its iron, the off one only as its twin.
func (a *assembly) ownEvidence(sizes []vehicle.Dimension, g group, hand vehicle.Hand) []vehicle.Dimension {
	out := slices.Clone(sizes)
	for _, m := range g.members {
		if hand != vehicle.Alike && m.hand != hand {
			continue
		}
		for k, d := range a.sizes(m) {
			out[k].Known, out[k].By = d.Known, d.By
		}
		return out
	}
	return out
}

// handsOf lists the hands a group is made in.
func handsOf(g group, p *survey.Part) []vehicle.Hand {
	if p.Handed == survey.Same || p.Sides == survey.Single || p.Runs == vehicle.Round {
		return []vehicle.Hand{vehicle.Alike}
	}
	var out []vehicle.Hand
	for _, h := range []vehicle.Hand{vehicle.Near, vehicle.Off} {
		if slices.ContainsFunc(g.members, func(m *member) bool { return m.hand == h }) {
			out = append(out, h)
		}
	}
	return out
}

// groupName tells a part of a family from the others where they are not all alike.
func groupName(p *survey.Part, g group) string {
	if p.Number <= 1 || p.Runs == vehicle.Round {
		return p.Name
	}
	var rows []string
	all := map[int]bool{}
	for _, m := range g.members {
		if !all[m.row] {
			all[m.row] = true
			rows = append(rows, fmt.Sprint(m.row+1))
		}
	}
	if len(rows) == p.Number {
		return p.Name
	}
	return p.Name + " " + strings.Join(rows, " and ")
}

// features makes the features of a group at their common places.
func (a *assembly) features(g group) ([]parts.Feature, []vehicle.Feature) {
	var out []parts.Feature
	var places []vehicle.Feature
	x := a.fit.X
	for k, w := range g.works[0] {
		along := a.pooled(g, func(i int) adjust.Term { return g.works[i][k].along(x) })
		across := a.pooled(g, func(i int) adjust.Term { return g.works[i][k].across(x) })
		var extents []quantity.Length
		for e := range w.extents {
			extents = append(extents, a.pooled(g, func(i int) adjust.Term { return g.works[i][k].extents[e](x) }).Value)
		}
		f := w.make(form.Point{X: along.Value, Y: across.Value}, extents)
		out = append(out, f)
		places = append(places, vehicle.Feature{Ref: f.Ref(), Along: along, Across: across})
	}
	return out, places
}

// sizesKnown reports, and says, whether every size of a part is known.
func (a *assembly) sizesKnown(p *survey.Part, sizes []vehicle.Dimension) bool {
	var open, named []string
	for _, d := range sizes {
		if d.Known != quantity.Unknown {
			continue
		}
		if w, ok := strings.CutPrefix(dimensionWords(d.Name), "how "); ok {
			open = append(open, strings.TrimSuffix(w, " it is"))
		} else {
			named = append(named, dimensionWords(d.Name))
		}
	}
	if len(open) > 0 {
		named = append([]string{"how " + list(open) + " it is"}, named...)
	}
	if len(named) > 0 {
		a.find(vehicle.Unmakeable, p.ID, p.At.Line, fmt.Sprintf("The %s cannot be made. Not known: %s. Measure, state it as a guess, or leave the part open.",
			lower(p.Name), list(named)))
	}
	return len(named) == 0
}

// placedWork reports, and says, whether every piece of work has its place.
func (a *assembly) placedWork(p *survey.Part, places []vehicle.Feature) bool {
	var lost []string
	for _, f := range places {
		if f.Along.Known == quantity.Unknown || f.Across.Known == quantity.Unknown {
			lost = append(lost, f.Ref)
		}
	}
	if len(lost) > 0 {
		a.find(vehicle.Unmakeable, p.ID, p.At.Line, fmt.Sprintf(
			"The %s cannot be made: nothing says where %s %s on it.", lower(p.Name), list(lost), verb(lost, "comes", "come")))
	}
	return len(lost) == 0
}

// shape builds a group's part, or says why it cannot be made.
func (a *assembly) shape(p *survey.Part, m *member, sizes []vehicle.Dimension, features []parts.Feature) parts.Part {
	ms := parts.Measures{Lengths: map[string]quantity.Length{}, Counts: p.Counts, Angles: p.Angles, Work: features}
	for _, d := range sizes {
		ms.Lengths[d.Name] = d.Value
	}
	shape, err := p.Kind.Build(ms)
	if err == nil {
		err = shape.Validate()
	}
	if err == nil {
		return shape
	}
	for _, e := range each(err) {
		var limit *parts.LimitError
		says := e.Error()
		if missing := (*parts.MissingError)(nil); errors.As(e, &missing) {
			a.find(vehicle.Unmakeable, p.ID, p.At.Line, fmt.Sprintf("The %s cannot be made: %s is not said (%s). Write %s = with a figure.",
				lower(p.Name), missing.Dimension, missing.Means, missing.Dimension))
			continue
		}
		if errors.As(e, &limit) {
			named := *limit
			named.Part = words(m)
			says = named.Error()
		}
		a.find(vehicle.Unmakeable, p.ID, p.At.Line, fmt.Sprintf("The %s cannot be made as it stands. %s.", lower(p.Name), strings.TrimSuffix(says, ".")))
	}
	return nil
}

// dimensionWords says a dimension as people do: "how long it is", "its radius".
func dimensionWords(name string) string {
	switch name {
	case "long", "wide", "deep", "thick", "high":
		return "how " + name + " it is"
	}
	return "its " + strings.ReplaceAll(name, "-", " ")
}

// each takes joined errors apart.
func each(err error) []error {
	var joined interface{ Unwrap() []error }
	if !errors.As(err, &joined) {
		return []error{err}
	}
	var out []error
	for _, e := range joined.Unwrap() {
		out = append(out, each(e)...)
	}
	return out
}
