package derive

import (
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
	"lostwood/internal/quantity"
	"lostwood/internal/survey"
)

// runs is how many wagons are simulated; LOSTWOOD_RUNS=2000 for a longer run.
func runs() int {
	if os.Getenv("LOSTWOOD_RUNS") == "2000" {
		return 2000
	}
	if testing.Short() {
		return 20
	}
	return 300
}

// A simulation draws surveys of the demo wagon: every reading and everything
// taken for granted is off by what it is said to be worth.
type simulation struct {
	*network
	truth []float64
	drawn adjust.Problem
}

func newSimulation(t *testing.T) *simulation {
	t.Helper()
	s, err := survey.ReadFile("../../testdata/orchardwagon/clean.toml")
	require.NoError(t, err)
	n := newNetwork(s)
	sol, err := adjust.Solve(n.problem)
	require.NoError(t, err)
	return &simulation{network: n, truth: sol.X, drawn: n.problem}
}

// draw makes the readings of one survey.
func (s *simulation) draw(r *rand.Rand) {
	shared := make([]float64, len(s.drawn.Common))
	for c, d := range s.drawn.Common {
		shared[c] = r.NormFloat64() * d
	}
	p := s.drawn
	p.Start = s.truth
	p.Observations = slices.Clone(s.drawn.Observations)
	for i := range p.Observations {
		o := &p.Observations[i]
		o.Value = o.Model(s.truth).Value + r.NormFloat64()*o.Doubt
		for _, c := range o.Sources {
			o.Value += c.Slope * shared[c.Common]
		}
	}
	s.problem = p
}

// explained looks for blunders in what was drawn.
func (s *simulation) explained(t *testing.T) *fit {
	t.Helper()
	sol, err := adjust.Solve(s.problem)
	require.NoError(t, err)
	f := &fit{Solution: sol, network: s.network}
	require.NoError(t, s.explain(f))
	return f
}

// Give or take means what the README says: 95 in a hundred sizes lie within 1.96
// of it, and a survey without a blunder has one named no more often than promised.
// Standard: normal distribution, 95 % between -1.96 and 1.96.
func TestGiveOrTakeHolds(t *testing.T) {
	s := newSimulation(t)
	r := rand.New(rand.NewPCG(1841, 1))
	within, all, alarms := 0, 0, 0
	for range runs() {
		s.draw(r)
		f := s.explained(t)
		if len(f.turned)+len(f.suspects) > 0 {
			alarms++
		}
		for _, m := range s.members {
			if m.part == nil {
				continue
			}
			for _, d := range m.sizes {
				all++
				if math.Abs(f.X[d.unknown]-s.truth[d.unknown]) <= 1.96*f.Doubts[d.unknown] {
					within++
				}
			}
		}
	}
	share := float64(within) / float64(all)
	t.Logf("%d runs: %.2f %% of sizes within 95 %% bounds; %.2f %% false alarms (promised %.0f %%)",
		runs(), 100*share, 100*float64(alarms)/float64(runs()), 100*alarm)
	require.InDelta(t, 0.95, share, 0.01)
	// Three standard deviations of a count at the promised rate.
	most := alarm*float64(runs()) + 3*math.Sqrt(alarm*float64(runs()))
	require.LessOrEqual(t, float64(alarms), most)
}

// An iron of a pair that is read on both sides, read from its wrong end, is named
// for what it is: the iron, or it and its twin where nothing tells the two apart.
func TestWrongEndIsNamed(t *testing.T) {
	s := newSimulation(t)
	r := rand.New(rand.NewPCG(1841, 2))
	named, tried := 0, 0
	missed := map[string]int{}
	for range max(runs()/20, 2) {
		for _, m := range s.members {
			if m.iron == nil || m.iron.Off == nil || len(m.iron.Off.Holes) == 0 || m.row > 0 {
				continue
			}
			s.draw(r)
			at, ok := s.holesRead(m)
			require.True(t, ok, m.id)
			e := s.turned(m, at)
			if even(s.problem, e) {
				continue // the same from either end: nothing to find
			}
			s.problem = s.with(e)
			tried++
			f := s.explained(t)
			missed[m.id]++
			for _, x := range f.turned {
				if x.member.base == m.base && strings.Contains(x.says, "wrong end") {
					named++
					missed[m.id]--
					break
				}
			}
		}
	}
	t.Logf("%d of %d irons read from the wrong end were named so; missed %v", named, tried, missed)
	require.GreaterOrEqual(t, float64(named), 0.95*float64(tried))
}

// even reports whether an iron's holes are nearly the same from either end.
func even(p adjust.Problem, e *explanation) bool {
	for i, v := range e.values {
		if math.Abs(v-p.Observations[i].Value) > quantity.Inch.Millimetres()/2 {
			return false
		}
	}
	return true
}

// One reading that is far off is named, or one that cannot be told from it.
// Far off is what its redundancy lets be seen at the alarm level nine times in
// ten: (limit + 1.28) doubts over the root of the redundancy (Baarda).
func TestOneBlunderIsNamed(t *testing.T) {
	s := newSimulation(t)
	r := rand.New(rand.NewPCG(1841, 3))
	sol, err := adjust.Solve(s.drawn)
	require.NoError(t, err)
	var checked []int
	for i, q := range sol.Redundancy {
		if q >= 0.4 && !s.notes[i].sort.assumed() && s.notes[i].sort != stated {
			checked = append(checked, i)
		}
	}
	require.NotEmpty(t, checked)
	named := 0
	for range runs() {
		s.draw(r)
		i := checked[r.IntN(len(checked))]
		o := &s.problem.Observations[i]
		o.Value += (level(len(s.notes)) + 1.28) * o.Doubt / math.Sqrt(sol.Redundancy[i])
		for _, x := range s.explained(t).suspects {
			if x.observation == i || slices.Contains(x.others, i) {
				named++
				break
			}
		}
	}
	t.Logf("%d of %d blunders named", named, runs())
	require.GreaterOrEqual(t, float64(named), 0.85*float64(runs()))
}
