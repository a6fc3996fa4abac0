package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// The bundle that is embedded is what its sources and modules make.
func TestTheBundleIsThatOfItsSources(t *testing.T) {
	app := filepath.Join("..", "app")
	if _, err := os.Stat(filepath.Join(app, "node_modules", "three")); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("the modules are not here; run npm ci in internal/page/app")
		}
		t.Skip("the modules are not here; run npm ci in internal/page/app to build the page's program again")
	}
	made, err := build(app)
	require.NoError(t, err)
	kept, err := os.ReadFile(filepath.Join(app, "bundle.js"))
	require.NoError(t, err)
	require.True(t, string(made) == string(kept), "app/bundle.js is not what its sources make; run go generate in internal/page")
	require.NotContains(t, string(kept), "</script", "it would end its element in the page")
	require.Contains(t, string(kept), "The MIT License")
}
