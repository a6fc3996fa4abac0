package survey

import (
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/parts"
)

var update = flag.Bool("update", false, "rewrite format.md")

func TestReferencePage(t *testing.T) {
	const golden = "format.md"
	if *update {
		require.NoError(t, os.WriteFile(golden, []byte(Reference()), 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	require.Equal(t, string(want), Reference())
}

func TestReferenceNamesEverything(t *testing.T) {
	page := Reference()
	for _, s := range sections() {
		require.Contains(t, page, "["+s.name+"]")
		for _, e := range s.lines() {
			require.Contains(t, page, "- **"+e.name+"**", s.name)
			require.NotEmpty(t, e.means, "%s.%s", s.name, e.name)
			require.NotEmpty(t, e.example, "%s.%s", s.name, e.name)
		}
	}
	for _, k := range parts.Kinds() {
		require.Contains(t, page, "- **"+k.Name+"**")
	}
	require.NotContains(t, strings.ToLower(page), "array")
}

// The whole example on the page reads without fault.
func TestExampleReads(t *testing.T) {
	_, err := Read("example.toml", []byte(example))
	require.NoError(t, err)
}
