package pattern

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// Timbers of all sizes, thick with holes: every sheet stays legible, and no mark is lost.
func TestCrowdedTimbersStayLegible(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	between := func(lo, hi float64) Length { return Length(lo + r.Float64()*(hi-lo)) }
	for n := range 14 {
		p := parts.Plain{Name: "sill", Long: between(200, 2200), Wide: between(25, 150), Deep: between(25, 150)}
		for k := range 2 + r.IntN(9) {
			face := []parts.Face{parts.Upper, parts.FirstSide}[r.IntN(2)]
			high := p.Wide
			if face == parts.FirstSide {
				high = p.Deep
			}
			p.Work = append(p.Work, hole(fmt.Sprint("fastening ", k+1), face, between(0.05, 0.95)*p.Long, between(0.3, 0.7)*high, between(6, 14)))
		}
		i := item(n+1, "sill", vehicle.Along, []vehicle.Hand{vehicle.Alike, vehicle.Near, vehicle.Off}[n%3], "white oak", p, quantity.Guess)
		all, err := sheets(wagon(i), i, paperNamed(t, []string{"A4", "A3", "Letter", "roll 24 in"}[n%4]))
		require.NoError(t, err)
		for _, s := range all {
			clear(t, s, fmt.Sprintf("timber %d", n))
		}
	}
}

func FuzzFindPaper(f *testing.F) {
	for _, s := range []string{"A4", "letter", "roll 24 in", "roll 610", "roll", "", "roll -5", "roll 1/0", "roll 1e999"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := FindPaper(s)
		if err != nil {
			require.ErrorContains(t, err, "paper")
			return
		}
		require.NotEmpty(t, p.Name)
		if p.check() == nil {
			require.Greater(t, float64(p.Width), 100.0)
		}
	})
}

func TestWholeOrNothing(t *testing.T) {
	var b bytes.Buffer
	i := slat()
	i.Name = "slat \u6728" // found out only when all sheets are drawn
	require.Error(t, Write(&b, wagon(i), i, paperNamed(t, "A4")))
	require.Zero(t, b.Len())
}
