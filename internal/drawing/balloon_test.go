package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// A line just passed must not be met again by a rounding: the way along the shelf ends.
func TestSlotsEndAndKeepClearOfLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := shelf{from: Length(rapid.Float64Range(-500, 0).Draw(t, "from"))}
		h.to = h.from + Length(rapid.Float64Range(0, 400).Draw(t, "long"))
		for _, b := range rapid.SliceOfN(rapid.Float64Range(-500, 400), 0, 30).Draw(t, "bars") {
			h.bars = append(h.bars, Length(b))
		}
		for _, x := range h.slots() {
			for _, bar := range h.bars {
				assert.GreaterOrEqual(t, max(bar-x, x-bar), balloonRadius)
			}
		}
	})
}
