package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"lostwood/internal/quantity"
)

// NIST Special Publication 811, appendix B.8: factors by definition.
func TestMeasure(t *testing.T) {
	cube := quantity.Foot.Times(quantity.Foot).Deep(quantity.Foot)
	assert.InDelta(t, 0.028316846592, cube.CubicMetres(), 1e-15)
	assert.InDelta(t, 1, cube.CubicFeet(), 1e-12)
	assert.InDelta(t, 12, cube.BoardFeet(), 1e-12)
	assert.InDelta(t, 144, quantity.Foot.Times(quantity.Foot).SquareInches(), 1e-9)
	assert.InDelta(t, 1, quantity.Foot.Times(quantity.Foot).SquareFeet(), 1e-12)
	assert.InDelta(t, 0.09290304, quantity.Foot.Times(quantity.Foot).SquareMetres(), 1e-12)
	// 1 lb/ft3 = 16.01846 kg/m3.
	assert.InDelta(t, 1, quantity.Density(16.018463).PoundsPerCubicFoot(), 1e-7)
	assert.InDelta(t, 2.2046226, quantity.Mass(1).Pounds(), 1e-7)
	assert.InDelta(t, 672*0.028316846592, float64(quantity.Density(672).Mass(cube)), 1e-9)
	assert.InDelta(t, 180, (180 * quantity.Degree).Degrees(), 1e-12)
}
