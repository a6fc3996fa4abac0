package derive

import (
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
	"lostwood/internal/survey"
)

// fitted reads a survey and fits it, blunders or not.
func fitted(t *testing.T, text string) *fit {
	t.Helper()
	s, err := survey.Read("any.toml", []byte(text))
	require.NoError(t, err, "%s", text)
	n := newNetwork(s)
	sol, err := adjust.Solve(n.problem)
	require.NoError(t, err)
	return &fit{Solution: sol, network: n}
}

// sizes are all sizes and holes by name, with their doubts.
func (f *fit) sizes() map[string][2]float64 {
	out := map[string][2]float64{}
	for _, m := range f.network.members {
		for _, d := range m.sizes {
			out[m.id+"."+d.name] = [2]float64{f.X[d.unknown], f.Doubts[d.unknown]}
		}
		for k, u := range m.holes {
			out[fmt.Sprintf("%s#%d", m.id, k+1)] = [2]float64{f.X[u], f.Doubts[u]}
		}
	}
	return out
}

// sameSizes holds two fits to the same sizes and doubts, the second being by as much larger.
func sameSizes(t *testing.T, a, b *fit, larger float64) {
	t.Helper()
	want, got := a.sizes(), b.sizes()
	require.Len(t, got, len(want))
	for name, w := range want {
		g := got[name]
		require.InDelta(t, w[0]*larger, g[0], 1e-6*larger, name)
		if !math.IsInf(w[1], 1) {
			require.InDelta(t, 1, g[1]/(w[1]*larger), 1e-6, name)
		}
	}
}

// noisy is a vehicle of any sort whose readings are not all just as drawn.
func noisy(r *rand.Rand) string {
	text := drawVehicle(r)
	at := strings.Index(text, "[iron]")
	return text[:at] + regexp.MustCompile(`"\d+\.\d{4}"`).ReplaceAllStringFunc(text[at:], func(s string) string {
		var v float64
		fmt.Sscanf(s, `"%f"`, &v)
		return fmt.Sprintf(`"%.4f"`, v+0.02*r.NormFloat64())
	})
}

// allDoubts writes every doubt, in bare numbers, so that they too are in the survey's unit.
func allDoubts(text string) string {
	return strings.Replace(text, "[datum]", `[doubts]
rule = 0.03125
callipers = 0.015625
tape = 0.0625
grip = 0.03125
contact = 0.03125
play = 0.03125
centre = 0.0625
twin = 0.0625
row = 0.03125
measured = 0.03125
iron = 0.0625
paired = 0.0625
like = 0.25
[datum]`, 1)
}

const vehicles = 6 // of any sort, for each property

// All lengths by as much larger, all sizes and their give or take are.
func TestScalingScales(t *testing.T) {
	r := rand.New(rand.NewPCG(1841, 21))
	for range vehicles {
		text := allDoubts(noisy(r))
		inches := fitted(t, text)
		mm := fitted(t, strings.Replace(text, `unit = "in"`, `unit = "mm"`, 1))
		sameSizes(t, mm, inches, 25.4)
	}
}

// The order of lines changes nothing.
func TestOrderOfLinesChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(1841, 22))
	for range vehicles {
		text := noisy(r)
		sameSizes(t, fitted(t, text), fitted(t, shuffled(r, text)), 1)
	}
}

// shuffled puts the irons, the parts, the fastenings and the statements in another order.
func shuffled(r *rand.Rand, text string) string {
	head, rest, _ := strings.Cut(text, "[iron]\n")
	irons, rest, _ := strings.Cut(rest, "[part]\n")
	timber, rest, _ := strings.Cut(rest, "[[fastening]]\n")
	all, evidence, _ := strings.Cut(rest, "[evidence]\n")
	mix := func(s, sep string) string {
		list := strings.Split(strings.TrimSuffix(s, sep), sep)
		r.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
		return strings.Join(list, sep)
	}
	statements := strings.Split(strings.TrimSpace(evidence), "\n")
	slices.Reverse(statements)
	for k, s := range statements {
		name, list, _ := strings.Cut(s, " = [")
		statements[k] = name + " = [" + mix(strings.TrimSuffix(list, "]"), ", ") + "]"
	}
	return head + "[iron]\n" + mix(irons, "\n") + "\n[part]\n" + mix(timber, "\n") + "\n[[fastening]]\n" +
		mix(strings.TrimSuffix(all, "\n")+"\n", "[[fastening]]\n") + "\n[evidence]\n" + strings.Join(statements, "\n") + "\n"
}

// One statement more, whatever it says, widens nothing.
func TestAnotherStatementNeverWidens(t *testing.T) {
	r := rand.New(rand.NewPCG(1841, 23))
	for k := range vehicles {
		text := noisy(r)
		what := []string{"reach-a.deep", "bar.deep", "strap-a.thick", "near-reach-a.outer"}[k%4]
		before := fitted(t, text).sizes()
		after := fitted(t, strings.Replace(text, "measured = [", fmt.Sprintf("measured = [\"%s = 7 ± 0.1\", ", what), 1)).sizes()
		narrower := 0
		for name, b := range before {
			require.LessOrEqual(t, after[name][1], b[1]*(1+1e-9), name)
			if after[name][1] < b[1]*0.999 {
				narrower++
			}
		}
		require.Positive(t, narrower, what)
	}
}

// With the vehicle's zero elsewhere all places move, and no size does.
func TestZeroElsewhereMovesNoSize(t *testing.T) {
	r := rand.New(rand.NewPCG(1841, 24))
	for range vehicles {
		text := noisy(r)
		a := fitted(t, text)
		b := fitted(t, strings.Replace(text, `"bed-a.mid-x = 0", "bed-a.under = 20"`, `"bed-b.mid-x = 11", "bar-2.top = 40"`, 1))
		sameSizes(t, a, b, 1)
		moved := 0
		for j, u := range a.network.unknowns {
			if u.place && math.Abs(a.X[j]-b.X[j]) > 1 {
				moved++
			}
		}
		require.Positive(t, moved)
	}
}
