package derive

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/adjust"
	"lostwood/internal/demo"
	"lostwood/internal/listing"
)

func TestQuestionsGolden(t *testing.T) {
	st := studied(t, demo.Survey())
	var b bytes.Buffer
	require.NoError(t, listing.WriteQuestions(&b, st.Vehicle, st.Questions(), listing.Table))
	golden(t, "questions", b.Bytes())
}

// What nothing checks really goes into what it is said to, as far as it is said
// to, and nothing shows it.
func TestQuestionsUncheckedIsUnseen(t *testing.T) {
	st := studied(t, demo.Survey())
	told := 0
	for i, n := range st.network.notes {
		if n.sort.assumed() || st.checks(i) >= loose || st.commonOf(i) != none || i%11 != 0 {
			continue
		}
		l := st.loner(i)
		if l.reaches == 0 {
			continue
		}
		const slip = 0.5 // millimetres
		p := st.network.problem
		p.Start = st.fit.X
		p.Observations = append([]adjust.Observation(nil), p.Observations...)
		p.Observations[i].Value += slip
		sol, err := adjust.Solve(p)
		require.NoError(t, err)
		moved := 0.0
		for _, q := range st.matter[l.told].term.Slopes {
			moved += q.Slope * (sol.X[q.Unknown] - st.fit.X[q.Unknown])
		}
		tolerance := 1e-6
		if n.member.base == "hind-tyre" { // a rise bends
			tolerance = 0.1
		}
		require.InDelta(t, l.slope*slip, abs(moved), tolerance, st.network.label(n))
		require.InDelta(t, st.fit.WeightedSquares, sol.WeightedSquares, 1, "the slip hardly shows: %s", st.network.label(n))
		told++
	}
	require.Greater(t, told, 3)
}

func abs(v float64) float64 { return max(v, -v) }

// A survey with open sizes says so, and what would settle them comes first.
func TestQuestionsOfOpenSurvey(t *testing.T) {
	st := studied(t, looser(t))
	q := st.Questions()
	open := ""
	for _, f := range q.Open {
		open += f.Says + "\n"
	}
	require.Contains(t, open, "seat board")
	require.Contains(t, open, "sand board")
	settles := ""
	for _, r := range q.Next {
		if strings.Contains(r.Words, "nothing tells now") {
			settles += r.Settles + "\n"
		}
	}
	require.Contains(t, settles, "how long the seat board is")
}

func TestQuestionsForPrograms(t *testing.T) {
	st := studied(t, demo.Survey())
	q := st.Questions()
	var c, j bytes.Buffer
	require.NoError(t, listing.WriteQuestions(&c, st.Vehicle, q, listing.CSV))
	require.NoError(t, listing.WriteQuestions(&j, st.Vehicle, q, listing.JSON))
	rows, err := csv.NewReader(&c).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 1+len(q.Contradicts)+len(q.Ill)+len(q.Unchecked)+len(q.Open)+len(q.Next))
	var objects []map[string]any
	require.NoError(t, json.Unmarshal(j.Bytes(), &objects))
	require.Len(t, objects, len(rows)-1)
}

// Same in, same out.
func TestQuestionsDeterministic(t *testing.T) {
	var a, b bytes.Buffer
	for _, w := range []*bytes.Buffer{&a, &b} {
		st := studied(t, demo.Survey())
		require.NoError(t, listing.WriteQuestions(w, st.Vehicle, st.Questions(), listing.JSON))
	}
	require.Equal(t, a.String(), b.String())
}
