package cutlist_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/listing"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

var update = flag.Bool("update", false, "rewrite the lists under testdata")

// The lists as the joiner and the yard read them. They are narrow enough for a
// sheet on its side.
func TestListsOnPaper(t *testing.T) {
	inches := made(t, orchardWagon(t), cutlist.Usual())
	metric := orchardWagon(t)
	metric.Unit = quantity.Millimetres
	metric.Moisture.Bought, metric.Moisture.Worked, metric.Moisture.Service = 60, 14, 14
	green := made(t, metric, cutlist.Usual())
	for name, list := range map[string]*listing.List{
		"cutting-inches": inches.Cutting(),
		"totals-inches":  inches.Totals(),
		"cutting-metric": green.Cutting(),
		"totals-metric":  green.Totals(),
	} {
		for format, ending := range map[listing.Format]string{listing.Table: ".txt", listing.CSV: ".csv"} {
			var got bytes.Buffer
			require.NoError(t, list.Write(&got, format))
			if format == listing.Table {
				for _, line := range bytes.Split(got.Bytes(), []byte("\n")) {
					assert.LessOrEqual(t, utf8.RuneCount(line), 130, string(line))
				}
			}
			golden := "testdata/" + name + ending
			if *update {
				require.NoError(t, os.WriteFile(golden, got.Bytes(), 0o644))
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err)
			assert.Equal(t, string(want), got.String(), golden)
		}
	}
}

// Programs find every column by a name of its own, and the same vehicle gives
// the same bytes.
func TestColumnsAndBytes(t *testing.T) {
	write := func() (out [2]string) {
		l := made(t, orchardWagon(t), cutlist.Usual())
		for i, list := range []*listing.List{l.Cutting(), l.Totals()} {
			keys := map[string]bool{}
			for _, c := range list.Columns {
				assert.False(t, keys[c.Key], c.Key)
				keys[c.Key] = true
			}
			var b bytes.Buffer
			require.NoError(t, list.Write(&b, listing.JSON))
			assert.True(t, json.Valid(b.Bytes()))
			out[i] = b.String()
		}
		return out
	}
	assert.Equal(t, write(), write())
}

// A size that is whole sixteenths already is not rounded up to the next.
func TestWholeSixteenthsStay(t *testing.T) {
	var items []*vehicle.Item
	for i := range 400 {
		items = append(items, block("slat", "white ash", 1, 8*ft, 2*in+quantity.Length(i)*in/16, 1*in))
	}
	cutting := made(t, wagon(12, 12, items...), none()).Cutting()
	for i, r := range cutting.Rows {
		want := "96 x " + quantity.Fraction(2*in+quantity.Length(i)*in/16, 16) + " x 1"
		assert.Equal(t, want, wordsOf(cutting, r, "sawn_long_mm"))
	}
}

func wordsOf(l *listing.List, row []listing.Cell, key string) string {
	for k, c := range l.Columns {
		if c.Key == key {
			return row[k].Words
		}
	}
	return ""
}
