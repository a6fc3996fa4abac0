package cutlist

import (
	"math"
	"slices"

	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// guesses says which of three sizes stand on a guess.
type guesses struct{ long, wide, thick bool }

func (g guesses) any() bool { return g.long || g.wide || g.thick }

// mark is put behind a guessed size.
func mark(guessed bool) string {
	if guessed {
		return "?"
	}
	return ""
}

// guessed says which of an item's extents stand on a guess, for its box or its
// blank. An extent that is one of the item's dimensions is known as that one
// is; any other is worked out from them all, and is a guess if one of them is.
func guessed(it *vehicle.Item, long, wide, deep quantity.Length) guesses {
	some := len(guessedNames(it)) > 0
	stands := func(a parts.Axis, extent quantity.Length) bool {
		for _, d := range it.Sizes {
			if d.Axis == a && math.Abs(float64(d.Value-extent)) < 1e-6 {
				return isGuess(d)
			}
		}
		return some
	}
	g := guesses{stands(parts.AlongX, long), stands(parts.AcrossY, wide), stands(parts.UpZ, deep)}
	if wide < deep {
		g.wide, g.thick = g.thick, g.wide
	}
	return g
}

func isGuess(d vehicle.Dimension) bool { return d.Known >= quantity.Guess }

// guessedNames are the guessed dimensions of an item, as the survey calls them.
func guessedNames(it *vehicle.Item) []string {
	var out []string
	for _, d := range it.Sizes {
		if isGuess(d) && !slices.Contains(out, d.Name) {
			out = append(out, d.Name)
		}
	}
	return out
}

// guessedBox and guessedBlank say what of the finished size and of the sawn one
// stands on a guess.
func (n Line) guessedBox() guesses {
	long, wide, deep := n.Item.Stick.Body.Box()
	return guessed(n.Item, long, wide, deep)
}

func (n Line) guessedBlank() guesses {
	b := n.Item.Stick.Body.Blank()
	return guessed(n.Item, b.Long, b.Wide, b.Deep)
}

func (n Line) doubtful() bool { return n.guessedBox().any() || n.guessedBlank().any() }
