package derive

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

// To name a reading as wrong is a promise: of a hundred sound surveys one has anything
// named. A slip that is not large enough for that still makes its reading sit worse
// than nearly all others. So the few that sit worst are told too, as what to read
// again first; of them nothing is promised, and none is left out.

// illFrom is how far off, in standard deviations, a reading must sit to be told of.
const illFrom = 2.2

// mostIll is how many are told.
const mostIll = 5

// illest are the readings that sit worst with the rest, worst first. One that cannot
// be told from one before it goes with that.
func (f *fit) illest() []int {
	var all []int
	for i, t := range f.network.notes {
		if t.isReading() && f.Redundancy[i] >= checkedAt && math.Abs(f.Standardised[i]) >= illFrom {
			all = append(all, i)
		}
	}
	slices.SortStableFunc(all, func(a, b int) int {
		return cmp.Compare(math.Abs(f.Standardised[b]), math.Abs(f.Standardised[a]))
	})
	var out []int
	for _, i := range all {
		if len(out) == mostIll {
			break
		}
		if !slices.ContainsFunc(out, func(k int) bool { return math.Abs(f.Correlation(i, k)) > alikeAbove }) {
			out = append(out, i)
		}
	}
	return out
}

// sitsIll tells of them, and how many would sit so by chance.
func (st *Study) sitsIll() []vehicle.Finding {
	ill := st.fit.illest()
	if len(ill) == 0 {
		return nil
	}
	checked := 0
	for i, t := range st.network.notes {
		if t.isReading() && st.fit.Redundancy[i] >= checkedAt {
			checked++
		}
	}
	least := math.Abs(st.fit.Standardised[ill[len(ill)-1]])
	chance := 2 * distuv.UnitNormal.CDF(-least) * float64(checked)
	var out []vehicle.Finding
	for _, i := range ill {
		t := st.network.notes[i]
		off := st.fit.Residuals[i] / st.fit.Redundancy[i]
		way := "more"
		if off < 0 {
			way = "less"
		}
		name := capital(st.network.label(t))
		if st.putRight(i) {
			name += ", as put right"
		}
		says := fmt.Sprintf("%s: the rest would have it about %s %s.", name, quantity.Format(quantity.Length(math.Abs(off)), st.Vehicle.Unit), way)
		out = append(out, vehicle.Finding{Concern: vehicle.Advice, Subject: t.subject, Line: t.line, Says: says})
	}
	return append(out, vehicle.Finding{Concern: vehicle.Advice, Says: fmt.Sprintf("Of the %d readings that others check, %s would sit as ill as these by chance.", checked, aboutSo(chance))})
}

// aboutSo says a number that is expected.
func aboutSo(n float64) string {
	if n < 1 {
		return "hardly one"
	}
	return fmt.Sprintf("about %.0f", math.Round(n))
}
