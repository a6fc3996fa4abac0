package cutlist_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"lostwood/internal/cutlist"
	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
	"lostwood/parts"
)

// row is a row of a list by its keys; numbers as float64.
func row(t require.TestingT, l *listing.List, i int) map[string]any {
	out := map[string]any{}
	require.Len(t, l.Rows[i], len(l.Columns))
	for k, c := range l.Rows[i] {
		if n, ok := c.Value.(int); ok {
			c.Value = float64(n)
		}
		out[l.Columns[k].Key] = c.Value
	}
	return out
}

// usable are the woods whose shrinkage from green is known both ways.
func usable(t require.TestingT) []string {
	var out []string
	for _, w := range woods(t).Woods() {
		_, r := w.Resize(1, 12, 40, timber.Radial)
		_, s := w.Resize(1, 12, 40, timber.Tangential)
		if r == nil && s == nil {
			out = append(out, w.Botanical)
		}
	}
	return out
}

func anyItem(t *rapid.T, woods []string) *vehicle.Item {
	size := func(what string, lo, hi float64) quantity.Length {
		return quantity.Length(rapid.Float64Range(lo, hi).Draw(t, what))
	}
	it := block("part", rapid.SampledFrom(woods).Draw(t, "wood"), rapid.IntRange(1, 40).Draw(t, "off"),
		size("long", 50, 4000), size("wide", 8, 600), size("deep", 8, 600))
	if rapid.Bool().Draw(t, "curved") {
		it.Stick.Body = bow{it.Stick.Body.(parts.Sawn)}
	}
	return it
}

func anyAllowances(t *rapid.T) cutlist.Allowances {
	a := cutlist.Usual()
	a.Planing = quantity.Length(rapid.Float64Range(0, 10).Draw(t, "planing"))
	a.Jointing = quantity.Length(rapid.Float64Range(0, 10).Draw(t, "jointing"))
	a.Trimming = quantity.Length(rapid.Float64Range(0, 100).Draw(t, "trimming"))
	return a
}

// Sawn is never under finished. Dried by the same rule it is the finished size
// and the allowances again, the larger way of the grain. Wetter wood is never
// sawn smaller. The stock is never under the sawn thickness.
func TestSawnSizes(t *testing.T) {
	all := usable(t)
	require.Greater(t, len(all), 25)
	rapid.Check(t, func(t *rapid.T) {
		it, a := anyItem(t, all), anyAllowances(t)
		service := quantity.Moisture(rapid.Float64Range(5, 18).Draw(t, "service"))
		bought := quantity.Moisture(rapid.Float64Range(5, 40).Draw(t, "bought"))
		unit := rapid.SampledFrom([]quantity.Unit{quantity.Inches, quantity.Millimetres}).Draw(t, "unit")
		saw := func(m quantity.Moisture) cutlist.Line {
			v := wagon(m, service, it)
			v.Unit = unit
			return made(t, v, a).Lines[0]
		}
		n := saw(bought)
		left := cutlist.Size{
			Long: n.Blank.Long + 2*a.Trimming, Wide: n.Blank.Wide + 2*quantity.Length(n.Boards)*a.Jointing, Thick: n.Blank.Thick + 2*a.Planing,
		}
		for _, d := range []struct{ sawn, left, blank quantity.Length }{
			{n.Sawn.Long, left.Long, n.Blank.Long}, {n.Sawn.Wide, left.Wide, n.Blank.Wide}, {n.Sawn.Thick, left.Thick, n.Blank.Thick},
		} {
			assert.GreaterOrEqual(t, d.left, d.blank)
			assert.GreaterOrEqual(t, d.sawn, d.left)
		}
		if bought >= service {
			dried := dry(t, n, bought, service)
			assert.InDelta(t, float64(left.Long), float64(dried.Long), 0.01)
			assert.InDelta(t, float64(left.Wide), float64(dried.Wide), 0.01)
			assert.InDelta(t, float64(left.Thick), float64(dried.Thick), 0.01)
		}
		wetter := saw(bought + quantity.Moisture(rapid.Float64Range(0, 8).Draw(t, "wetter by")))
		assert.GreaterOrEqual(t, wetter.Sawn.Long, n.Sawn.Long)
		assert.GreaterOrEqual(t, wetter.Sawn.Wide, n.Sawn.Wide)
		assert.GreaterOrEqual(t, wetter.Sawn.Thick, n.Sawn.Thick)
		assert.GreaterOrEqual(t, wetter.Stock.Rough, n.Stock.Rough)
		assert.GreaterOrEqual(t, float64(n.Stock.Rough), float64(n.Sawn.Thick)*(1-1e-8))
		assert.GreaterOrEqual(t, float64(n.Stock.Planed), float64(n.Blank.Thick)*(1-1e-8))
	})
}

// dry takes a sawn piece from one moisture to another, the way across the grain that
// leaves the least.
func dry(t require.TestingT, n cutlist.Line, from, to quantity.Moisture) cutlist.Size {
	by := func(size quantity.Length, ways ...timber.Direction) quantity.Length {
		least := quantity.Length(math.Inf(1))
		for _, d := range ways {
			s, err := n.Wood.Resize(size, from, to, d)
			require.NoError(t, err)
			least = min(least, s)
		}
		return least
	}
	return cutlist.Size{
		Long: by(n.Sawn.Long, timber.Lengthwise),
		Wide: by(n.Sawn.Wide, timber.Radial, timber.Tangential), Thick: by(n.Sawn.Thick, timber.Radial, timber.Tangential),
	}
}

// The yard's list holds what the joiner's does: pieces, board feet and cubic
// metres add up, and nothing that is made already is bought.
func TestTotalsAddUp(t *testing.T) {
	all := usable(t)[:4]
	rapid.Check(t, func(t *rapid.T) {
		var items []*vehicle.Item
		for i := range rapid.IntRange(0, 12).Draw(t, "items") {
			it := anyItem(t, all)
			it.Number = i + 1
			it.Status = rapid.SampledFrom([]vehicle.Status{vehicle.Proposed, vehicle.Approved, vehicle.Made, vehicle.LeftOpen}).Draw(t, "status")
			items = append(items, it)
		}
		l := made(t, wagon(20, 12, items...), anyAllowances(t))
		cutting, totals := l.Cutting(), l.Totals()
		require.Len(t, cutting.Rows, len(items))
		var pieces, feet, metres float64
		for i, it := range items {
			r := row(t, cutting, i)
			if it.Status >= vehicle.Made {
				assert.Nil(t, r["board_feet"])
				continue
			}
			pieces += r["number_off"].(float64) * r["boards_each"].(float64)
			feet += r["board_feet"].(float64)
			metres += r["cubic_metres"].(float64)
		}
		names := []string{}
		for i := range totals.Rows {
			r := row(t, totals, i)
			pieces -= r["pieces"].(float64)
			feet -= r["board_feet"].(float64)
			metres -= r["cubic_metres"].(float64)
			assert.GreaterOrEqual(t, r["order_board_feet"], r["board_feet"])
			names = append(names, r["timber"].(string))
		}
		assert.Zero(t, pieces)
		assert.InDelta(t, 0, feet, 0.0001*float64(len(items)+1))
		assert.InDelta(t, 0, metres, 0.0000001*float64(len(items)+1))
		assert.True(t, slices.IsSorted(names))
	})
}
