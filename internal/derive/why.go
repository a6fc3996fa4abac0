package derive

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// Why tells how a size or place comes about: reach.deep, cross-bar-2.wide,
// near-reach.fastening 5, reach-plate.hole 2, sill.top. Of a pair or a row whose
// one is not said it tells of the first. A piece of work has two accounts, along
// its face and across. The error is a *NameError.
func (st *Study) Why(name string) ([]*vehicle.Account, error) {
	ts, err := st.find(name)
	if err != nil {
		return nil, err
	}
	var out []*vehicle.Account
	for _, t := range ts {
		out = append(out, st.account(t))
	}
	return out, nil
}

func (st *Study) account(t target) *vehicle.Account {
	a := st.reasons(t)
	t.weight = 1
	before := st.doubts([]target{t})
	for _, o := range st.next(st.untaken(), []target{t}, before, 3) {
		if o.gain >= worthTelling*min(before[0], unsettled.Millimetres()) {
			a.Next = append(a.Next, st.told(o, []target{t}, before))
		}
	}
	return a
}

// reasons are a target's account but for what to read next, which takes the longest to find.
func (st *Study) reasons(t target) *vehicle.Account {
	a := &vehicle.Account{Subject: t.subject, Asks: t.asks, Size: st.fit.size(t.term), Alike: st.alike(t)}
	bs := st.bearings(t.term, t.member)
	for _, b := range bs {
		a.Bearings = append(a.Bearings, b.Bearing)
	}
	a.Contradicts = st.against(t, bs)
	a.Told = told(bs)
	a.GiveOrTake = st.giveOrTakeOf(a.Told)
	a.Bounds = st.bounds(t)
	a.Unchecked = st.unchecked(bs)
	if a.Size.Known == quantity.Unknown {
		a.Open = st.openings(t)
	}
	return a
}

// alike says what a timber is made alike with, and to what.
func (st *Study) alike(t target) string {
	part := st.assembly.made[t.member]
	if part == nil || part.Item == nil {
		return ""
	}
	var size *quantity.Size
	for _, d := range part.Item.Sizes {
		if t.subject == t.member.id+"."+d.Name {
			size = &d.Size
		}
	}
	for _, f := range part.Item.Features {
		switch t.subject {
		case t.member.id + "." + f.Ref + " along":
			size = &f.Along
		case t.member.id + "." + f.Ref + " across":
			size = &f.Across
		}
	}
	var like []string
	for _, m := range st.network.members {
		if p := st.assembly.made[m]; p != nil && p != part && p.Item != nil && p.Item.Number == part.Item.Number {
			like = append(like, the(m))
		}
	}
	if size == nil || len(like) == 0 {
		return ""
	}
	return fmt.Sprintf("It is made alike with %s. The list of sizes has what they come to together: %s.", list(like), size.Words(st.Vehicle.Unit))
}

// against tells what was found to contradict, where it bears on a size or would,
// and what sits ill with the rest without being plainly wrong.
func (st *Study) against(t target, bs []bearing) []string {
	subjects := map[string]bool{}
	for _, b := range bs {
		if b.observation != none && b.Share >= tells/2 && (st.putRight(b.observation) || st.setAside(b.observation)) {
			subjects[st.network.notes[b.observation].subject] = true
		}
	}
	reach := st.fit.Covariances(t.term)
	doubt := st.fit.DoubtOf(t.term)
	for _, s := range st.fit.suspects {
		if s.observation == none {
			continue
		}
		if off := st.alone(t.term, s.observation, reach) - quantity.Length(t.term.Value); math.Abs(off.Millimetres()) > doubt/4 {
			subjects[st.network.notes[s.observation].subject] = true
		}
	}
	var out []string
	for _, f := range st.Vehicle.Findings {
		if f.Concern == vehicle.Contradiction && subjects[f.Subject] {
			out = append(out, f.Says)
		}
	}
	for _, b := range bs {
		if b.observation == none || b.Share < tells {
			continue
		}
		if math.Abs(st.fit.Standardised[b.observation]) > strained && b.Checks > 0 {
			off := quantity.Length(math.Abs(st.fit.Residuals[b.observation]) / b.Checks)
			out = append(out, fmt.Sprintf("%s sits ill with the rest, by %s, though not plainly wrong. Look at it again.", capital(st.network.saying(st.network.notes[b.observation])), quantity.Format(off, st.Vehicle.Unit)))
		}
	}
	return out
}

