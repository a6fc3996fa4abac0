package bolt_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/bolt"
	"lostwood/internal/quantity"
)

func TestCheck(t *testing.T) {
	nan, inf := quantity.Length(math.NaN()), quantity.Length(math.Inf(1))
	for name, c := range map[string]struct {
		r     bolt.Read
		field string
		says  string
	}{
		"no length":     {bolt.Read{Diameter: inch / 2}, "length", "was not read"},
		"no diameter":   {bolt.Read{Length: measure(4*inch, 0)}, "diameter", "too little"},
		"no bolt":       {bolt.Read{Diameter: 5 * inch, Length: measure(20*inch, 0)}, "diameter", "too much"},
		"nothing long":  {bolt.Read{Diameter: inch / 2, Length: measure(0, 0)}, "length", "too little"},
		"negative":      {bolt.Read{Diameter: inch / 2, Length: measure(-4*inch, 0)}, "length", "less than nothing"},
		"no number":     {bolt.Read{Diameter: inch / 2, Length: measure(nan, 0)}, "length", "not a number"},
		"endless":       {bolt.Read{Diameter: inch / 2, Length: measure(inf, 0)}, "length", "without end"},
		"huge":          {bolt.Read{Diameter: inch / 2, Length: measure(1e300, 0)}, "length", "too much"},
		"doubt":         {bolt.Read{Diameter: inch / 2, Length: measure(4*inch, nan)}, "length, give or take", "not a number"},
		"minus doubt":   {bolt.Read{Diameter: inch / 2, Length: measure(4*inch, -1)}, "length, give or take", "less than nothing"},
		"short of nut":  {bolt.Read{Diameter: inch / 2, Length: measure(4*inch, 0), Proud: measure(-inch/8, 0)}, "proud", "less than nothing"},
		"no nut":        {bolt.Read{Diameter: inch / 2, Length: measure(4*inch, 0), Nut: measure(0, 0)}, "nut", "too little"},
		"all nut":       {bolt.Read{Diameter: inch / 2, Length: measure(inch, 0), Nut: measure(inch, 0)}, "length", "all taken up"},
		"all proud":     {bolt.Read{Diameter: inch / 2, Length: measure(4*inch, 0), Proud: measure(3.75*inch, 0)}, "length", "all taken up"},
		"long thread":   {bolt.Read{Diameter: inch / 2, Length: measure(4*inch, 0), Thread: measure(4.25*inch, 0)}, "thread", "longer than the bolt"},
		"past thread":   {bolt.Read{Diameter: inch / 2, Length: measure(4*inch, 0), Thread: measure(inch, 0), Proud: measure(inch, 0)}, "thread", "too short"},
		"thick for it":  {bolt.Read{Diameter: inch / 2, Length: measure(4*inch, 0), Thread: measure(inch/8, 0), Nut: measure(inch/2, 0)}, "thread", "too short"},
		"minus washers": {bolt.Read{Diameter: inch / 2, Length: measure(4*inch, 0), Washer: measure(-1, 0)}, "washer", "less than nothing"},
	} {
		t.Run(name, func(t *testing.T) {
			err := bolt.Check(c.r)
			var e *bolt.SizeError
			require.ErrorAs(t, err, &e)
			assert.Equal(t, c.field, e.Field)
			assert.Contains(t, err.Error(), c.says)
			assert.NotEmpty(t, e.Want)
			w := bolt.Grip(c.r)
			assert.Equal(t, bolt.NoGrip, w.Kind)
			assert.True(t, math.IsInf(float64(w.Doubt), 1))
		})
	}
	// Every fault at once.
	err := bolt.Check(bolt.Read{Length: measure(-1, -1), Nut: measure(nan, 0)})
	for _, word := range []string{"diameter", "length is", "length, give or take", "nut"} {
		assert.ErrorContains(t, err, word)
	}
	// Readings that miss by what a rule misses are let pass.
	assert.NoError(t, bolt.Check(bolt.Read{
		Diameter: inch / 2, Length: measure(4*inch, inch/64), Thread: measure(4*inch+inch/32, inch/64),
	}))
}
