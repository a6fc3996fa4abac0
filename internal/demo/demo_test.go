package demo_test

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/demo"
	"lostwood/testdata/orchardwagon"
)

var update = flag.Bool("update", false, "write the surveys and the truth again")

// seed makes the wagon that comes with the program.
const seed = 1858

// The committed surveys and truth are those that the generator makes.
func TestCommitted(t *testing.T) {
	w, err := orchardwagon.Build(seed)
	require.NoError(t, err)
	clean, err := orchardwagon.Build(seed)
	require.NoError(t, err)
	for name, made := range map[string][]byte{
		"orchard-wagon.toml":                          w.Survey(orchardwagon.Planted),
		"../../testdata/orchardwagon/australian.toml": orchardwagon.Australian(demo.Survey()),
		"../../testdata/orchardwagon/clean.toml":      clean.Survey(orchardwagon.Clean),
		"../../testdata/orchardwagon/truth.csv":       []byte(w.Truth().CSV(w.Order())),
	} {
		path := filepath.FromSlash(name)
		if *update {
			require.NoError(t, os.WriteFile(path, made, 0o644))
		}
		kept, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, string(kept), string(made), name)
	}
}

// What the program runs on is what is kept.
func TestEmbedded(t *testing.T) {
	kept, err := os.ReadFile(demo.Name)
	require.NoError(t, err)
	require.Equal(t, kept, demo.Survey())
}
