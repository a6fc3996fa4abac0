package cutlist

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// A Choice holds woods side by side against one part, or against none.
type Choice struct {
	Part       *vehicle.Item // nil where no part is meant
	Candidates []timber.Candidate
	Rank       Rank

	vehicle  *vehicle.Vehicle
	now      string // the timber the part is to be of as things stand, as the list of woods has it
	splinter timber.Splinter
}

// A Rank is what woods are put in order by.
type Rank int

// The ranks. Woods of which it is not known come last, in the order of the list.
const (
	Unranked Rank = iota // the part's own timber first, then as the list of woods has them
	Stiffest
	Strongest
	Hardest
	Lightest
	Stillest // that moves least
	Likest   // nearest to the splinter in weight
)

var rankWords = [...]struct{ word, first, because string }{
	Unranked:  {"none", "", ""},
	Stiffest:  {"stiffness", "the stiffest first", "a part of the same size sags the less, the stiffer its wood"},
	Strongest: {"strength", "the strongest in bending first", "a part of the same size breaks at the greater load"},
	Hardest:   {"hardness", "the hardest first", "hard wood bears iron, bolt heads and wear the better"},
	Lightest:  {"mass", "the lightest first", "the load is carried with the wood's own weight"},
	Stillest:  {"movement", "the one that moves least first", "wide wood under iron splits or works loose by its movement"},
	Likest:    {"splinter", "the nearest in weight to the splinter first", "what is left of the old part was one of these"},
}

// ParseRank reads what to rank by: stiffness, strength, hardness, mass,
// movement, splinter, or none.
func ParseRank(word string) (Rank, error) {
	var all []string
	for r, w := range rankWords {
		if strings.EqualFold(word, w.word) {
			return Rank(r), nil
		}
		all = append(all, w.word)
	}
	return 0, badSetting("%s is nothing to rank woods by; there are %s", quantity.Quote(word), strings.Join(all, ", "))
}

// A need is what a kind of part asks of its wood; common practice, no source.
type need struct {
	ranks []Rank
	words string
}

func needOf(kind string) need {
	switch kind {
	case "reach":
		return need{[]Rank{Strongest, Stiffest}, "it takes the pull and the shocks between the axles: strong and stiff, straight in the grain from end to end, slow to rot where plates hold the wet"}
	case "felloe":
		return need{[]Rank{Strongest, Hardest}, "it takes blows through the tyre and holds the spokes' tongues: strong and hard, and it must not shrink away from its tyre"}
	case "spoke":
		return need{[]Rank{Strongest, Stiffest}, "it stands between nave and felloe under every blow: cleft, not sawn, so that no grain runs out; strong and stiff, heartwood, quite dry before its foot is cut"}
	case "nave":
		return need{[]Rank{Hardest, Stillest}, "it is mortised all round: a wood whose grain interlocks and does not split, seasoned whole, the butt end of the log outwards"}
	case "bolster", "axle bed", "sand board":
		return need{[]Rank{Strongest, Hardest}, "it bears the load between irons: strong, hard under its plates, slow to rot where iron holds the wet"}
	case "sill", "cross bar":
		return need{[]Rank{Stiffest, Strongest}, "it carries the floor: stiff and strong, slow to rot"}
	case "side rail":
		return need{[]Rank{Stiffest, Lightest}, "it keeps the load in: stiff for its weight"}
	case "seat rail":
		return need{[]Rank{Strongest}, "it is bent: a wood that bends, of the straightest grain"}
	case "slat":
		return need{[]Rank{Stillest, Lightest}, "it lies in the wet beside its neighbours: it should move little and weigh little"}
	case "riser", "seat board", "tailboard":
		return need{[]Rank{Stillest, Lightest}, "it is wide, with irons across its grain: it should move little and weigh little"}
	}
	return need{}
}

// Choose holds woods against an item of v; against none where it is nil. The
// splinter's zero stands for none. Its error is an unknown rank, or a moisture
// no wood has.
func Choose(v *vehicle.Vehicle, it *vehicle.Item, woods timber.Catalogue, among []timber.Species, splinter timber.Splinter, rank Rank) (*Choice, error) {
	if v == nil {
		return nil, errors.New("there is no vehicle to choose woods for; derive one from its survey first")
	}
	if rank < Unranked || rank > Likest {
		return nil, badSetting("there is no such order of woods")
	}
	if rank == Likest && splinter.Density <= 0 {
		return nil, badSetting("woods cannot be ranked by a splinter that was not weighed; give its density in kg/m3")
	}
	c := &Choice{Part: it, Rank: rank, vehicle: v, splinter: splinter}
	m := v.Moisture
	task := timber.Task{Service: m.Service, Driest: m.Driest, Wettest: m.Wettest, Splinter: splinter}
	if it != nil {
		if err := checkItem(it); err != nil {
			return nil, err
		}
		blank := it.Stick.Body.Blank() // a bend's box is over its bends
		task.Net, task.Broad = parts.Net(it.Stick), max(blank.Wide, blank.Deep)
		task.BendRadius, task.BendThick = tightest(it.Stick.Body)
		if own, err := woods.Find(it.Timber); err == nil {
			c.now = own.Common
		}
	}
	for _, w := range among {
		k, err := task.Consider(w)
		if err != nil {
			return nil, err
		}
		c.Candidates = append(c.Candidates, k)
	}
	c.sort()
	return c, nil
}

// figure is what a rank goes by, the less the better.
func (r Rank) figure(c timber.Candidate) timber.Quality {
	q := timber.Quality{}
	sign := 1.0
	switch r {
	case Stiffest:
		q, sign = c.Stiffness, -1
	case Strongest:
		q, sign = c.Strength, -1
	case Hardest:
		q, sign = c.Hardness, -1
	case Lightest:
		q = c.Density
	case Stillest:
		q = c.PerPoint
	case Likest:
		q = c.Heavier
		q.Value = max(q.Value, -q.Value)
	}
	q.Value *= sign
	return q
}

func (c *Choice) sort() {
	slices.SortStableFunc(c.Candidates, func(a, b timber.Candidate) int {
		if c.Rank == Unranked {
			return -cmp.Compare(btoi(a.Wood.Common == c.now), btoi(b.Wood.Common == c.now))
		}
		x, y := c.Rank.figure(a), c.Rank.figure(b)
		if x.Known() != y.Known() {
			return -cmp.Compare(btoi(x.Known()), btoi(y.Known()))
		}
		if !x.Known() {
			return 0
		}
		return cmp.Compare(x.Value, y.Value)
	})
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// reason says what the woods stand in order by, and why.
func (c *Choice) reason() string {
	w := rankWords[c.Rank]
	if c.Rank == Unranked {
		return "Not ranked: no one figure decides."
	}
	words := fmt.Sprintf("Ranked by %s alone, %s, because %s.", w.word, w.first, w.because)
	if c.Part == nil {
		return words
	}
	if n := needOf(c.Part.Kind); len(n.ranks) > 0 && !slices.Contains(n.ranks, c.Rank) && c.Rank != Likest {
		var rather []string
		for _, r := range n.ranks {
			rather = append(rather, rankWords[r].word)
		}
		words += fmt.Sprintf(" This part asks rather for %s.", strings.Join(rather, " and "))
	}
	return words
}