const (
	tells     = 0.02 // the least share of the weight that is worth a sentence
	strained  = 2.5  // standard deviations from which a reading sits ill with the rest
	loose     = 0.05 // redundancy below which next to nothing checks a reading
	oftenSeen = 0.8  // the chance with which the least slip that shows does show
)

// giveOrTakeOf tells where the give or take comes from, largest first.
func (st *Study) giveOrTakeOf(bs []vehicle.Bearing) []string {
	const several, nearlyAll = 4, 0.9
	bs = slices.DeleteFunc(slices.Clone(bs), func(b vehicle.Bearing) bool { return b.Role == vehicle.Rest })
	slices.SortStableFunc(bs, func(a, b vehicle.Bearing) int { return cmp.Compare(b.Share, a.Share) })
	var from []string
	sum := 0.0
	for _, b := range bs {
		if len(from) == several || sum >= nearlyAll {
			break
		}
		sum += b.Share
		from = append(from, fmt.Sprintf("%s (%s)", b.Says, giveOrTake(b.Adds, st.Vehicle.Unit)))
	}
	if len(from) == 0 {
		return nil
	}
	how := "comes"
	switch {
	case sum < 0.6:
		how = "comes most of all"
	case sum < 0.98:
		how = "comes mostly"
	}
	return []string{fmt.Sprintf("Its give or take %s from %s.", how, list(from))}
}

// unchecked tells which readings nothing checks, and how large a slip in the
// others may go unnoticed, with what it would do to the size.
func (st *Study) unchecked(bs []bearing) []string {
	var out []string
	for _, b := range bs {
		if b.observation != none && b.Role == vehicle.Speaks && b.Share >= tells && b.Checks < loose {
			says := fmt.Sprintf("Nothing checks %s; a slip there goes %s into this", b.Says, timesWords(b.slope))
			if st.network.notes[b.observation].sort != stated {
				says += ": read it a second time"
			} else {
				says += ": look again whether it is so"
			}
			out = append(out, says+".")
		}
	}
	if says := st.leastSeen(bs); says != "" {
		out = append(out, says)
	}
	return out
}

// leastSeen tells which of the readings that others check could hide the most.
func (st *Study) leastSeen(bs []bearing) string {
	u := st.Vehicle.Unit
	slip, worst, by := 0.0, "", 0.0
	l := st.network.limits(st.fit.Solution)
	for _, b := range bs {
		if b.observation == none || b.common != none || b.Role != vehicle.Speaks || b.Share < tells || b.Checks < loose {
			continue
		}
		least := st.fit.LeastNoticed(b.observation, l.level(st.network.notes[b.observation], b.Checks), oftenSeen)
		if does := least * math.Abs(b.slope); does > by {
			slip, worst, by = least, b.Says, does
		}
	}
	if worst == "" {
		return ""
	}
	return fmt.Sprintf("Of what others check, %s could hide the most: a slip of under about %s may go unnoticed there, and put this wrong by up to %s.",
		worst, quantity.Format(quantity.Length(slip), u), quantity.Format(quantity.Length(by), u))
}

// timesWords says how much of an error goes into a size.
func timesWords(slope float64) string {
	switch s := math.Abs(slope); {
	case s >= 1.5:
		return fmt.Sprintf("about %.0f times over", s)
	case s >= 0.9:
		return "whole"
	case s >= 0.6:
		return "by about three quarters"
	case s >= 0.4:
		return "by about half"
	case s >= 0.29:
		return "by about a third"
	case s >= 0.18:
		return "by about a quarter"
	}
	return "a little"
}

// openings say why nothing determines a target.
func (st *Study) openings(t target) []string {
	var free []adjust.Direction
	for k, by := range st.fit.moving(t.term) {
		if by != 0 {
			free = append(free, st.fit.Free[k])
		}
	}
	var out []string
	for _, g := range st.network.openings(free) {
		if says := g.says(); !slices.Contains(out, says) {
			out = append(out, says)
		}
	}
	return out
}
