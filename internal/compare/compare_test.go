package compare_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"lostwood/internal/compare"
	"lostwood/internal/demo"
	"lostwood/internal/derive"
	"lostwood/internal/listing"
	"lostwood/internal/survey"
	"lostwood/internal/timber"
	"lostwood/internal/vehicle"
)

func derived(t *testing.T, text string) *vehicle.Vehicle {
	t.Helper()
	woods, err := timber.Published()
	require.NoError(t, err)
	s, err := survey.Read("test.toml", []byte(text))
	require.NoError(t, err)
	v, err := derive.Vehicle(s, woods)
	require.NoError(t, err)
	return v
}

// Two beds that nothing joins, each with its iron, clip and bolt.
const twoBeds = `
[vehicle]
name = "Trolley"
issue = "A"
date = 2026-11-02
unit = "in"

[wood]
timber = "white oak"
bought = 12
service = "8 .. 12"

[iron]
fore-plate = { kind = "plate", runs = "across", thick = "1/4", wide = "3", long = "24", holes = ["2", "22"] }
hind-plate = { kind = "plate", runs = "across", thick = "1/4", wide = "3", long = "30", holes = ["3", "27"] }
cap = { kind = "plate", runs = "across", thick = "1/8", wide = "2", long = "4", holes = ["2"] }

[part]
fore-bed = { kind = "axle bed", runs = "across", status = "approved", wide = "3 measured", long = "24 measured" }
hind-bed = { kind = "axle bed", runs = "across", status = "approved", wide = "3 measured", long = "30 measured" }
block = { kind = "bolster", runs = "across", status = "made", wide = "3 measured", deep = "2 measured", long = "20 measured" }

[[fastening]]
bolt = "1/2"
pair = true
down = ["fore-plate#1", "fore-bed"]
grip = ["4 1/4", "4 1/4"]

[[fastening]]
bolt = "1/2"
pair = true
down = ["hind-plate#1", "hind-bed"]
grip = ["5 1/4", "5 1/4"]
`

func TestOneReadingMovesItsPartAndNoOther(t *testing.T) {
	old := derived(t, twoBeds)
	later := strings.Replace(strings.Replace(twoBeds, `issue = "A"`, `issue = "B"`, 1), `["5 1/4", "5 1/4"]`, `["5 3/8", "5 3/8"]`, 1)
	c := compare.Vehicles(old, derived(t, later))
	require.Len(t, c.Falls, 1)
	assert.Equal(t, "hind-bed", c.Falls[0].Part)
	assert.Equal(t, vehicle.Approved, c.Falls[0].Had)
	assert.Equal(t, []string{"deep"}, c.Falls[0].Why)
	require.Len(t, c.Moved, 1)
	assert.InDelta(t, 25.4/8, c.Moved[0].By().Millimetres(), 1e-6)
	for _, s := range c.Stale([]string{"cnc/" + old.Stem(old.Items[0]) + ".stl", "cnc/" + old.Stem(old.Items[1]) + ".stl", "joiner/list.txt"}) {
		assert.NotContains(t, s.Path, "fore-bed")
	}
}

func TestWhatIsOtherwise(t *testing.T) {
	for _, tt := range []struct {
		name, was, is string
		says          []string
		falls         int
	}{
		{"nothing", "", "", []string{"Nothing that is made is otherwise", "still stands", "No file need be called back"}, 0},
		{"a timber", `timber = "white oak"`, `timber = "white ash"`, []string{"timber", "white ash", "offer up what was made", "proposed: ask again"}, 3},
		{"another vehicle", `name = "Trolley"`, `name = "Dray"`, []string{"two vehicles, or one renamed"}, 0},
		{"a part gone", "block = {", "# block = {", []string{"Block", "not there"}, 0},
		{"on less", `wide = "3 measured", deep`, `wide = "3 like", deep`, []string{"the same size, but less sure: like vehicle"}, 1},
		{"the same letter", `["5 1/4", "5 1/4"]`, `["5 3/8", "5 3/8"]`, []string{"both issue A", "times as much"}, 1},
		{"a lesser move than a scribed line", `["5 1/4", "5 1/4"]`, `["133.5 mm", "133.5 mm"]`, []string{"Nothing that is made is otherwise"}, 0},
		{"a bolt", "bolt = \"1/2\"\npair = true\ndown = [\"hind", "bolt = \"3/8\"\npair = true\ndown = [\"hind", []string{"diameter", "hind-bed"}, 1},
	} {
		t.Run(tt.name, func(t *testing.T) {
			old := derived(t, twoBeds)
			now := derived(t, strings.Replace(twoBeds, tt.was, tt.is, 1))
			c := compare.Vehicles(old, now)
			assert.Len(t, c.Falls, tt.falls)
			var b bytes.Buffer
			require.NoError(t, c.Write(&b, c.Stale([]string{"joiner/" + old.Stem(old.Items[0]) + ".pdf", "joiner/" + old.Stem(old.Items[1]) + ".pdf", "README.txt"}), listing.Table))
			for _, s := range tt.says {
				assert.Contains(t, b.String(), s)
			}
		})
	}
}

// A fastening more in the file shifts the numbers of all that follow; the holes
// that were there are the same holes still.
func TestAFasteningMoreIsOneHoleMore(t *testing.T) {
	more := strings.Replace(twoBeds, "[[fastening]]", "[[fastening]]\nbolt = \"3/8\"\ndown = [\"cap#1\", \"block\"]\n\n[[fastening]]", 1)
	c := compare.Vehicles(derived(t, twoBeds), derived(t, more))
	for _, ch := range c.Moved {
		assert.Equal(t, "block", ch.Part)
		assert.Equal(t, compare.Added, ch.Way, ch.What)
	}
	assert.NotEmpty(t, c.Moved)
}

func TestTheDemoAgainstAnIronReadAgain(t *testing.T) {
	text := string(demo.Survey())
	approved := strings.ReplaceAll(text, `runs = "along", pair = true, timber = "white ash"`, `runs = "along", pair = true, status = "approved", timber = "white ash"`)
	require.NotEqual(t, text, approved)
	read := strings.Replace(approved, `"15 1/2", "41 13/32"`, `"15 1/2", "41 17/32"`, 1)
	require.NotEqual(t, approved, read)
	c := compare.Vehicles(derived(t, approved), derived(t, strings.Replace(read, `issue = "A"`, `issue = "B"`, 1)))
	var falls []string
	for _, f := range c.Falls {
		falls = append(falls, f.Part)
	}
	assert.Equal(t, []string{"near-reach", "off-reach"}, falls, "the rails, approved too, hang on other irons")

	var b bytes.Buffer
	require.NoError(t, c.Write(&b, nil, listing.JSON))
	var rows []map[string]any
	require.NoError(t, json.Unmarshal(b.Bytes(), &rows))
	assert.Len(t, rows, len(c.Moved)+len(c.Falls))
}
