package timber

import (
	"fmt"
	"strings"

	"lostwood/internal/quantity"
)

// Groups are the strength groups of AS 2878: S1 to S7 for unseasoned wood, SD1
// to SD8 for seasoned, the strongest first; 0 where there is none.
type Groups struct {
	Green, Dry         int
	GreenHeld, DryHeld Certainty
	Basis              Basis
}

// A Certainty says how firmly a wood was put into its group.
type Certainty int

// How firmly a group was given.
const (
	Settled     Certainty = iota
	Provisional           // printed in brackets
)

// A minimum is the least average that a wood of a group has, in MPa.
type minimum struct {
	rupture, stiffness float64
	standing           Standing
}

// AS 2878 minima, as the Forest Products Commission of Western Australia
// prints them: the green ones and SD4; the rest of the dry ones from memory.
var (
	greenMinima = [...]minimum{
		{103, 16300, Seen},
		{86, 14200, Seen},
		{73, 12400, Seen},
		{62, 10700, Seen},
		{52, 9100, Seen},
		{43, 7900, Seen},
		{36, 6900, Seen},
	}
	dryMinima = [...]minimum{
		{150, 21500, FromMemory},
		{130, 18500, FromMemory},
		{110, 16000, FromMemory},
		{94, 14000, Seen},
		{78, 12500, FromMemory},
		{65, 10500, FromMemory},
		{55, 9100, FromMemory},
		{45, 7900, FromMemory},
	}
)

// figures returns one of the minima of both groups as figures.
func (g Groups) figures(of func(minimum) float64) (green, dry Figure) {
	if g.Green > 0 && g.Green <= len(greenMinima) {
		green = g.figure(greenMinima[g.Green-1], of, fmt.Sprintf("S%d", g.Green), g.GreenHeld)
	}
	if g.Dry > 0 && g.Dry <= len(dryMinima) {
		dry = g.figure(dryMinima[g.Dry-1], of, fmt.Sprintf("SD%d", g.Dry), g.DryHeld)
	}
	return green, dry
}

func (g Groups) figure(m minimum, of func(minimum) float64, name string, held Certainty) Figure {
	source := "least of its strength group " + name + ", AS 2878"
	if held == Provisional {
		source += ", provisional"
	}
	standing := m.standing
	if g.Basis.Standing != Missing {
		standing = min(standing, g.Basis.Standing)
	}
	return Figure{of(m), source, standing}
}

// ParseGroups reads strength groups as they are printed: S2 SD3, SD3,
// S1 (SD2). Brackets, and a question mark at the end, mark a provisional one.
func parseGroups(text string) (Groups, error) {
	var g Groups
	doubtful := strings.HasSuffix(text, "?")
	for _, word := range strings.Fields(strings.TrimSuffix(text, "?")) {
		name := strings.TrimSuffix(strings.TrimPrefix(word, "("), ")")
		held := Settled
		if name != word || doubtful {
			held = Provisional
		}
		switch n := len(name); {
		case n == 3 && name[:2] == "SD" && name[2] >= '1' && name[2] <= '8':
			g.Dry, g.DryHeld = int(name[2]-'0'), held
		case n == 2 && name[0] == 'S' && name[1] >= '1' && name[1] <= '7':
			g.Green, g.GreenHeld = int(name[1]-'0'), held
		default:
			return Groups{}, fmt.Errorf("%s is no strength group; write S1 to S7 and SD1 to SD8, such as S2 SD3", quantity.Quote(word))
		}
	}
	return g, nil
}
