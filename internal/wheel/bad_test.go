package wheel_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/wheel"
	"lostwood/parts"
)

// What cannot be is told, with its numbers and with what would do.
func TestWheelsThatCannotBe(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(*wheel.Spec)
		says  []string
	}{
		"odd spokes": {
			func(s *wheel.Spec) { s.Spokes.Number = 13 },
			[]string{"13 spokes do not go two to each of 6 felloes", "it takes 12 spokes"},
		},
		"mortises into each other": {
			func(s *wheel.Spec) { s.Spokes.FootThick = 1.5 * in },
			[]string{"breaks into its neighbour", "38.1 mm (1.5 in)", "of wood between their inner ends", "1.0 mm (0.0394 in) is the least"},
		},
		"mortises into the box": {
			func(s *wheel.Spec) { s.Spokes.FootLong = 3.75 * in },
			[]string{"95.2 mm (3.75 in) deep and break into the box by"},
		},
		"dish beyond the nave": {
			func(s *wheel.Spec) { s.Dish.Built = 6 * in },
			[]string{"dish-built is 152.4 mm (6 in); it can be", "this nave and rim take spokes that lean no further"},
		},
		"tyre far too small": {
			func(s *wheel.Spec) { s.Tyre.Nip = 3 * in },
			[]string{"76.2 mm (3 in) smaller round than its wheel", "at a full red, 750 degrees, iron has grown by", "before it yields"},
		},
		"band over the mortises": {
			func(s *wheel.Spec) { s.Nave.Bands[1].From = 5 * in },
			[]string{"the back driving band covers the mortises by"},
		},
		"bored through": {
			func(s *wheel.Spec) { s.Box.FrontRecess = 6.3 * in },
			[]string{"leaves 2.5 mm (0.1 in) of wood all round"},
		},
		"no number": {
			func(s *wheel.Spec) { s.Height *= 0; s.Height /= s.Height },
			[]string{"height is NaN mm"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			s := armyFore()
			c.spoil(&s)
			w, err := wheel.New(s)
			require.Nil(t, w)
			require.Error(t, err)
			for _, says := range c.says {
				require.ErrorContains(t, err, says)
			}
		})
	}
}

// The dish that is told as the most is one that can be had, and no more can.
func TestMostDish(t *testing.T) {
	s := armyFore()
	s.Dish.Built = 6 * in
	_, err := wheel.New(s)
	var limit *parts.LimitError
	require.ErrorAs(t, err, &limit)
	require.Equal(t, "dish-built", limit.Dimension)
	for _, c := range []struct {
		dish wheel.Length
		can  require.ErrorAssertionFunc
	}{{limit.Max - .1, require.NoError}, {limit.Max + .1, require.Error}} {
		s.Dish.Built, s.Dish.Tyred = c.dish, c.dish
		_, err = wheel.New(s)
		c.can(t, err, c.dish)
	}
}
