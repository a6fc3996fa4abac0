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

// lightest is the least share of the weight with which a bearing is told singly.
const lightest = 0.001

// A bearing is a vehicle.Bearing with the observations behind it.
type bearing struct {
	vehicle.Bearing
	observation int     // the one that is told of; none for the rest
	common      int     // the error that a statement about a family shares; none for others
	slope       float64 // how far the size moves when that one's value moves by one
}

// bearings are what bears on a function of the unknowns, weightiest first, with
// the rest in one. A statement about a whole family is one, with the error that
// all it says of them shares.
func (st *Study) bearings(t adjust.Term, of *member) []bearing {
	own, common := st.fit.Makeup(t)
	total := st.fit.DoubtOf(t)
	total *= total
	if own == nil || total == 0 {
		return nil
	}
	reach := st.fit.Covariances(t)
	rest := bearing{Bearing: vehicle.Bearing{Says: "all the rest together", Role: vehicle.Rest, Read: missing(), Alone: missing()}, observation: none}
	var out []bearing
	for _, g := range st.shared(own, common, of) {
		square := g.square
		if square < lightest*total {
			rest.Share += square / total
			continue
		}
		if g.observation == none {
			says := st.network.commons[g.common].granted()
			out = append(out, bearing{observation: none, common: g.common, Bearing: vehicle.Bearing{
				Says: says, Role: vehicle.Granted, Kind: says, Read: missing(), Alone: missing(),
				Share: square / total, Adds: quantity.Length(math.Sqrt(square)),
			}})
			continue
		}
		b := st.bearing(t, g.observation, reach)
		b.Share, b.Adds, b.slope = square/total, quantity.Length(math.Sqrt(square)), g.slope
		if g.common != none {
			b.Checks = st.fit.CommonRedundancy[g.common]
		} else {
			b.Says += st.network.notes[g.observation].of()
		}
		b.common = g.common
		out = append(out, b)
	}
	slices.SortStableFunc(out, func(a, b bearing) int { return cmp.Compare(b.Share, a.Share) })
	if rest.Share > 0 {
		rest.Adds = quantity.Length(math.Sqrt(rest.Share * total))
		out = append(out, rest)
	}
	return out
}

// A makeup is what one reading or statement brings to a variance.
type makeup struct {
	observation int // the one to tell of; none for an error that readings share
	common      int
	square      float64
	slope       float64
}

// shared puts together what observations with a common error bring: it is told
// of the one that speaks of the member, else of the weightiest.
func (st *Study) shared(own, common []float64, of *member) []makeup {
	var out []makeup
	at := map[int]int{}
	for i, v := range own {
		c, slope := st.commonOf(i), v/st.network.problem.Observations[i].Doubt
		k, known := at[c]
		if c == none || !known {
			g := makeup{observation: i, common: c, square: v * v, slope: slope}
			if c != none {
				at[c] = len(out)
				g.square += common[c] * common[c]
			}
			out = append(out, g)
			continue
		}
		g := &out[k]
		g.square += v * v
		g.slope += slope
		told, here := st.network.notes[g.observation].member == of, st.network.notes[i].member == of
		if here && !told || here == told && math.Abs(v) > math.Abs(own[g.observation]) {
			g.observation = i
		}
	}
	for c, v := range common {
		if _, told := at[c]; !told {
			out = append(out, makeup{observation: none, common: c, square: v * v})
		}
	}
	return out
}

// commonOf is the common error of a statement about a whole family, or none.
func (st *Study) commonOf(observation int) int {
	o := st.network.problem.Observations[observation]
	if st.network.notes[observation].sort != stated || len(o.Sources) != 1 || st.network.commons[o.Sources[0].Common].kind != ofFamily {
		return none
	}
	return o.Sources[0].Common
}

// bearing tells of one observation.
func (st *Study) bearing(t adjust.Term, i int, reach []float64) bearing {
	n := st.network.notes[i]
	o := st.network.problem.Observations[i]
	b := bearing{observation: i}
	b.Says, b.Line, b.Checks, b.Read = st.network.label(n), n.line, st.fit.Redundancy[i], missing()
	if st.putRight(i) {
		b.Says += ", as put right"
	}
	if n.sort.assumed() {
		b.Role, b.Kind = vehicle.Granted, n.sort.kindWords()
	} else if n.sort != stated {
		b.Read = quantity.Length(o.Value)
	}
	b.Alone = st.alone(t, i, reach)
	return b
}

// putRight reports whether a reading was put right with its whole iron.
func (st *Study) putRight(observation int) bool {
	for _, e := range st.fit.turned {
		if _, ok := e.values[observation]; ok {
			return true
		}
	}
	return false
}

// alone is what a function would come to were one observation exactly right, and
// all others as they are: as far as what it says is off from the fit, the function
// moves with it by their covariance.
func (st *Study) alone(t adjust.Term, i int, reach []float64) quantity.Length {
	o := st.network.problem.Observations[i]
	r := o.Model(st.fit.X)
	spread := st.fit.DoubtOf(r)
	if spread < fixed.Millimetres() || math.IsInf(spread, 1) || math.IsNaN(spread) || reach == nil {
		return missing()
	}
	return quantity.Length(t.Value + dot(r, reach)/(spread*spread)*(o.Value-r.Value))
}

func missing() quantity.Length { return quantity.Length(math.NaN()) }

// mostSaid is how many that say so are told singly.
const mostSaid = 10

// told puts bearings together for reading: what is taken for granted by its kind,
// and what is light with the rest.
func told(bs []bearing) []vehicle.Bearing {
	rest := vehicle.Bearing{Says: "all the rest together", Role: vehicle.Rest, Read: missing(), Alone: missing()}
	var said, granted []vehicle.Bearing
	times := map[string]int{}
	for _, b := range bs {
		k := slices.IndexFunc(granted, func(g vehicle.Bearing) bool { return g.Kind == b.Kind })
		switch {
		case b.Role == vehicle.Granted && k >= 0:
			times[b.Kind]++
			granted[k] = joined(granted[k], b.Bearing)
		case b.Role == vehicle.Granted:
			times[b.Kind] = 1
			granted = append(granted, b.Bearing)
		case b.Role == vehicle.Speaks && len(said) < mostSaid && b.Share >= tells/2:
			said = append(said, b.Bearing)
		default:
			rest = joined(rest, b.Bearing)
		}
	}
	for i, g := range granted {
		if n := times[g.Kind]; n > 1 {
			granted[i].Says, granted[i].Alone, granted[i].Line = fmt.Sprintf("%s in %d places", g.Kind, n), missing(), 0
		} else if g.Says != g.Kind {
			granted[i].Says = "taking it that " + g.Says
		}
	}
	byShare := func(a, b vehicle.Bearing) int { return cmp.Compare(b.Share, a.Share) }
	slices.SortStableFunc(granted, byShare)
	out := said
	for _, g := range granted {
		if g.Share < tells/2 {
			rest = joined(rest, g)
			continue
		}
		out = append(out, g)
	}
	if rest.Share > 0 {
		out = append(out, rest)
	}
	return out
}

// joined adds one bearing's weight to another.
func joined(to, b vehicle.Bearing) vehicle.Bearing {
	to.Share += b.Share
	to.Adds = quantity.Length(math.Hypot(to.Adds.Millimetres(), b.Adds.Millimetres()))
	return to
}
