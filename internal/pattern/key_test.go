package pattern

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/vehicle"
)

var update = flag.Bool("update", false, "rewrite golden files")

// What the key says, line by line, as a person reads it down the sheet.
func TestKeyReads(t *testing.T) {
	for name, i := range map[string]*vehicle.Item{"bolster": bolster(), "sill-off": sill(vehicle.Off), "felloe": felloe()} {
		l, err := lay(wagon(i), i, paperNamed(t, "A4"))
		require.NoError(t, err)
		var got strings.Builder
		for _, s := range l.key() {
			row := Length(0)
			for n, w := range s.panes[0].seen.Texts {
				switch {
				case n == 0:
				case row-w.At.Y < 0.1 && w.At.Y-row < 0.1:
					got.WriteString(" | ")
				default:
					got.WriteString("\n")
				}
				row = w.At.Y
				got.WriteString(strings.ReplaceAll(w.Words, "\u00a0", " "))
			}
			got.WriteString("\n--\n")
		}
		golden := filepath.Join("testdata", "key-"+name+".golden")
		if *update {
			require.NoError(t, os.MkdirAll("testdata", 0o755))
			require.NoError(t, os.WriteFile(golden, []byte(got.String()), 0o600))
		}
		want, err := os.ReadFile(golden)
		require.NoError(t, err)
		require.Equal(t, string(want), got.String())
	}
}
