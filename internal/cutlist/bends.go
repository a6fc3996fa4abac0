package cutlist

import (
	"math"

	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/parts"
)

// tightest returns the least inner radius a part is bent to and its thickness
// there; nothing for a part that is not bent.
func tightest(b parts.Body) (inner, thickness quantity.Length) {
	bent, ok := b.(parts.Bent)
	if !ok {
		return 0, 0
	}
	for i := 0; i+1 < len(bent.Middle); i++ {
		from, to := bent.Middle[i], bent.Middle[i+1]
		if from.Bulge == 0 {
			continue
		}
		// A bulge is the tangent of a quarter of the arc's turn.
		turn := 4 * math.Atan(math.Abs(from.Bulge))
		chord := math.Hypot(float64(to.X-from.X), float64(to.Y-from.Y))
		r := quantity.Length(chord/(2*math.Sin(turn/2))) - bent.Thick/2
		if inner == 0 || r < inner {
			inner = r
		}
	}
	return inner, bent.Thick
}

// bendWarnings say where a wood bends no tighter, strapped.
func (n Line) bendWarnings() []string {
	inner, thickness := tightest(n.Item.Stick.Body)
	if thickness == 0 {
		return nil
	}
	if inner <= 0 {
		return []string{"its bend has no radius inside: no wood takes that"}
	}
	b, err := n.Wood.SteamBend(inner, thickness, timber.Strapped)
	if err != nil {
		return nil
	}
	return b.Warnings
}
