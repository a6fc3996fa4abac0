package survey

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Honest sizes of one sort never trip, however they are scattered: bolts from
// 1/4 to 1 1/4, straps from 1/16 to 3/4 thick and from 3/4 to 6 wide (common
// practice, no source).
func TestHonestSizesDoNotTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		b.WriteString(front + "[iron]\n")
		n := rapid.IntRange(1, 12).Draw(t, "straps")
		for i := range n {
			fmt.Fprintf(&b, "s%d = { kind = \"strap\", runs = \"along\", thick = \"%d/32\", wide = \"%s\", long = %d }\n", i,
				rapid.IntRange(2, 24).Draw(t, "thick"), inches(thirtySeconds(rapid.IntRange(24, 192).Draw(t, "wide"))), rapid.IntRange(3, 140).Draw(t, "long"))
		}
		b.WriteString("[part]\na = { kind = \"bolster\", runs = \"across\" }\nb = { kind = \"bolster\", runs = \"across\" }\n")
		for range rapid.IntRange(0, 12).Draw(t, "bolts") {
			fmt.Fprintf(&b, "[[fastening]]\nbolt = %q\ndown = [\"a\", \"b\"]\ngrip = %d\n",
				inches(thirtySeconds(rapid.IntRange(8, 40).Draw(t, "bolt"))), rapid.IntRange(1, 20).Draw(t, "grip"))
		}
		_, err := read("wagon.toml", []byte(b.String()), fakeKinds())
		require.NoError(t, err)
	})
}

// One size in the other unit among close ones always trips, and no other does.
// The inch is 25.4 mm by the international agreement of 1959.
func TestASlipOfTheUnitTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		b.WriteString(front + "[iron]\n")
		n := rapid.IntRange(4, 10).Draw(t, "straps")
		slip := rapid.IntRange(0, n-1).Draw(t, "slip")
		larger := rapid.Bool().Draw(t, "larger")
		for i := range n {
			wide := float64(rapid.IntRange(64, 96).Draw(t, "wide")) / 32
			switch {
			case i == slip && larger:
				wide *= 25.4
			case i == slip:
				wide /= 25.4
			}
			fmt.Fprintf(&b, "s%d = { kind = \"strap\", runs = \"along\", wide = %.4f }\n", i, wide)
		}
		b.WriteString("[part]\n")
		_, err := read("wagon.toml", []byte(b.String()), fakeKinds())
		var faults *Faults
		require.ErrorAs(t, err, &faults)
		require.Len(t, faults.List, 1)
		require.Equal(t, strings.Count(front, "\n")+2+slip, faults.List[0].At.Line)
	})
}
