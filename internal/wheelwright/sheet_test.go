package wheelwright_test

import (
	"bytes"
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"lostwood/internal/pattern"
	"lostwood/internal/quantity"
	"lostwood/internal/wheel"
	"lostwood/internal/wheelwright"
)

const in = quantity.Inch

// subject is the fore wheel of the US Army six-mule wagon (specification of
// 1858-61), with spokes and dish that the copies seen do not give: plausible, from
// the trade rules.
func subject(t *testing.T, change func(*wheel.Spec)) wheelwright.Subject {
	t.Helper()
	s := wheel.Spec{
		Use: wheel.Wagon, Height: 46 * in,
		Tyre: wheel.Tyre{Wide: 2.5 * in, Thick: .625 * in, Bolt: .375 * in},
		Rim:  wheel.Rim{Felloes: 6, Deep: 2.75 * in, Gap: in / 48, Dowel: .5 * in, DowelDeep: 1 * in, Eased: .25 * in},
		Spokes: wheel.Spokes{
			Number: 12, FootWide: 2 * in, FootThick: 1 * in, FootLong: 2.25 * in, Square: 3 * in,
			Wide: 2.125 * in, Thick: 1.75 * in, TipWide: 1.5 * in, TipThick: 1.5 * in,
			Tongue: wheel.Tongue{Thick: .958 * in, Short: in / 16},
		},
		Nave: wheel.Nave{
			Long: 14.5 * in, Diameter: 10 * in, Front: 6.5 * in, Back: 7.5 * in, Forward: 8 * in, SeatLong: 2.5 * in,
			Bands: []wheel.Band{
				{Name: "sand band", Wide: 2.75 * in, Thick: 3},
				{Name: "back driving band", From: 4 * in, Wide: 1 * in, Thick: 3. / 16 * in},
				{Name: "front driving band", From: 8.5 * in, Wide: 1.25 * in, Thick: .25 * in},
				{Name: "linchpin band", From: 11.75 * in, Wide: 2.75 * in, Thick: 3},
			},
		},
		Box:   wheel.Box{Long: 12 * in, Large: 2.5 * in, Small: 1.875 * in, Wall: .25 * in, FrontRecess: 3 * in},
		Dish:  wheel.Dish{Built: .5 * in, Tyred: .75 * in},
		Arm:   wheel.Arm{Long: 13 * in, AtCollar: 2.4375 * in, AtPoint: 1.75 * in, Gather: .125 * in},
		Track: wheel.Track{Wide: 60 * in},
	}
	if change != nil {
		change(&s)
	}
	w, err := wheel.New(s)
	require.NoError(t, err)
	return wheelwright.Subject{Vehicle: "Army wagon", Issue: "A", Name: "near fore wheel", Wheel: w, Unit: quantity.Inches}
}

func TestWheelSheets(t *testing.T) {
	a4, err := pattern.FindPaper("A4")
	require.NoError(t, err)
	var a, b bytes.Buffer
	day := time.Date(2026, 3, 1, 0, 0, 0, 0, time.UTC)
	require.NoError(t, wheelwright.Write(&a, subject(t, nil), day, a4))
	require.NoError(t, wheelwright.Write(&b, subject(t, nil), day, a4))
	require.True(t, bytes.Equal(a.Bytes(), b.Bytes()), "the same wheel gives the same bytes")
	if to := os.Getenv("LOSTWOOD_SHOW"); to != "" {
		require.NoError(t, os.WriteFile(to+".pdf", a.Bytes(), 0o644))
		var text bytes.Buffer
		require.NoError(t, wheelwright.WriteList(&text, subject(t, nil)))
		require.NoError(t, os.WriteFile(to+".txt", text.Bytes(), 0o644))
	}
}
