package derive

import (
	"math"
	"slices"

	"lostwood/internal/adjust"
)

// A statement about a whole pair or row is one statement, made about each with
// one shared error; where it contradicts the rest it does so as one.

// worstShared is the statement about a family that agrees least with the rest.
func (f *fit) worstShared() (int, float64) {
	at, most := none, 0.0
	for c := range f.CommonErrors {
		if w := math.Abs(f.sharedStrain(c)); w > most {
			at, most = c, w
		}
	}
	return at, most
}

// sharedStrain is a shared error in standard deviations.
func (f *fit) sharedStrain(c int) float64 {
	r := f.CommonRedundancy[c]
	if r < 1e-6 {
		return 0
	}
	return f.CommonErrors[c] / (f.network.problem.Common[c] * math.Sqrt(r))
}

// setSharedAside takes a statement about a family out of the adjustment; where
// another of the same standing contradicts it, both stay, with a doubt that
// holds them.
func (n *network) setSharedAside(f *fit, c int) error {
	of := n.sharing(c)
	s := suspect{observation: of[0], off: f.CommonErrors[c] / f.CommonRedundancy[c]}
	p := adjust.Without(n.problem, of...)
	if rival := n.sharedRival(f, c); rival != none {
		s.kept, s.others = bothKept, []int{n.sharing(rival)[0]}
		p = n.problem
		p.Common = slices.Clone(p.Common)
		for _, k := range []int{c, rival} {
			p.Common[k] = math.Max(p.Common[k], math.Abs(s.off)/math.Sqrt2)
		}
	}
	sol, err := adjust.Solve(p)
	if err != nil {
		return err
	}
	n.problem, f.Solution = p, sol
	f.suspects = append(f.suspects, s)
	return nil
}

// sharing lists the observations that a shared error is in.
func (n *network) sharing(c int) []int {
	var out []int
	for i, o := range n.problem.Observations {
		if slices.ContainsFunc(o.Sources, func(s adjust.Source) bool { return s.Common == c }) {
			out = append(out, i)
		}
	}
	return out
}

// sharedRival finds another statement about the same thing, as strong, that is
// strained the other way.
func (n *network) sharedRival(f *fit, c int) int {
	t := n.notes[n.sharing(c)[0]]
	for k := range f.CommonErrors {
		if k == c || math.Abs(f.sharedStrain(k)) < 3 || f.CommonErrors[k]*f.CommonErrors[c] > 0 {
			continue
		}
		if r := n.notes[n.sharing(k)[0]]; r.member == t.member && r.known == t.known {
			return k
		}
	}
	return none
}
